"""Opening the database: what every connection is told, and the migrations that run at start."""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any
from urllib.parse import quote

from alembic import command
from alembic.config import Config
from sqlalchemy import Connection, Engine, create_engine, event, select
from sqlalchemy.dialects.sqlite import insert
from sqlalchemy.engine import URL

from webapp.store.ids import uuid7
from webapp.store.tables import MetaRow

FILE = "shoulderline.db"
APPLICATION = 0x53684C6E  # "ShLn", as the first migration writes it into the file
PRAGMAS = (
    "busy_timeout = 10000",  # first: the next one may have to wait for another process
    "journal_mode = WAL",
    "synchronous = FULL",  # a commit is on the disk before it returns
    "fullfsync = ON",  # the same on macOS, where fsync alone is not enough
    "recursive_triggers = ON",  # without it INSERT OR REPLACE slips past the triggers
    "foreign_keys = ON",
    "trusted_schema = OFF",
)
MIGRATIONS = Path(__file__).parent / "migrations"


def opened(file: Path) -> Engine:
    """Return an engine over a database file, brought up to date; dispose of it when done."""
    engine = _listened(URL.create("sqlite", database=str(file)), PRAGMAS)
    try:
        with writing(engine).begin() as connection:
            migrate(connection)
            start_epoch(connection)
    except Exception:
        engine.dispose()
        raise
    return engine


@contextmanager
def engine_over(file: Path) -> Iterator[Engine]:
    """Give an engine over a file as it is, and dispose of it."""
    engine = _listened(URL.create("sqlite", database=str(file)), PRAGMAS)
    try:
        yield engine
    finally:
        engine.dispose()


@contextmanager
def engine_reading(file: Path) -> Iterator[Engine]:
    """Give an engine that leaves a file as it is, and dispose of it."""
    address = {"mode": "ro", "uri": "true"}
    engine = _listened(URL.create("sqlite", database=f"file:{quote(str(file))}", query=address), PRAGMAS[:1])
    try:
        yield engine
    finally:
        engine.dispose()


def _listened(url: URL, pragmas: tuple[str, ...]) -> Engine:
    engine = create_engine(url)

    def told(connection: Any, _record: Any) -> None:
        connection.isolation_level = None  # transactions begin where SQLAlchemy says, not by sqlite3's guess
        for pragma in pragmas:
            connection.execute(f"PRAGMA {pragma}").close()

    event.listen(engine, "connect", told)
    event.listen(engine, "begin", _begin)
    return engine


def writing(engine: Engine) -> Engine:
    """Return the same engine, for transactions that write: they take the write lock at their start."""
    return engine.execution_options(writes=True)


def _begin(connection: Connection) -> None:
    writes = connection.get_execution_options().get("writes", False)
    connection.exec_driver_sql("BEGIN IMMEDIATE" if writes else "BEGIN")


def migrate(connection: Connection) -> None:
    """Run the migrations that a database still lacks, in the transaction that is open."""
    config = Config()
    config.set_main_option("script_location", str(MIGRATIONS).replace("%", "%%"))
    config.attributes["connection"] = connection
    command.upgrade(config, "head")


def start_epoch(connection: Connection) -> None:
    """Give the database an epoch where it has none."""
    connection.execute(insert(MetaRow).values(key="epoch", value=uuid7()).on_conflict_do_nothing())


def new_epoch(connection: Connection) -> None:
    """Give the database another epoch: all phones start from zero, and send their own again."""
    made = insert(MetaRow).values(key="epoch", value=uuid7())
    connection.execute(made.on_conflict_do_update(index_elements=["key"], set_={"value": made.excluded.value}))


def epoch(connection: Connection) -> str:
    """Return the database's epoch: phones that hold another one start from zero."""
    return connection.execute(select(MetaRow.value).where(MetaRow.key == "epoch")).scalar_one()
