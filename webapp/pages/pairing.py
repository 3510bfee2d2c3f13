"""The pairing page, which is all that an unpaired device gets: one field, and plain words."""

from flask import Blueprint, Response, abort, current_app, g, redirect, request
from werkzeug.wrappers import Response as AnyResponse

from webapp.access.devices import give, pairing_page
from webapp.access.log import here, log
from webapp.access.pairing import Outcome, Pace, pair
from webapp.access.way import of
from webapp.folders import STATIC
from webapp.pages import gather

pages = Blueprint("pairing", __name__)

PARTS = {"pairing.css": "text/css", "pairing.js": "text/javascript"}
PACE = "shoulderline-pace"
MOST = 4096  # bytes of a form that holds a code
GIVEN_UP = 429


def asked() -> bool:
    """Say whether a device that comes in by this door has to be paired; a wrong door has no such page."""
    return of(request.environ).paired or abort(404, "This computer needs no pairing. Phones are paired at /devices.")


@pages.get("/pair")
def page() -> AnyResponse:
    """Show the pairing page; who is paired already goes home."""
    return redirect("/", 303) if asked() and g.device else pairing_page("", 200)


@pages.post("/pair")
def enter() -> AnyResponse:
    """Take a code, and give the device its key; a page from elsewhere never gets here."""
    asked()
    request.max_content_length = MOST
    found = tried(request.form.get("code", ""), request.form.get("token", ""))
    if not found.key:
        log().refused(f"pairing: {found.why}", **here())
        return pairing_page(found.words, GIVEN_UP if found.why == "often" else 401)
    log().note("paired", device=found.device, **here())
    home = redirect("/", 303)
    give(home, found.key)
    return home


def tried(typed: str, token: str) -> Outcome:
    """Try a code, unless too many are tried."""
    pace: Pace = current_app.extensions.setdefault(PACE, Pace())
    if not pace.may():
        return Outcome(why="often")
    return pair(gather.store(), typed, token, request.headers.get("User-Agent", ""))


@pages.get("/pair/<any('pairing.css', 'pairing.js'):name>")
def part(name: str) -> Response:
    """Give the pairing page's style or its script."""
    return Response((STATIC / name).read_bytes(), 200, {"Cache-Control": "no-cache"}, mimetype=PARTS[name])
