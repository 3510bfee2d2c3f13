"""Nobody comes in from the shop's network but by a paired device; everybody else gets the pairing page."""

from datetime import UTC, datetime, timedelta
from typing import Any

from flask import Flask, Response, current_app, g, jsonify, make_response, render_template, request
from flask.sessions import SecureCookieSessionInterface
from werkzeug.exceptions import SecurityError

from webapp.access.pairing import fast_hash, stamp
from webapp.access.way import of
from webapp.store import Store
from webapp.store.devices import Device

COOKIE = "__Host-shoulderline-device"
KEPT = timedelta(days=400)  # browsers keep a cookie no longer than that
AGAIN = timedelta(days=1)  # how often its time begins anew
NOTED = timedelta(minutes=1)  # how exactly the last visit is known
MARK = "Shoulderline-Pairing"  # tells a phone that this 401 is the shop's own, not some network's
NOT_PAIRED = "This device is not paired with the shop's computer."
# What the pairing page is made of. With the manifest and its pictures it can be put on a phone's home screen: a phone
# is paired inside the installed app, and they are the same in every shop.
OPEN = frozenset({"pairing.page", "pairing.enter", "pairing.part", "phone.manifest"})
PICTURES = ("icons/", "screens/")


def only_paired(app: Flask) -> None:
    """Ask for a paired device at every door that wants one."""
    app.session_interface = Session()
    app.before_request(refuse_unpaired)
    app.after_request(again)


class Session(SecureCookieSessionInterface):
    """The session of the forms' tokens; over https its cookie is held to https and to this host."""

    def get_cookie_name(self, app: Flask) -> str:
        """Name the cookie: browsers hold one with this prefix to its host."""
        name = super().get_cookie_name(app)
        return f"__Host-{name}" if request.is_secure else name

    def get_cookie_secure(self, app: Flask) -> bool:
        """Say whether the cookie is for https alone."""
        return request.is_secure


def refuse_unpaired() -> Response | None:
    """Answer who is not paired; nothing where the request may go on."""
    g.device = None
    if not of(request.environ).paired or isinstance(request.routing_exception, SecurityError):
        return None  # a wrong host is refused as such
    g.device = known()
    return None if g.device or is_open() else pairing_page("")


def known() -> Device | None:
    """Return the paired device that asks."""
    key = request.cookies.get(COOKIE, "")
    return store().devices.by_key(fast_hash(key)) if key else None


def is_open() -> bool:
    """Say whether what is asked for belongs to the pairing page, or frees any phone of a worker that was withdrawn."""
    name = (request.view_args or {}).get("name", "")
    picture = request.endpoint == "phone.static_file" and name.startswith(PICTURES)
    freed = request.endpoint == "phone.worker" and current_app.config.get("WORKER_WITHDRAWN", False)
    return picture or freed or request.endpoint in OPEN


def pairing_page(words: str, status: int = 401) -> Response:
    """Answer with the pairing page, or in JSON where that was asked for."""
    if request.path.endswith(".json") or request.path == "/sync":
        answer = make_response(jsonify({"errors": {"": words or NOT_PAIRED}}), status)
    else:
        answer = make_response(render_template("pairing.html", words=words), status)
    answer.headers[MARK] = "wanted"
    return answer


def again(response: Response) -> Response:
    """Note that a device was here, and begin its cookie's time anew, both now and then only."""
    device: Device | None = g.get("device")
    if device is None:
        return response
    at = datetime.now(UTC)
    away = at - datetime.fromisoformat(device.seen_at)
    if away > NOTED:
        store().devices.seen(device.id, stamp(at))
    if away > AGAIN:
        give(response, request.cookies[COOKIE])
    return response


def give(response: Any, key: str) -> None:
    """Give a device its key: for this host alone, https alone, the program's own pages alone, and no script."""
    response.set_cookie(COOKIE, key, max_age=KEPT, secure=True, httponly=True, samesite="Strict", path="/")


def store() -> Store:
    """Return the program's store."""
    found: Store = current_app.extensions["shoulderline"]
    return found
