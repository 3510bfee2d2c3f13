"""Where a part's measures come from, and the numbers of kept sheets that they can be taken from."""

from typing import Any, TypeAlias

from webapp.core.drawing import mark_view
from webapp.core.follow_ground import WHY, Ground, Source, ground
from webapp.core.follow_order import above
from webapp.core.links import link_of
from webapp.core.measures import MEASURES
from webapp.core.numbers import Number
from webapp.core.rings import stands_on, things_of
from webapp.core.sentence import sentence

Gathered: TypeAlias = dict[str, Any]
View: TypeAlias = dict[str, Any]
Item: TypeAlias = dict[str, Any]

OWN = "{sheet} takes a number from this part, so it gives none back to it: type that number there, then it can."


def ground_of(g: Gathered) -> Ground:
    """Return where the links of the project that was gathered lead."""
    return ground(g["project"], g["worked"], g["factors"])


def source_words(here: Ground, part: Item, key: str) -> str:
    """Say where a part's measure comes from, and what became of that since; nothing where it was typed."""
    links = [link_of(link) for link in part["links"] if link["field"] == key]
    return _words(here, here.source(links[0])) if links else ""


def _words(here: Ground, source: Source) -> str:
    if source.why or source.number is None:
        return f"linked; {WHY.get(source.why, '')}"
    called = [item.get("called", "") for _kind, item in here.heads[source.link.entry]]
    label = f"{called[0]}, {source.number.label}" if called and called[0] else source.number.label
    return f"from {label}" + (f"; it is now {source.number.said}" if source.changed else "")


def sources_view(here: Ground, part: Item) -> View | None:
    """Give the numbers of kept sheets that a measure can be taken from; of one that stands on the part, why none."""
    sheets = [thing["heads"][0] for thing in here.summary["sheets"] if len(thing["heads"]) == 1]
    thing_of = things_of(here.summary)
    on, own = stands_on(here.summary, thing_of), thing_of.get(part["entry"], "")
    rings = [sheet for sheet in sheets if own in above(thing_of[sheet["entry"]], on)]
    found = [_sheet(here, sheet) for sheet in sheets if sheet not in rings]
    shown = [sheet for sheet in found if sheet["numbers"]]
    if not shown and not rings:
        return None
    return {
        "measures": [{"key": key, "label": label} for key, label in MEASURES],
        "sheets": shown,
        "own": [sentence(OWN, {"sheet": sheet["called"] or sheet["tool"]}) for sheet in rings],
    }


def _sheet(here: Ground, sheet: Item) -> View:
    """Give a sheet with its answer and figures that are lengths."""
    worked = here.worked.get(sheet["entry"], {}).get("sheet", {})
    said = [worked["answer"], *worked.get("figures", [])] if worked else []
    keys = [each["key"] for each in said if isinstance(each["value"], dict)]
    given = here.given("sheet", sheet)
    numbers = [given[key] for key in keys if key in given]
    return {"title": sheet["called"], "numbers": [_number(sheet["entry"], number) for number in numbers]}


def _number(entry: str, number: Number) -> View:
    return {
        "value": f"{entry} {number.key} {number.inches}",
        "label": number.label,
        "mark": mark_view(number.said),
    }
