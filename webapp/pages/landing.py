"""On which screen a form's maker stands: where to go after keeping, and what is shown again where it was refused."""

from typing import Any

from webapp.core.address import glue_address, part_address, project_address, reading_address, sheet_address
from webapp.core.piece_glue import GLUE
from webapp.pages import gather

SCREENS = {"places": "reading", "sheets": "sheet", "parts": "part"}  # the lists whose things have a page
OF_AN_ENTRY = ("note", "withdrawal", "pick", "part")  # kinds whose form names an entry that may have a page


def screen_of(project: str, entry: str) -> str:
    """Return the screen of the thing that an entry belongs to; the project's, or the list's before the glue."""
    summary: dict[str, Any] = gather.summary(project) or {}
    for name, screen in SCREENS.items():
        if holds(summary.get(name, []), entry):
            return screen
    ticks = [t for t in summary.get("done", []) if holds([t], entry)]
    return "glue" if any(item["step"].startswith(GLUE) for t in ticks for item in t["heads"] + t["past"]) else "project"


def holds(things: list[dict[str, Any]], entry: str) -> bool:
    """Say whether an entry is among those of things."""
    return any(item["entry"] == entry for thing in things for item in thing["heads"] + thing["past"])


def landing(kind: str, project: str, typed: dict[str, str]) -> str:
    """Return the screen that a form stands on."""
    if kind == "done":
        return "glue" if typed.get("step", "").startswith(GLUE) else "project"
    if kind not in OF_AN_ENTRY:
        return "project"
    return screen_of(project, typed.get("entry", ""))


def landing_address(kind: str, project: str, typed: dict[str, str]) -> str:
    """Return the address of the screen that a form stands on."""
    entry = typed.get("entry", "")
    addresses = {"reading": reading_address, "sheet": sheet_address, "part": part_address}
    screen = landing(kind, project, typed)
    if screen in addresses:
        return addresses[screen](project, entry)
    return glue_address(project) if screen == "glue" else project_address(project)
