"""The web app's manifest: what a phone shows of the program before it is installed, and on its home screen."""

import json
import struct
from collections.abc import Mapping
from pathlib import Path
from types import MappingProxyType
from typing import Any

from webapp.core.tool import Tool
from webapp.phone.made import MadeError
from webapp.phone.stamp import PLACEHOLDER

GROUND = "#faf8f3"  # the light theme's ground, as in static/style.css
ICON = "mark-192.png"
SCREENS = "screens"
# The pictures that `python -m tests.shots` takes, by the names of their files.
SHOWN = MappingProxyType(
    {
        "project": "A project: what was measured, and what is to be done next",
        "reading": "A reading, typed with one thumb",
        "sheet": "A kept sheet: the answer as a mark on the tape",
        "wide": "Slats and gaps on a wide screen",
    }
)


def manifest(static: Path, tools: Mapping[str, Tool]) -> str:
    """Return the manifest; an icon is named by its size (`icons/mark-192.png`) or fits all (`icons/mark.svg`)."""
    return json.dumps(
        {
            "name": "Shoulderline",
            "short_name": "Shoulderline",
            "description": "Numbers for joined furniture, exact, as marks on a tape.",
            "lang": "en",
            "id": "/",
            "start_url": "/",
            "scope": "/",
            "display": "standalone",
            "background_color": GROUND,
            "theme_color": GROUND,
            "icons": [_icon(file) for file in sorted((static / "icons").glob("mark*"))],
            "shortcuts": [_shortcut(tool) for tool in tools.values()],
            "screenshots": [_screenshot(file) for file in sorted((static / SCREENS).glob("*.png"))],
        },
        ensure_ascii=False,
        separators=(",", ":"),
    )


def _icon(file: Path) -> dict[str, str]:
    _, _, size = file.stem.partition("-")
    kind = "image/svg+xml" if file.suffix == ".svg" else f"image/{file.suffix[1:]}"
    return {
        "src": f"/static/{PLACEHOLDER}/icons/{file.name}",
        "sizes": f"{size}x{size}" if size else "any",
        "type": kind,
        "purpose": "any maskable",  # the ground fills the square, and the mark keeps within the middle of it
    }


def _shortcut(tool: Tool) -> dict[str, Any]:
    """Lead to a tool from a long press on the icon: a phone shows the first few."""
    icon = {"src": f"/static/{PLACEHOLDER}/icons/{ICON}", "sizes": "192x192", "type": "image/png"}
    return {"name": tool.title, "description": tool.about, "url": f"/work/{tool.name}", "icons": [icon]}


def _screenshot(file: Path) -> dict[str, str]:
    if file.stem not in SHOWN:
        raise MadeError(f"{file}: this picture has no words; give it some in webapp/phone/manifest.py")
    width, height = size(file.read_bytes())
    return {
        "src": f"/static/{PLACEHOLDER}/{SCREENS}/{file.name}",
        "sizes": f"{width}x{height}",
        "type": "image/png",
        "form_factor": "narrow" if width < height else "wide",
        "label": SHOWN[file.stem],
    }


def size(png: bytes) -> tuple[int, int]:
    """Return a PNG's width and height in pixels, from its head."""
    width, height = struct.unpack(">II", png[16:24])
    return width, height
