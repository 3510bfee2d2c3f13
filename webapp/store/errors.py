"""What the store says when it cannot do its work.

StoreError
├── FolderHeldError    another program has the data folder open
└── ForeignFileError   a file that this program did not write, or that is damaged
Unreadable             what came from outside is not what it should be
"""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager

from alembic.util import CommandError
from sqlalchemy.exc import SQLAlchemyError


class StoreError(Exception):
    """The data folder or its database cannot be used; the text is for the person in front of it."""


class FolderHeldError(StoreError):
    """Another program holds the data folder."""


class ForeignFileError(StoreError):
    """A file that is no sound database of this program."""


class Unreadable(ValueError):  # noqa: N818 - the pages read better so
    """Bytes or values from outside that cannot be taken; the text says what is wrong with them."""


@contextmanager
def translated() -> Iterator[None]:
    """Turn what SQLAlchemy, Alembic, SQLite and the file system raise into StoreError, in this one place."""
    try:
        yield
    except CommandError as e:
        raise StoreError("This database was made by a newer version of the program; install that one.") from e
    except (SQLAlchemyError, sqlite3.Error) as e:
        raise StoreError(f"The database cannot be used: {_cause(e)}.") from e
    except OSError as e:
        raise StoreError(f"{e.filename or 'The data folder'} cannot be used: {e.strerror or e}.") from e


def _cause(error: Exception) -> str:
    """Give the database's own words; SQLAlchemy's add the statement, and with it what users typed."""
    return str(getattr(error, "orig", None) or error).splitlines()[0]
