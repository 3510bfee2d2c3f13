"""Every blueprint of the program, in one list."""

from flask import Flask

from webapp.pages import diagnostics, failing, files, keeping, phone, projects, sync, work

BLUEPRINTS = (projects.pages, work.pages, keeping.pages, files.pages, sync.pages, diagnostics.pages, phone.pages)


def register(app: Flask) -> None:
    """Put every page on an application, and plain words on every refusal."""
    for pages in BLUEPRINTS:
        app.register_blueprint(pages)
    failing.register(app)
