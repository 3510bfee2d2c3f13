"""What a forked server finds done: the program is loaded, the core translated, what the phone keeps is packed."""

from pathlib import Path
from tempfile import TemporaryDirectory

import alembic.command  # noqa: F401 - loaded by the first database otherwise

import webapp.serving  # noqa: F401 - loaded by the command otherwise
from webapp.app import create_app

with TemporaryDirectory() as folder:
    create_app(Path(folder)).extensions["shoulderline"].close()
