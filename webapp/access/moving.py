"""The shop to another computer in one file, and back: database, authority, leaf, place and the forms' key."""

import json
import os
import shutil
import tempfile
import zipfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from webapp.access import authority, leaf, name
from webapp.access.keeping import folder_kept, keep
from webapp.store import Store
from webapp.store.backup import put_in_place
from webapp.store.database import FILE as DATABASE
from webapp.store.errors import StoreError, translated
from webapp.store.folder import held
from webapp.store.ids import now, uuid7

GONE = "moved.json"
FORM_KEY = "form-key"
ABOUT = "about.json"
FORMAT = 1
SHOP = tuple(f"{name.FOLDER}/{file}" for file in (authority.FILE, leaf.FILE, name.FILE))
SMALL = 64 * 1024  # every file but the database
LARGE = 1 << 34


class MoveError(StoreError):
    """The shop cannot be moved so; the text says what to do."""


def move(folder: Path, file: Path) -> None:
    """Write all of a shop into one file, and close the folder: two computers must not be one shop."""
    if not (folder / DATABASE).exists():
        raise MoveError(f"There is nothing in {folder} to move.")
    if file.exists():
        raise MoveError(f"{file} is there already; choose another name.")
    with held(folder), translated():
        refuse_moved(folder)
        _write(folder, file)
        keep(folder / GONE, json.dumps({"to": str(file.absolute()), "at": now()}).encode())


def _write(folder: Path, file: Path) -> None:
    """Write the file, readable by its owner alone, whole or not at all."""
    part = file.with_name(f"{file.name}.{uuid7()}.part")
    try:
        with tempfile.TemporaryDirectory(dir=folder) as beside, os.fdopen(_owned(part), "wb") as written:
            copy = Path(beside) / DATABASE
            with Store(folder) as store:
                store.backup(copy)
            _pack(folder, copy, zipfile.ZipFile(written, "w", zipfile.ZIP_DEFLATED))
            written.flush()
            os.fsync(written.fileno())
        part.replace(file)
    finally:
        part.unlink(missing_ok=True)


def _owned(file: Path) -> int:
    return os.open(file, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600)


def _pack(folder: Path, database: Path, packed: zipfile.ZipFile) -> None:
    with packed:
        packed.writestr(ABOUT, json.dumps({"format": FORMAT, "at": now()}))
        packed.write(database, DATABASE)
        for part in (FORM_KEY, *SHOP):
            if (folder / part).exists():
                packed.write(folder / part, part)


def arrive(file: Path, folder: Path, *, replace: bool = False) -> None:
    """Put a moved shop in a folder; what is there already is kept beside it, and only when that was said."""
    with held(folder), translated(), unpacked(file) as found:
        if _has_data(folder) and not replace:
            raise MoveError(f"{folder} holds data. Say --replace to put that aside and take this in its place.")
        _sound(found)
        put_in_place(found / DATABASE, folder, same=True)
        _put_shop(found, folder)
        (folder / GONE).unlink(missing_ok=True)


def _has_data(folder: Path) -> bool:
    return (folder / DATABASE).exists() or (folder / name.FOLDER).exists()


@contextmanager
def unpacked(file: Path) -> Iterator[Path]:
    """Give a folder of its owner's alone with what a moved shop's file holds; it goes again."""
    with tempfile.TemporaryDirectory() as beside:
        try:
            with zipfile.ZipFile(file) as packed:
                _unpack(packed, Path(beside), file)
        except (zipfile.BadZipFile, KeyError, ValueError) as e:
            raise MoveError(f"{file} is no moved shop, or is damaged.") from e
        yield Path(beside)


def _unpack(packed: zipfile.ZipFile, beside: Path, file: Path) -> None:
    if json.loads(_small(packed, ABOUT)).get("format") != FORMAT:
        raise MoveError(f"{file} was made by a newer version of the program; install that one.")
    for part in {FORM_KEY, *SHOP} & set(packed.namelist()):
        keep(beside / part, _small(packed, part))
    if packed.getinfo(DATABASE).file_size > LARGE:
        raise ValueError(DATABASE)
    with packed.open(DATABASE) as source, (beside / DATABASE).open("wb") as written:
        shutil.copyfileobj(source, written)


def _small(packed: zipfile.ZipFile, part: str) -> bytes:
    if packed.getinfo(part).file_size > SMALL:
        raise ValueError(part)
    return packed.read(part)


def _sound(found: Path) -> None:
    """Raise where the shop's parts do not belong together."""
    try:
        if (found / SHOP[0]).exists():
            authority.loaded(found / SHOP[0])
        name.place(found / name.FOLDER)
    except authority.AuthorityError as e:
        raise MoveError("The moved shop's certificate or place is damaged; nothing was changed.") from e


def _put_shop(found: Path, folder: Path) -> None:
    """Put the shop's own files in place of those there, which stay beside them."""
    before = folder / name.FOLDER
    if before.exists():
        before.rename(folder / f"before-arrival-{uuid7()}")
    for part in (FORM_KEY, *SHOP):
        if (found / part).exists():
            folder_kept((folder / part).parent)
            keep(folder / part, (found / part).read_bytes())


def refuse_moved(folder: Path) -> None:
    """Raise MoveError in a folder whose shop was moved away."""
    gone = folder / GONE
    if gone.exists():
        told = json.loads(gone.read_text(encoding="utf-8"))
        raise MoveError(
            f"This shop was moved away, into {told['to']}. To bring it back, move it here from the other computer "
            "and say: shoulderline arrive FILE --replace"
        )
