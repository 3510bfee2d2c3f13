"""Under an https host that stands in front: its word on host, scheme and client is taken, and only here."""

from collections.abc import Iterable
from typing import Any
from urllib.parse import urlsplit

from a2wsgi import WSGIMiddleware
from werkzeug.middleware.proxy_fix import ProxyFix

from webapp.access.door import Door, host_of
from webapp.access.origin import HEADERS
from webapp.access.way import Way, WsgiApp, marked

PORT = 8490
THREADS = 8
PLAIN = [*HEADERS.items(), ("Content-Type", "text/plain; charset=utf-8"), ("Cache-Control", "no-store")]
WRONG = (
    "The host in front of Shoulderline has to pass on the host as {host} and the scheme as https: "
    "X-Forwarded-Host and X-Forwarded-Proto.\n"
)


class FrontError(ValueError):
    """What was given is no https host."""


def checked(text: str) -> str:
    """Return the origin of an https host as browsers write it, or raise FrontError."""
    try:
        parts = urlsplit(text.lower())
        port = parts.port
    except ValueError as e:
        raise FrontError(f"{text} is no address.") from e
    rest = parts.path.strip("/") or parts.query or parts.fragment or parts.username or parts.password
    if parts.scheme != "https" or not parts.hostname or rest:
        raise FrontError(f"{text} is no https host; write it as https://host.example, without a path.")
    return f"https://{parts.hostname}" + (f":{port}" if port not in (None, 443) else "")


def front(app: WsgiApp, origin: str) -> Door:
    """Return the program as it is asked through the host in front, one proxy deep."""
    host = urlsplit(origin).hostname or ""
    way = Way("front", (host,), paired=True, origin=origin)
    believed = ProxyFix(only(marked(app, way), host_of(origin)), x_for=1, x_proto=1, x_host=1, x_port=0, x_prefix=0)
    return Door(WSGIMiddleware(believed, workers=THREADS))


def only(app: WsgiApp, host: str) -> WsgiApp:
    """Return a program that is reached by https and by one host alone."""

    def asked(environ: dict[str, Any], start_response: Any) -> Iterable[bytes]:
        named = environ.get("HTTP_HOST", "").lower().removesuffix(":443")
        if environ["wsgi.url_scheme"] == "https" and named == host:
            return app(environ, start_response)
        start_response("400 Bad Request", PLAIN)
        return [WRONG.format(host=host).encode()]

    return asked
