"""A database file from outside: is it ours, sound, and of our own shape."""

from pathlib import Path

from sqlalchemy import Connection, text

from webapp.store import database
from webapp.store.errors import ForeignFileError

MAGIC = b"SQLite format 3\x00"
MARK = slice(68, 72)  # where SQLite keeps the application id, in the file's first hundred bytes
SCHEMA = text("SELECT type, name, tbl_name, sql FROM sqlite_master ORDER BY type, name")
BAD_JSON = (
    text("SELECT count(*) FROM entries WHERE NOT json_valid(body)"),
    text("SELECT count(*) FROM worked WHERE NOT json_valid(sheet)"),
)


def is_ours(file: Path) -> bool:
    """Say whether a file bears the mark of this program's databases."""
    with file.open("rb") as opened:
        head = opened.read(100)
    return head.startswith(MAGIC) and head[MARK] == database.APPLICATION.to_bytes(4)


def look_at(connection: Connection, file: Path) -> None:
    """Raise ForeignFileError where a database that was brought up to date is damaged, or no longer as made."""
    if connection.execute(text("PRAGMA integrity_check")).scalars().all() != ["ok"]:
        raise ForeignFileError(f"{file} is damaged; take an earlier backup.")
    if connection.execute(SCHEMA).all() != _made_new():
        raise ForeignFileError(f"{file} was changed by something else than Shoulderline.")
    if any(connection.execute(count).scalar_one() for count in BAD_JSON):
        raise ForeignFileError(f"{file} holds entries that cannot be read.")


def _made_new() -> list[object]:
    """Return the schema of a database that is made now."""
    with database.engine_over(Path(":memory:")) as engine, database.writing(engine).begin() as connection:
        database.migrate(connection)
        return list(connection.execute(SCHEMA).all())
