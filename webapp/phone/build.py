"""All that the phone keeps, made once at the start and held in memory under one stamp."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path
from types import MappingProxyType

from flask import Flask, current_app

from webapp.core.tool import Tool
from webapp.folders import CORE, STATIC
from webapp.phone import strip
from webapp.phone.bundle import bundle, face, later, layer
from webapp.phone.made import MadeError, engine, made_modules, tool_script, worker
from webapp.phone.manifest import SCREENS, manifest
from webapp.phone.packed import packed
from webapp.phone.parts import parts
from webapp.phone.pieces import Key, Piece
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
FIRST = "screen"  # the script that every page names
SOON = {"home": ["folding.js"], "diagnostics": ["diagnostics.js"]}
LINES = "lines"  # the kind of a field that is a list
CLASSIC = ("chosen.js",)  # no module: it stands in the head, before anything is drawn
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
    """What the phone keeps, by address; the worker, the name of the translated core, and what is given but not kept."""

    stamp: str
    engine: str
    files: dict[str, bytes]
    worker: bytes
    packed: dict[str, dict[str, bytes]]  # each address by the encodings that make it smaller
    shown: dict[str, bytes]  # the manifest's pictures, and each script by itself for who looks into it


@cache
def translated() -> dict[Key, Piece]:
    """Return the translated core; it is the same for every application of a process."""
    return translate(CORE)


def start(app: Flask) -> Build:
    """Make all that the phone keeps; called once every page is registered. What cannot be made stops it."""
    app.extensions.pop(PLACE, None)
    core = translated()
    ways = routes(app, TOOLS)
    layers, faces = scripts(core, made_modules(core, TOOLS, FACTORS, parts(app.jinja_env), ways))
    texts = {
        **static_files(STATIC),
        **layers,
        MANIFEST: manifest(STATIC, TOOLS).encode(),
        **shells(app, TOOLS),
    }
    drafts = {address: bare(address, body) for address, body in texts.items()}
    script = strip.script((STATIC / WORKER).read_text(encoding="utf-8"))
    draft_worker = worker(script, PLACEHOLDER, drafts, ways).encode()
    pictures = {**screens(STATIC), **faces}
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


def scripts(core: Mapping[Key, Piece], made: Mapping[str, str]) -> tuple[dict[str, bytes], dict[str, bytes]]:
    """Return the layers of all scripts, by address, and a face for each script that begins none."""
    files = [file for file in STATIC.glob("*.js") if file.name not in (*UNKEPT, *CLASSIC)]
    texts = {file.stem: file.read_text(encoding="utf-8") for file in files} | dict(made)
    roots = [FIRST, *later(texts), *map(tool_script, TOOLS)]
    whole = bundle(texts, core, *roots)
    layers = {_static(f"{root}.js"): layer(whole, root).encode() for root in roots}
    faces = {_static(f"{name}.js"): face(whole, name).encode() for name in texts if name not in roots}
    return layers, faces


def static_files(folder: Path) -> dict[str, bytes]:
    """Return the files that pages load, by address, but for the modules among the scripts: these stand in layers."""
    files = [file for file in sorted(folder.rglob("*")) if file.is_file() and file.name[0] != "."]
    for file in files:
        if file.suffix not in TYPES:
            raise MadeError(f"{file}: no type is known for {file.suffix}; name it in webapp/phone/build.py")
    names = {file.relative_to(folder).as_posix(): file for file in files if file.parent.name != SCREENS}
    kept = {name: file for name, file in names.items() if file.suffix != ".js" or name in CLASSIC}
    return {_static(name): file.read_bytes() for name, file in kept.items() if name not in UNKEPT}


def screens(folder: Path) -> dict[str, bytes]:
    """Return the manifest's pictures, by address; the worker keeps none of them."""
    return {_static(f"{SCREENS}/{file.name}"): file.read_bytes() for file in sorted((folder / SCREENS).glob("*.png"))}


def _static(name: str) -> str:
    return f"/static/{PLACEHOLDER}/{name}"


def built() -> Build:
    """Return the running program's build."""
    found: Build = current_app.extensions[PLACE]
    return found


def layers_of(screen: str, tool: Tool | None) -> list[str]:
    """Return the layers that a screen goes on to load: its page asks for them at once, not one after the other."""
    if screen in SOON:
        return SOON[screen]
    if screen == "tool" and tool is not None:
        rows = ["rows.js"] if any(field.kind == LINES for field in tool.fields) else []
        return [f"{tool_script(tool.name)}.js", "pad.js", *rows]
    return ["folding.js", "linked.js", "more.js", *(f"{tool_script(name)}.js" for name in TOOLS)]


def kept_file(name: str) -> str:
    """Return the address of a static file: for templates, while the build is being made as well."""
    found: Build | None = current_app.extensions.get(PLACE)
    return f"/static/{found.stamp if found else PLACEHOLDER}/{name}"
