"""The database to a file while it is in use, and a file back in its place."""

import os
import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager, suppress
from pathlib import Path
from typing import Any

from sqlalchemy import Engine, delete, insert, select
from sqlalchemy.exc import SQLAlchemyError

from webapp.store import database
from webapp.store.errors import ForeignFileError, translated
from webapp.store.folder import held, made
from webapp.store.foreign import is_ours, look_at
from webapp.store.ids import uuid7
from webapp.store.tables import CodeRow, DeviceRow

SIDES = ("-wal", "-shm", "-journal")


def write_backup(engine: Engine, file: Path) -> None:
    """Copy the database to `file`, whole or not at all; a file that is no backup is not written over."""
    if file.exists() and not is_ours(file):
        raise ForeignFileError(f"{file} is there already, and is no backup; choose another name.")
    with _beside(file) as part:
        _copy(engine, part)
        _put(part, file)


def restore(file: Path, folder: Path) -> None:
    """Put a backup in the place of a folder's database, which is kept beside it; phones start from zero.

    Raise FolderHeldError while a server has the folder, ForeignFileError for what is no sound backup.
    """
    with held(folder):
        put_in_place(file, folder, same=False)


def put_in_place(file: Path, folder: Path, *, same: bool) -> None:
    """Put a database in the place of a folder's own, in a folder that is held.

    `same`: it goes on under its epoch, as the one and only database that the phones know.
    """
    with translated():
        place = made(folder) / database.FILE
        with _beside(place) as part:
            _take(file, part, same=same)
            if not same and place.exists():
                _keep_devices(place, part)
            _set_aside(place)
            _put(part, place)


def _take(file: Path, part: Path, *, same: bool) -> None:
    """Copy a backup, look at the copy, and make it a database of its own, or the same one."""
    if not is_ours(file):
        raise ForeignFileError(f"{file} is no backup of Shoulderline.")
    with database.engine_reading(file) as source:
        _copy(source, part)
    with database.engine_over(part) as engine:
        with database.writing(engine).begin() as connection:
            database.migrate(connection)
            look_at(connection, file)
            if not same:
                database.new_epoch(connection)
        _fold_log(engine)


def _keep_devices(place: Path, part: Path) -> None:
    """Let in whom the replaced database lets in: who was revoked since the backup stays out, no old code is good."""
    rows = _devices_of(place)
    with database.engine_over(part) as engine:
        with database.writing(engine).begin() as connection:
            connection.execute(delete(CodeRow))
            if rows:
                connection.execute(insert(DeviceRow).prefix_with("OR REPLACE"), rows)
        _fold_log(engine)


def _devices_of(place: Path) -> list[dict[str, Any]]:
    """Return the devices that a database knows; of one that cannot be read any more, none."""
    with (
        suppress(SQLAlchemyError),
        database.engine_over(place) as engine,
        database.writing(engine).begin() as connection,
    ):
        database.migrate(connection)
        return [dict(row) for row in connection.execute(select(DeviceRow.__table__)).mappings()]
    return []


def _copy(engine: Engine, part: Path) -> None:
    """Copy page by page, as of one moment, also while others write."""
    with database.engine_over(part) as target:
        with closing(engine.raw_connection()) as source, closing(target.raw_connection()) as written:
            source.driver_connection.backup(written.driver_connection)  # type: ignore[union-attr]
        _fold_log(target)


def _fold_log(engine: Engine) -> None:
    """Make a database one file again, without a log beside it."""
    with closing(engine.raw_connection()) as connection:
        connection.driver_connection.execute("PRAGMA journal_mode = DELETE").close()  # type: ignore[union-attr]


@contextmanager
def _beside(file: Path) -> Iterator[Path]:
    """Give a name beside a file to write to; nothing of it is left behind."""
    part = file.with_name(f"{file.name}.{uuid7()}.part")
    try:
        yield part
    finally:
        _remove(part, "", *SIDES)


def _remove(file: Path, *sides: str) -> None:
    for side in sides:
        Path(f"{file}{side}").unlink(missing_ok=True)


def _set_aside(place: Path) -> None:
    """Keep the database that is replaced, under another name: what was measured is never lost."""
    aside = place.with_name(f"before-restore-{uuid7()}.db")
    if place.exists():
        try:
            with database.engine_over(place) as engine:
                write_backup(engine, aside)
        except (SQLAlchemyError, sqlite3.Error):  # what cannot be read is kept as it is
            for side in ("", *SIDES):
                with suppress(FileNotFoundError):
                    Path(f"{place}{side}").replace(f"{aside}{side}")
    _remove(place, *SIDES)


def _put(part: Path, file: Path) -> None:
    """Put a finished file in its place, on the disk before the name changes."""
    with part.open("rb+") as written:
        os.fsync(written.fileno())
    part.replace(file)
