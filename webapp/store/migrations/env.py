"""Runs the steps inside the transaction that the store opened for them."""

from alembic import context

from webapp.store.tables import Base

context.configure(
    connection=context.config.attributes["connection"],
    target_metadata=Base.metadata,
    transactional_ddl=True,
)
with context.begin_transaction():
    context.run_migrations()
