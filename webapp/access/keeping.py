"""Files that only their owner may read, whole or not at all."""

import os
from pathlib import Path

from webapp.store.ids import uuid7


def folder_kept(folder: Path) -> Path:
    """Return a folder, made for its owner alone where it was missing."""
    folder.mkdir(parents=True, exist_ok=True, mode=0o700)
    return folder


def keep(file: Path, data: bytes) -> None:
    """Write a file for its owner alone; it is on the disk, whole, before it has its name."""
    part = folder_kept(file.parent) / f"{file.name}.{uuid7()}.part"
    handle = os.open(part, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600)
    try:
        with os.fdopen(handle, "wb") as written:
            written.write(data)
            written.flush()
            os.fsync(written.fileno())
        part.replace(file)
    finally:
        part.unlink(missing_ok=True)
