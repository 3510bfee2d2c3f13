"""Only the program's own pages may change anything, or read anything but by being opened."""

from flask import Flask, Response, abort, request

from webapp.access.way import Request

POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self'; manifest-src 'self'; "
    "worker-src 'self'; img-src 'self' data:; base-uri 'none'; object-src 'none'; frame-ancestors 'none'; "
    "form-action 'self'"
)

HEADERS = {
    "Content-Security-Policy": POLICY,
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Permissions-Policy": "camera=(), geolocation=(), microphone=(), payment=(), usb=()",
    "Referrer-Policy": "same-origin",
    "X-Content-Type-Options": "nosniff",
    "X-Frame-Options": "DENY",
}

HTTPS_ONLY = f"max-age={365 * 24 * 3600}"  # of this name alone
STRANGER = "This came from another page than Shoulderline's own. Nothing was changed."


def guard(app: Flask) -> None:
    """Check the host and the origin of every request, and put the strict headers on every answer."""
    app.request_class = Request
    app.before_request(refuse_strangers)
    app.after_request(strict)


def refuse_strangers() -> None:
    """Refuse what another site sends; opening a page by a link from elsewhere stays allowed."""
    reading = request.method in ("GET", "HEAD", "OPTIONS")
    if not (_opened() if reading else _own()):
        abort(403, STRANGER)


def _opened() -> bool:
    site = request.headers.get("Sec-Fetch-Site", "none")
    opening = request.headers.get("Sec-Fetch-Mode") == "navigate"
    return site in ("same-origin", "none") or (opening and request.headers.get("Sec-Fetch-Dest") == "document")


def _own() -> bool:
    """Trust the browser's own word on the site, and its Origin where it gives one; one of the two is needed."""
    site, origin = request.headers.get("Sec-Fetch-Site"), request.headers.get("Origin")
    ours = origin == request.host_url.rstrip("/")
    if site is None:
        return ours
    return site == "same-origin" and (ours or origin is None)


def strict(response: Response) -> Response:
    """Put the strict headers on an answer; what is not marked otherwise is not stored."""
    response.headers.extend(HEADERS)
    response.headers.setdefault("Cache-Control", "no-store")
    if request.is_secure:
        response.headers.setdefault("Strict-Transport-Security", HTTPS_ONLY)
    return response
