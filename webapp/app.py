"""The application factory."""

import secrets
from pathlib import Path
from typing import Any

from flask import Flask
from flask.templating import Environment
from flask_compress import Compress

from webapp.access.devices import only_paired
from webapp.access.log import logged
from webapp.access.origin import guard
from webapp.folders import TEMPLATES
from webapp.pages.register import register
from webapp.phone import build as phone
from webapp.store import Store

BODY_CAP = 1024 * 1024
TEXT = ["text/html", "text/css", "text/javascript", "text/plain", "application/json", "image/svg+xml"]


class ItemFirst(Environment):
    """Looks for an item of a dict before an attribute, which a view's dicts never have: an error less for each name."""

    def getattr(self, obj: Any, attribute: str) -> Any:
        """Return what a template's `obj.attribute` stands for."""
        if type(obj) is dict and attribute in obj:
            return obj[attribute]
        return super().getattr(obj, attribute)


def create_app(folder: Path) -> Flask:
    """Make the program over a data folder: it holds the database and the key of the forms' tokens."""
    app = Flask("webapp", template_folder=str(TEMPLATES), static_folder=None)
    app.json.sort_keys = False  # type: ignore[attr-defined]
    app.jinja_environment = ItemFirst
    app.jinja_options = {"trim_blocks": True, "lstrip_blocks": True, "autoescape": True}
    app.config.update(
        SECRET_KEY=form_key(folder),
        MAX_CONTENT_LENGTH=BODY_CAP,
        SESSION_COOKIE_NAME="shoulderline",
        SESSION_COOKIE_SAMESITE="Strict",
        WTF_CSRF_TIME_LIMIT=None,  # a page may lie open on the bench all day; the session bounds it
        COMPRESS_MIMETYPES=[*TEXT, "application/manifest+json"],
        COMPRESS_ALGORITHM=["br", "gzip"],
    )
    logged(app, folder)
    guard(app)
    only_paired(app)
    Compress(app)
    register(app)
    kept = phone.start(app)
    app.extensions["shoulderline"] = Store(folder, version=kept.engine)
    return app


def form_key(folder: Path) -> str:
    """Return the key that signs the forms' tokens, made once in the data folder."""
    file = folder / "form-key"
    if not file.exists():
        folder.mkdir(parents=True, exist_ok=True)
        file.touch(mode=0o600)
        file.write_text(secrets.token_hex(32), encoding="ascii")
    return file.read_text(encoding="ascii")
