"""What a part's page says: each measure as drawn and as built, side by side, its joints, and what was trimmed."""

from fractions import Fraction
from typing import Any, TypeAlias

from webapp.core.address import form_address, measure_address, origin_address, sheet_address, work_address
from webapp.core.built import Trim, built_measures, drawn_words, exact_of, trims
from webapp.core.drawing import mark_view
from webapp.core.entries_part import part_of
from webapp.core.follow_ground import Ground
from webapp.core.mark import mark
from webapp.core.measures import LABELS, MEASURES, measure_place
from webapp.core.numbers import BUILT
from webapp.core.piece_room import room_warnings
from webapp.core.setting import Setting, setting
from webapp.core.sums import amount, fine
from webapp.core.view_part_sources import ground_of, source_words, sources_view
from webapp.core.view_piece import joint_line, part_words
from webapp.core.view_project import back_to, when

Gathered: TypeAlias = dict[str, Any]
View: TypeAlias = dict[str, Any]
Item: TypeAlias = dict[str, Any]

FACING = {"": "", "lower": "its lower edge faces the opening", "upper": "its upper edge faces the opening"}


def part_view(g: Gathered, thing: Item) -> View:
    """Give a part's page; what its form leaves blank stays, and `stands` says it in the form's fields."""
    summary = g["project"]
    how = setting(summary["unit"], summary["graduation"], g["factors"])
    part = (thing["heads"] + thing["past"])[0] if thing["heads"] else thing["past"][-1]
    built = built_measures(summary, part, g["worked"])
    here = ground_of(g)
    rows = [_row(here, part, key, built) for key, _label in MEASURES]
    return {
        "title": part["name"],
        "project": back_to(summary),
        "words": "; ".join([words for words in (part_words(part), FACING[part["faces"]]) if words]),
        "gone": not thing["heads"],
        "rows": [row for row in rows if row["there"]],
        "ways": [{"title": f"Measure its {row['label']}", "href": row["measure"]} for row in rows if not row["there"]],
        "warnings": room_warnings(summary, g["worked"], g["factors"], part["entry"]),
        "joints": _joints(summary, part),
        "trims": [_trim(g, trim, how) for trim in trims(summary, part["name"], g["worked"])],
        "rivals": [_rival(head, how) for head in thing["heads"]] if len(thing["heads"]) > 1 else [],
        "past": [_rival(item, how) for item in thing["past"]] if thing["heads"] else [],
        "sources": sources_view(here, part) if thing["heads"] else None,
        "overall": work_address("overall", {"project": summary["id"]}),
        "another": form_address(summary["id"], "part"),
        "stands": _stands(part, how),
    }


def _row(here: Ground, part: Item, key: str, built: dict[str, Fraction]) -> View:
    """Give a measure as drawn and as built, with the difference in words."""
    drawn, made, how = part["measures"].get(key), built.get(key), here.how
    exact = exact_of(drawn["inches"]) if drawn is not None else None
    text = drawn_words(part, key, how) if drawn is not None else ""
    return {
        "there": drawn is not None or made is not None,
        "label": LABELS[key],
        "drawn": mark_view(text) if text else None,
        "built": mark_view(mark(made, how)) if made is not None else None,
        "drawn_href": origin_address(here.summary["id"], part["entry"], key),
        "built_href": origin_address(here.summary["id"], part["entry"], f"{BUILT}{key}"),
        "difference": difference(exact, made, how),
        "source": source_words(here, part, key),
        "measure": measure_address(here.summary["id"], measure_place(part["name"], key)),
    }


def difference(drawn: Fraction | None, built: Fraction | None, how: Setting) -> str:
    """Say by how much a measure in the wood differs from the drawing; nothing where one of them is not known."""
    if drawn is None or built is None:
        return ""
    if drawn == built:
        return "as drawn"
    size = abs(built - drawn)
    return f"{amount(size, how)} ({fine(size, how)}) {'over' if built > drawn else 'under'}"


def _joints(summary: Any, part: Item) -> list[View]:
    heads = [(thing, head) for thing in summary["joints"] for head in thing["heads"]]
    own = [(thing, head) for thing, head in heads if _in_joint(summary, head, part)]
    return [joint_line(summary, head, len(thing["heads"]) > 1) for thing, head in own]


def _in_joint(summary: Any, joint: Item, part: Item) -> bool:
    found = [part_of(summary, entry) for entry in joint["parts"]]
    return any(each is not None and each["entry"] == part["entry"] for each in found)


def _trim(g: Gathered, trim: Trim, how: Setting) -> View:
    """Give one trim: how much came off, by which sheet, when."""
    cuts = [cut for thing in g["project"]["cuts"] for cut in thing["heads"] if cut["entry"] == trim.cut]
    items = [item for thing in g["project"]["sheets"] for item in thing["heads"] + thing["past"]]
    called = [item["called"] for item in items if item["entry"] == cuts[0]["of"]]
    return {
        "words": f"{amount(trim.amount, how)} off its edge",
        "title": (called + ["a sheet"])[0],
        "href": sheet_address(g["project"]["id"], cuts[0]["of"]),
        "when": when(cuts[0]["made_at"]),
    }


def _rival(part: Item, how: Setting) -> View:
    sizes = [f"{LABELS.get(key, key)} {drawn_words(part, key, how)}" for key in part["measures"]]
    return {"entry": part["entry"], "words": "; ".join([part_words(part), *sizes]), "when": when(part["made_at"])}


def _stands(part: Item, how: Setting) -> dict[str, str]:
    """Say what stands in each field of the form, by the field's id."""
    sizes = {f"part-{key}": drawn_words(part, key, how) for key in part["measures"]}
    counts = {"part-count": str(part["count"]), "part-spare": str(part["spare"])}
    return {"part-name": part["name"], "part-wood": part["wood"], **counts, **sizes}
