"""All that the phone keeps, made once at the start and held in memory under one stamp."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path
from types import MappingProxyType

from flask import Flask, current_app

from webapp.folders import CORE, STATIC
from webapp.phone import strip
from webapp.phone.bundle import bundle, faces
from webapp.phone.made import MadeError, engine, made_module, worker
from webapp.phone.manifest import SCREENS, manifest
from webapp.phone.packed import packed
from webapp.phone.parts import parts
from webapp.phone.shells import routes, shells
from webapp.phone.stamp import PLACEHOLDER, put_stamp, stamp, stamped
from webapp.phone.translate import translate
from webapp.tools import TOOLS
from webapp.units import FACTORS

PLACE = "shoulderline-build"
MANIFEST = "/manifest.webmanifest"
WORKER = "worker.js"
WORKER_ADDRESS = "/sw.js"
WITHDRAWN = "withdrawn.js"
UNKEPT = (WORKER, WITHDRAWN, "setup.js", "setup.css", "pairing.js", "pairing.css")  # the worker, and what stands alone
TYPES = MappingProxyType(
    {
        ".css": "text/css",
        ".js": "text/javascript",
        ".png": "image/png",
        ".svg": "image/svg+xml",
        ".txt": "text/plain",
        ".webmanifest": "application/manifest+json",
        ".woff2": "font/woff2",
        "": "text/html",  # a shell
    }
)


@dataclass(frozen=True)
class Build:
    """What the phone keeps, by address; the worker, the name of the translated core, and what is only shown."""

    stamp: str
    engine: str
    files: dict[str, bytes]
    worker: bytes
    packed: dict[str, dict[str, bytes]]  # each address by the encodings that make it smaller
    shown: dict[str, bytes]  # the manifest's pictures: a browser asks for them when it offers to install


@cache
def translated() -> dict[str, str]:
    """Return the translated core; it is the same for every application of a process."""
    return translate(CORE)


def start(app: Flask) -> Build:
    """Make all that the phone keeps; called once every page is registered. What cannot be made stops it."""
    app.extensions.pop(PLACE, None)
    core = translated()
    ways = routes(app, TOOLS)
    made = made_module(core, TOOLS, FACTORS, parts(app.jinja_env), ways)
    texts = {
        **static_files(STATIC),
        **core_files(core),
        _static("made.js"): made.encode(),
        MANIFEST: manifest(STATIC, TOOLS).encode(),
        **shells(app, TOOLS),
    }
    drafts = {address: bare(address, body) for address, body in texts.items()}
    script = strip.script((STATIC / WORKER).read_text(encoding="utf-8"))
    draft_worker = worker(script, PLACEHOLDER, drafts, ways).encode()
    pictures = screens(STATIC)
    mark = stamp({**drafts, **pictures, WORKER_ADDRESS: draft_worker})
    files, own, shown = stamped(drafts, mark), put_stamp(draft_worker, mark), stamped(pictures, mark)
    build = Build(mark, engine(core), files, own, packed({**files, **shown, WORKER_ADDRESS: own}), shown)
    app.extensions[PLACE] = build
    return build


def withdraw(app: Flask) -> None:
    """Give phones, in the worker's place, one that takes itself and its files away; what was kept stays."""
    build: Build = app.extensions[PLACE]
    own = strip.script((STATIC / WITHDRAWN).read_text(encoding="utf-8")).encode()
    app.extensions[PLACE] = replace(build, worker=own, packed={**build.packed, **packed({WORKER_ADDRESS: own})})
    app.config["WORKER_WITHDRAWN"] = True


def bare(address: str, body: bytes) -> bytes:
    """Return a file as the phone keeps it: scripts and styles without their comments."""
    ways = {".js": strip.script, ".css": strip.style}
    way = ways.get(Path(address).suffix)
    if way is None:
        return body
    try:
        return way(body.decode()).encode()
    except strip.StripError as error:
        raise MadeError(f"{address}: {error}") from None


def core_files(core: Mapping[str, str]) -> dict[str, bytes]:
    """Return the translated core, by address: one file of all, and one for each module that scripts import."""
    scripts = [file.read_text(encoding="utf-8") for file in STATIC.glob("*.js")]
    files = {"core.js": bundle(core)} | {f"core/{name}.js": text for name, text in faces(core, scripts).items()}
    return {_static(name): text.encode() for name, text in files.items()}


def static_files(folder: Path) -> dict[str, bytes]:
    """Return the files that pages load, by address; the worker and the set-up page's files are none of these."""
    files = [file for file in sorted(folder.rglob("*")) if file.is_file() and file.name[0] != "."]
    for file in files:
        if file.suffix not in TYPES:
            raise MadeError(f"{file}: no type is known for {file.suffix}; name it in webapp/phone/build.py")
    names = {file.relative_to(folder).as_posix(): file for file in files if file.parent.name != SCREENS}
    return {_static(name): file.read_bytes() for name, file in names.items() if name not in UNKEPT}


def screens(folder: Path) -> dict[str, bytes]:
    """Return the manifest's pictures, by address; the worker keeps none of them."""
    return {_static(f"{SCREENS}/{file.name}"): file.read_bytes() for file in sorted((folder / SCREENS).glob("*.png"))}


def _static(name: str) -> str:
    return f"/static/{PLACEHOLDER}/{name}"


def built() -> Build:
    """Return the running program's build."""
    found: Build = current_app.extensions[PLACE]
    return found


def kept_file(name: str) -> str:
    """Return the address of a static file: for templates, while the build is being made as well."""
    found: Build | None = current_app.extensions.get(PLACE)
    return f"/static/{found.stamp if found else PLACEHOLDER}/{name}"
