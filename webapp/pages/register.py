"""Every blueprint of the program, in one list."""

from flask import Flask

from webapp.pages import devices, diagnostics, failing, files, keeping, pairing, phone, projects, rounds, sync, work

PROJECTS = (projects.pages, rounds.pages, keeping.pages, files.pages)
SHOP = (*PROJECTS, work.pages, sync.pages, diagnostics.pages, phone.pages)
BLUEPRINTS = (*SHOP, pairing.pages, devices.pages)


def register(app: Flask) -> None:
    """Put every page on an application, and plain words on every refusal."""
    for pages in BLUEPRINTS:
        app.register_blueprint(pages)
    failing.register(app)
