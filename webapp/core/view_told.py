"""What is told of where a number came from: a reading as it was said; what was typed for a sheet, and its sums."""

from dataclasses import dataclass
from typing import Any, TypeAlias

from webapp.core.entries_text import is_identity
from webapp.core.follow_ground import Ground
from webapp.core.items import Known
from webapp.core.measures import LABELS
from webapp.core.text import fold_name
from webapp.core.tool import Tool
from webapp.core.view_project import said, tool_title, when

Item: TypeAlias = dict[str, Any]
View: TypeAlias = dict[str, Any]

BEFORE = 5  # earlier readings of a place that are shown


@dataclass(frozen=True)
class Walk:
    """A walk up from a number: what there is, and what was shown on the way: a ring of links has an end."""

    here: Ground
    items: dict[str, Known]
    tools: list[Tool]
    shown: dict[str, bool]


def told(walk: Walk, known: Known) -> View:
    """Give what a reading says of itself, or a sheet: what was typed for it, and its sums."""
    kind, item = known
    if kind == "reading":
        notes = [note["text"] for note in item["notes"]]
        return {"facts": [reading_words(item), *notes], "before": before(walk, item), "typed": [], "sums": []}
    if kind == "part":
        return {"facts": [], "before": [], "typed": [], "sums": []}
    linked = [link["field"] for link in item["links"]]
    labels = field_labels(walk, known)
    typed = [{"label": labels.get(n, n), "text": text} for n, text in item["inputs"].items() if n not in linked]
    sums = walk.here.worked.get(item["entry"], {}).get("sheet", {}).get("sums", [])
    facts = [f"{tool_title(walk.tools, item['tool'])}, kept {when(item['made_at'])}, {by_words(item['by'])}"]
    return {"facts": facts, "before": [], "typed": typed, "sums": sums}


def reading_words(reading: Item) -> str:
    """Say a reading: how, when and by whom; and why it was withdrawn."""
    told = f"{said(reading)}, said at {reading['graduation']}, {when(reading['made_at'])}, {by_words(reading['by'])}"
    why = f": {reading['why']}" if reading["why"] else ""
    return f"{told}; withdrawn{why}" if reading["withdrawn"] else told


def by_words(by: str) -> str:
    """Say which device kept something; a phone by the end of its name."""
    return f"by the phone {by[-4:]}" if is_identity(by) else f"by the {by}"


def before(walk: Walk, reading: Item) -> list[str]:
    """Say what a reading replaced, the latest first."""
    key = fold_name(reading["place"])
    places = [place for place in walk.here.summary["places"] if place["key"] == key]
    past = [item for place in places for item in place["past"] if item["rank"] < reading["rank"]]
    return [reading_words(item) for item in sorted(past, key=lambda item: item["rank"], reverse=True)[:BEFORE]]


def field_labels(walk: Walk, known: Known) -> dict[str, str]:
    """Return the labels of what can be linked in a sheet or a part."""
    if known[0] == "part":
        return LABELS
    return {field.name: field.label for t in walk.tools if t.name == known[1].get("tool", "") for field in t.fields}
