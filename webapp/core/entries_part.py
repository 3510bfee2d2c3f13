"""Parts of the piece, from a form's fields."""

from fractions import Fraction
from typing import Any, TypeAlias

from webapp.core.entries_cut import measure_error
from webapp.core.entries_facts import NOT_HERE, reading_error
from webapp.core.entries_text import NAME, line_error, needed_error, tidy
from webapp.core.links import Link, links_error, read_links, written_link
from webapp.core.mark import exact
from webapp.core.measures import LABELS
from webapp.core.reading import ReadingError, read, read_count
from webapp.core.rings import ring_errors
from webapp.core.setting import Setting, setting
from webapp.core.text import fold_name, small
from webapp.core.tool import Tool

Tools: TypeAlias = dict[str, Tool]
Factors: TypeAlias = dict[str, Fraction]
Outcome: TypeAlias = dict[str, Any]
Body: TypeAlias = dict[str, Any]
Item: TypeAlias = dict[str, Any]

FACES = ("", "lower", "upper")  # the edge of a rail that faces the opening
FORGET = "none"  # what is typed to take a measure out again
MOST = 1000
ASK_PART = "Name the part, as upper rail."
ASK_MEASURE = "Say which measure of the part takes this number, then press again."
SAME_NAME = "Another part has this name; give each its own."


def draft_part(typed: dict[str, str], summary: Any, tools: Tools, factors: Factors) -> Outcome:
    """Make a part, or change the one that `entry` names: what is left blank stays as it is."""
    if summary is None:
        return {"errors": {"name": NOT_HERE}}
    before = part_of(summary, tidy(typed, "entry"))
    how = setting(summary["unit"], summary["graduation"], factors)
    name = tidy(typed, "name") or (before["name"] if before else "")
    body: Body = {
        "name": name,
        "wood": tidy(typed, "wood") or (before["wood"] if before else ""),
        "faces": _faces(typed, before),
        "measures": dict(before["measures"]) if before else {},
    }
    errors = _name_error(summary, name, before)
    if tidy(typed, "number") and not tidy(typed, "measure"):
        errors["measure"] = ASK_MEASURE
    if line_error(body["wood"], NAME):
        errors["wood"] = line_error(body["wood"], NAME)
    for key, least in (("count", 1), ("spare", 0)):
        _put_count(typed, key, before[key] if before else least, body, errors)
    for key in LABELS:
        _put_measure(tidy(typed, key), key, how, body, errors)
    new = _taken(typed)
    for link in new:
        _put_measure(f"{link.inches} in", link.field, how, body, errors)
    replaces = before["tips"] if before else []
    errors = {**errors, **ring_errors(summary, new, replaces)}
    if errors:
        return {"errors": errors}
    return {"body": {**body, "links": _holding(body, before["links"] if before else [], new)}, "replaces": replaces}


def _taken(typed: dict[str, str]) -> list[Link]:
    """Return the links of a form: its `links`, and the `number` (entry, key, inches) that its `measure` takes."""
    taken = f"{tidy(typed, 'measure')} {tidy(typed, 'number')}"
    return [link for link in read_links(f"{typed.get('links', '')}\n{taken}") if link.field in LABELS]


def _holding(body: Body, old: list[dict[str, str]], new: list[Link]) -> list[dict[str, str]]:
    """Return the links whose value stands in the measures, one a measure: what was typed over is linked no more."""
    found = {link["field"]: link for link in [*old, *[written_link(link) for link in new]]}
    return [k for k in found.values() if body["measures"].get(k["field"], {}).get("inches", "") == k["inches"]]


def part_of(summary: Any, entry: str) -> Item | None:
    """Return the part that stands and that an entry belongs to."""
    things = [t for t in summary["parts"] if any(item["entry"] == entry for item in t["heads"] + t["past"])]
    heads = [head for thing in things for head in thing["heads"]]
    return heads[0] if heads else None


def part_named(summary: Any, name: str) -> Item | None:
    """Return the part of a name, case and spaces folded."""
    heads = [head for thing in summary["parts"] for head in thing["heads"]]
    found = [head for head in heads if fold_name(head["name"]) == fold_name(name)]
    return found[0] if found else None


def _name_error(summary: Any, name: str, before: Item | None) -> dict[str, str]:
    wrong = needed_error(name, ASK_PART, NAME)
    same = part_named(summary, name)
    if not wrong and same is not None and (before is None or same["entry"] != before["entry"]):
        wrong = SAME_NAME
    return {"name": wrong} if wrong else {}


def _faces(typed: dict[str, str], before: Item | None) -> str:
    said = tidy(typed, "faces")
    if said == FORGET:
        return ""
    return said if said in FACES and said else (before["faces"] if before else "")


def _put_count(typed: dict[str, str], key: str, stands: int, body: Body, errors: dict[str, str]) -> None:
    """Put a count into a body, or what is wrong with it into the errors; a spare count may be 0."""
    text = tidy(typed, key)
    body[key] = stands
    if text == "0" and key == "spare":
        body[key] = 0
    elif text:
        try:
            body[key] = read_count(text)
        except ReadingError as e:
            errors[key] = e.reason


def _put_measure(text: str, key: str, how: Setting, body: Body, errors: dict[str, str]) -> None:
    """Put a measure into a body, or what is wrong with it into the errors; "none" takes it out."""
    if small(text) == FORGET:
        body["measures"] = {name: said for name, said in body["measures"].items() if name != key}
    elif text:
        wrong = reading_error(text, how)
        if wrong:
            errors[key] = wrong
        else:
            said = {"text": text, "inches": exact(read(text, how))}
            body["measures"][key] = {**said, "unit": how.unit, "graduation": how.graduation}


def part_error(body: Body, replaces: list[str], factors: Factors) -> str:
    """Return why a part cannot be kept, or nothing."""
    counts = [body.get("count"), body.get("spare")]
    if not all(isinstance(count, int) and not isinstance(count, bool) and 0 <= count <= MOST for count in counts):
        return f"count and spare must be whole numbers from 0 to {MOST}."
    if not isinstance(body.get("wood"), str) or body.get("faces", "?") not in FACES:
        return "wood must be text, and faces lower, upper or nothing."
    measures = body.get("measures")
    if not isinstance(measures, dict):
        return "measures must hold measures by key."
    wrong = [measure_error(said, factors) for said in measures.values()]
    return (
        needed_error(body["name"], ASK_PART, NAME)
        or line_error(body["wood"], NAME)
        or links_error(body.get("links", None))
        or ([reason for reason in wrong if reason] + [""])[0]
    )
