"""A round of dry fit: its page, where one place after another is measured."""

from functools import partial
from typing import Any

from flask import Blueprint, Response, abort, jsonify, request

from webapp.core import view
from webapp.core.address import project_address
from webapp.pages import gather
from webapp.pages.screens import fresh, live, shell
from webapp.phone.shells import kept

pages = Blueprint("rounds", __name__)

ROUND_FORMS = {"reading": "readings", "round": "rounds", "withdrawal": "withdrawals", "pick": "picks"}


@kept(pages, "/projects/<project>/rounds/<entry>", "round", partial(shell, "round", tuple(ROUND_FORMS)))
def round_here(project: str, entry: str) -> Response:
    """Show a round."""
    return round_page(project, entry, request.args.to_dict(), {})


def round_page(project: str, entry: str, query: dict[str, str], posted: dict[str, Any], status: int = 200) -> Response:
    """Show a round; a posted form stands in for its empty one, and the page stays at its place."""
    stays = {"held": query.get("place", "")} if posted else {}
    shown = view.round(gather.round_of(project, entry, query | stays))
    root, fills = project_address(project), shown.get("fills", {})
    given = {
        "reading": {"place": fills.get("place", ""), "round": entry},
        "round": {"like": entry},
        "withdrawal": {"round": entry},
        "pick": {"round": entry},
    }
    forms = {kind: fresh(kind, f"{root}/{things}", **given[kind]) for kind, things in ROUND_FORMS.items()}
    return live("round", shown, {**forms, **posted}, status)


@pages.get("/projects/<project>/rounds/<entry>.json")
def round_json(project: str, entry: str) -> Response:
    """Answer with a round: its places, and what was read at each in it."""
    summary = gather.summary(project) or {"rounds": [], "places": []}
    items = [item for thing in summary["rounds"] for item in thing["heads"] + thing["past"] if item["entry"] == entry]
    if not items:
        abort(404, "That is not here.")
    read = [item for p in summary["places"] for item in p["heads"] + p["past"] if item.get("round", "") == entry]
    return jsonify({**items[0], "readings": read})
