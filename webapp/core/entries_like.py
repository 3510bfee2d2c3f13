"""A project started from another one: its settings and its sheets as they stand, none of its readings."""

from fractions import Fraction
from typing import Any, TypeAlias

from webapp.core.entries_project import name_errors
from webapp.core.entries_sheet import sheet_of
from webapp.core.entries_text import HEX, tidy
from webapp.core.tool import Tool

Tools: TypeAlias = dict[str, Tool]
Factors: TypeAlias = dict[str, Fraction]
Outcome: TypeAlias = dict[str, Any]

SHEET = ("tool", "called", "inputs", "unit", "graduation")
PLACES = (4096, 256, 16, 1)  # of the last digits of an id, which count the entries that follow


def draft_like(typed: dict[str, str], summary: Any, tools: Tools, factors: Factors) -> Outcome:
    """Make the entry that starts the project, and in `also` those of its shop and its sheets."""
    name = tidy(typed, "name")
    errors = name_errors(name)
    if summary is None or errors:
        return {"errors": errors or {"name": "The project to start from is not here."}}
    body = {"name": name, "unit": summary["unit"], "graduation": summary["graduation"]}
    also = _settings(summary) + _sheets(summary, tools, factors)
    return {"kind": "project", "body": body, "replaces": [], "also": also}


def _settings(summary: Any) -> list[Outcome]:
    shop = summary["shop"]
    return [{"kind": "settings", "body": {"shop": shop}, "replaces": []}] if shop else []


def _sheets(summary: Any, tools: Tools, factors: Factors) -> list[Outcome]:
    """Return the sheets that stand; one that cannot be worked here stays with its own project."""
    heads = [head for thing in summary["sheets"] for head in thing["heads"]]
    bodies = [{**{key: head[key] for key in SHEET}, "links": []} for head in heads]
    outcomes = [(body, sheet_of(body, tools, factors)) for body in bodies]
    worked = [{**body, **_spoken(outcome["sheet"])} for body, outcome in outcomes if "sheet" in outcome]
    return [{"kind": "sheet", "body": body, "replaces": []} for body in worked]


def _spoken(sheet: dict[str, Any]) -> dict[str, Any]:
    """Return unit and graduation in full, which another version may have left blank."""
    return {key: sheet[key] for key in ("unit", "graduation")}


def sibling(identity: str, number: int) -> str:
    """Return the id of what follows an entry as number so and so: the same one at every press."""
    tail = 0
    for c in identity[-len(PLACES) :]:
        tail = tail * 16 + HEX.find(c)
    return identity[: -len(PLACES)] + "".join([HEX[(tail + number) // place % 16] for place in PLACES])
