"""The data folder: where it is, and the lock by which one server at a time holds it."""

import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import BinaryIO

from platformdirs import user_data_path

from webapp.store.errors import FolderHeldError, translated

VARIABLE = "SHOULDERLINE_DATA"
LOCK = "serving.lock"


def data_folder(flag: Path | None = None) -> Path:
    """Return the data folder: the flag's, else the environment's, else the platform's own for the user."""
    if flag is not None:
        return flag
    named = os.environ.get(VARIABLE, "")
    return Path(named) if named else user_data_path("shoulderline", appauthor=False)


def made(folder: Path) -> Path:
    """Return the folder, made for its owner alone where it was missing."""
    folder.mkdir(parents=True, exist_ok=True, mode=0o700)
    return folder


@contextmanager
def held(folder: Path) -> Iterator[None]:
    """Hold the folder against every other server and restore; raise FolderHeldError where one has it.

    The lock goes with the process that holds it, however that ends.
    """
    with translated():
        lock = (made(folder) / LOCK).open("ab")
    with lock:
        try:
            _lock(lock)
        except OSError as e:
            raise FolderHeldError(f"Another Shoulderline is using {folder}; stop it first.") from e
        yield


if sys.platform == "win32":
    import msvcrt

    def _lock(file: BinaryIO) -> None:
        file.seek(0)
        msvcrt.locking(file.fileno(), msvcrt.LK_NBLCK, 1)

else:
    import fcntl

    def _lock(file: BinaryIO) -> None:
        fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)
