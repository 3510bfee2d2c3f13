"""The paired devices, for this machine's own eyes: a new code, and revoking."""

import segno
from flask import Blueprint, Response, abort, current_app, make_response, redirect, render_template, request
from flask_wtf import FlaskForm
from werkzeug.wrappers import Response as AnyResponse
from wtforms import StringField

from webapp.access.log import here, log
from webapp.access.pairing import LONGEST_NAME, NewCode, make_code
from webapp.access.said import since
from webapp.access.way import of
from webapp.pages import gather
from webapp.store.devices import Device
from webapp.store.ids import now

pages = Blueprint("devices", __name__)

STALE = "This page had lain too long to be trusted. Press again."


class DeviceForm(FlaskForm):  # type: ignore[misc]  # flask_wtf has no types
    """A press on the page: it makes a code for a device that may be named, or revokes one."""

    called = StringField("Whose phone?", render_kw={"maxlength": LONGEST_NAME})


@pages.before_request
def here_alone() -> None:
    """Refuse whoever comes in by another door than this machine's: a paired phone pairs no others."""
    if of(request.environ).paired:
        abort(404, "Devices are listed on the shop's own computer alone.")


@pages.get("/devices")
def listed() -> Response:
    """List the devices."""
    return shown()


@pages.post("/devices/code")
def code() -> AnyResponse:
    """Make a code and show it, this once."""
    form = DeviceForm()
    if not form.validate():
        return shown(trouble=STALE, status=400)
    log().note("code made", **here())
    return shown(make_code(gather.store(), form.called.data or ""))


@pages.post("/devices/<device>/revoked")
def revoked(device: str) -> AnyResponse:
    """Revoke a device; it is undone by pairing anew."""
    if not DeviceForm().validate():
        return shown(trouble=STALE, status=400)
    if not gather.store().devices.revoke(device, now()):
        abort(404, "There is no such device here.")
    log().note("revoked", device=device, **here())
    return redirect("/devices", 303)


def shown(made: NewCode | None = None, trouble: str = "", status: int = 200) -> Response:
    """Show the page."""
    lines = [line(each) for each in gather.store().devices.all()]
    form, at = DeviceForm(formdata=None), current_app.config.get("PHONES_AT", "")
    picture = scanned(f"{at}/pair#{made.token}") if made and at else ""
    begin = current_app.config.get("SETUP_AT", str)()
    context = {
        "begin": begin,
        "lines": lines,
        "form": form,
        "at": at,
        "made": made,
        "picture": picture,
        "trouble": trouble,
    }
    page = render_template("devices.html", **context)
    return make_response(page, status)


def line(device: Device) -> dict[str, str]:
    """Return a device in words."""
    return {"id": device.id, "name": device.name, "said": since(device)}


def scanned(text: str) -> str:
    """Return a QR code as the address of a picture."""
    drawn: str = segno.make(text, error="m", micro=False).svg_data_uri(scale=5, border=4, light="#fff")
    return drawn
