"""The phone's outbox comes in here, and what other phones sent goes out."""

from flask import Blueprint, Response, abort, jsonify, request

from webapp.pages import gather
from webapp.store import Unreadable
from webapp.store.parse import parse_body

pages = Blueprint("sync", __name__)


@pages.post("/sync")
def sync() -> Response:
    """Take entries and give those the phone has not seen."""
    if request.mimetype != "application/json" or request.headers.get("Shoulderline-Sync") != "1":
        abort(400, "This address is for the program's own pages: JSON, with the header Shoulderline-Sync.")
    try:
        return jsonify(gather.store().sync(parse_body(request.get_data())))
    except Unreadable as e:
        abort(400, str(e))
