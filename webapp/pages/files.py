"""A project out as one file, and in again."""

from flask import Blueprint, Response, abort, redirect, request
from werkzeug.wrappers import Response as BaseResponse

from webapp.core.address import project_address
from webapp.pages import gather
from webapp.pages.forms import BringForm
from webapp.pages.keeping import STALE_PAGE
from webapp.pages.projects import home_page
from webapp.pages.screens import bring
from webapp.store import Unreadable

pages = Blueprint("files", __name__)

FILE_CAP = 64 * 1024 * 1024  # a project is more than the outbox sends at once


@pages.get("/projects/<project>/file")
def out(project: str) -> Response:
    """Give a project as one file."""
    if gather.summary(project) is None:
        abort(404, "That project is not here.")
    response = Response(gather.store().export(project), mimetype="application/json")
    response.headers["Content-Disposition"] = f'attachment; filename="shoulderline-{project}.json"'
    return response


@pages.post("/import")
def bring_in() -> BaseResponse:
    """Take a project file; what is known already changes nothing."""
    request.max_content_length = FILE_CAP
    if not BringForm().validate():
        return home_page({"bring": bring(STALE_PAGE)}, 400)
    sent = request.files.get("file")
    try:
        result = gather.store().import_(sent.read() if sent else b"")
    except Unreadable as e:
        return home_page({"bring": bring(str(e))}, 400)
    if result["refused"]:
        why = result["refused"][0]["why"]
        return home_page({"bring": bring(f"{len(result['refused'])} entries were refused: {why}")}, 400)
    return redirect(project_address(result["project"]), 303)
