"""How a phone stands: the page knows nothing of it here; its script looks on the phone."""

from functools import partial

from flask import Blueprint, Response

from webapp.core import view
from webapp.pages import gather
from webapp.pages.screens import live, shell
from webapp.phone.shells import kept

pages = Blueprint("diagnostics", __name__)


@kept(pages, "/diagnostics", "diagnostics", partial(shell, "diagnostics"))
def diagnostics() -> Response:
    """Show the page that a maker reads out to someone who helps."""
    return live("diagnostics", view.diagnostics(gather.base()), {})
