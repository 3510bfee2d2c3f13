"""The append-only store: tables, the one door for entries, sync and backup."""

from webapp.store.backup import restore
from webapp.store.errors import FolderHeldError, ForeignFileError, StoreError, Unreadable
from webapp.store.store import Store

__all__ = ["FolderHeldError", "ForeignFileError", "Store", "StoreError", "Unreadable", "restore"]
