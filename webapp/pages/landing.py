"""On which screen a form's maker stands: where to go after keeping, and what is shown again where it was refused."""

from typing import Any

from webapp.core.address import (
    glue_address,
    part_address,
    project_address,
    reading_address,
    round_address,
    sheet_address,
)
from webapp.core.piece_glue import GLUE
from webapp.core.rounds import number_in
from webapp.pages import gather
from webapp.pages.kinds import FORMS

Summary = dict[str, Any]
Typed = dict[str, str]

SCREENS = {"places": "reading", "sheets": "sheet", "parts": "part"}  # the lists whose things have a page
OF_AN_ENTRY = ("note", "withdrawal", "pick", "part")  # kinds whose form names an entry that may have a page
OF_A_SHEET = "sheet"  # what a sheet's own forms say that they stand on
ADDRESSES = {"reading": reading_address, "sheet": sheet_address, "part": part_address}


def landing(kind: str, project: str, typed: Typed) -> tuple[str, str]:
    """Return the screen that a form stands on, and the entry that it shows."""
    entry = typed.get("entry", "")
    around = typed.get("round") or typed.get("like", "")
    if around and kind in FORMS["round"]:
        return "round", around
    if typed.get("on") == OF_A_SHEET:
        return "sheet", _sheet_of(gather.summary(project) or {}, entry)
    if kind == "done":
        return ("glue" if typed.get("step", "").startswith(GLUE) else "project"), ""
    return screen_of(project, entry) if kind in OF_AN_ENTRY else ("project", "")


def screen_of(project: str, entry: str) -> tuple[str, str]:
    """Return the screen of the thing that an entry belongs to; the project's, or the list's before the glue."""
    summary: Summary = gather.summary(project) or {}
    for name, screen in SCREENS.items():
        if _around(summary.get(name, []), entry):
            return screen, entry
    ticks = [item for thing in _around(summary.get("done", []), entry) for item in thing["heads"] + thing["past"]]
    return ("glue" if any(item["step"].startswith(GLUE) for item in ticks) else "project"), ""


def _around(things: list[Summary], entry: str) -> list[Summary]:
    """Return the thing that an entry belongs to: one or none."""
    return [thing for thing in things if any(item["entry"] == entry for item in thing["heads"] + thing["past"])]


def _sheet_of(summary: Summary, entry: str) -> str:
    """Return the sheet that stands where one was worked again; of a cut, the sheet that it is of."""
    for cut in _around(summary.get("cuts", []), entry):
        return str((cut["heads"] + cut["past"])[0]["of"])
    for sheet in _around(summary.get("sheets", []), entry):
        return str(sheet["heads"][0]["entry"]) if len(sheet["heads"]) == 1 else entry
    return entry


def landing_address(kind: str, project: str, typed: Typed) -> str:
    """Return the address of the screen that a form stands on."""
    screen, entry = landing(kind, project, typed)
    if screen == "round":
        number = number_in(gather.summary(project), entry, typed.get("place", ""))
        return f"{round_address(project, entry)}?at={number}" if number else round_address(project, entry)
    if screen in ADDRESSES:
        return ADDRESSES[screen](project, entry)
    return glue_address(project) if screen == "glue" else project_address(project)
