"""What the phone keeps: static files under their stamp, shells, the worker and the manifest."""

from pathlib import PurePosixPath

from flask import Blueprint, Response, request

from webapp.phone.build import MANIFEST, TYPES, WORKER_ADDRESS, Build, built, kept_file, layers_of
from webapp.phone.stamp import HEADER

pages = Blueprint("phone", __name__)
pages.add_app_template_global(kept_file)
pages.add_app_template_global(layers_of)

FOR_GOOD = "private, max-age=31536000, immutable"
ASK_FIRST = "no-cache"
GONE = "There is no such file in this version. Reload the page.\n"


@pages.get("/static/<stamp>/<path:name>")
def static_file(stamp: str, name: str) -> Response:
    """Give a file of this version; one of another version is not here, and that is not remembered."""
    return from_build(f"/static/{stamp}/{name}", FOR_GOOD)


@pages.get("/shell/<path:name>")
def shell(name: str) -> Response:
    """Give a screen without data."""
    return from_build(f"/shell/{name}", ASK_FIRST)


@pages.get(MANIFEST)
def manifest() -> Response:
    """Give the manifest."""
    return from_build(request.path, ASK_FIRST)


@pages.get(WORKER_ADDRESS)
def worker() -> Response:
    """Give the worker: never a 404, or phones would keep old code for good."""
    build = built()
    return answer(build, WORKER_ADDRESS, build.worker, ASK_FIRST)


def from_build(address: str, caching: str) -> Response:
    """Answer with what the phone keeps at an address."""
    build = built()
    body = build.files.get(address, build.shown.get(address))
    if body is None:
        return Response(GONE, 404, {"Cache-Control": "no-store"}, mimetype="text/plain")
    return answer(build, address, body, caching)


def answer(build: Build, address: str, body: bytes, caching: str) -> Response:
    """Answer with bytes under the stamp, in the smallest encoding that is taken: compressed at the start."""
    headers = {HEADER: build.stamp, "Cache-Control": caching, "Vary": "Accept-Encoding"}
    ways = build.packed[address]
    taken = next((way for way in ways if request.accept_encodings.quality(way) > 0), None)
    if taken is not None:
        body, headers["Content-Encoding"] = ways[taken], taken
    return Response(body, 200, headers, mimetype=TYPES[PurePosixPath(address).suffix])
