"""What was done to the wood: a sheet, or a line of it, that is cut; a step that is done."""

from fractions import Fraction
from typing import Any, TypeAlias

from webapp.core.entries_exact import from_exact
from webapp.core.entries_facts import NOT_HERE, reading_error, tips
from webapp.core.entries_text import NAME, is_identity, line_error, tidy
from webapp.core.fold_shape import measured as is_measure
from webapp.core.mark import exact
from webapp.core.reading import read
from webapp.core.setting import GRADUATIONS, setting
from webapp.core.tool import Tool

Tools: TypeAlias = dict[str, Tool]
Factors: TypeAlias = dict[str, Fraction]
Outcome: TypeAlias = dict[str, Any]
Body: TypeAlias = dict[str, Any]

ASK_STEP = "Say which step is done."
DONE = "This is done already."


def draft_cut(typed: dict[str, str], summary: Any, tools: Tools, factors: Factors) -> Outcome:
    """Mark a sheet, or the line of it that `key` names, as cut; `measured` is what it measured, where it was read."""
    entry, key, text = tidy(typed, "entry"), tidy(typed, "key"), tidy(typed, "measured")
    if summary is None or entry not in _kept_sheets(summary):
        return {"errors": {"entry": NOT_HERE}}
    how = setting(summary["unit"], summary["graduation"], factors)
    wrong = reading_error(text, how) if text else ""
    if wrong:
        return {"errors": {"measured": wrong}}
    body: Body = {"entry": entry, "key": key}
    if text:
        said = {"text": text, "inches": exact(read(text, how))}
        body["measured"] = {**said, "unit": how.unit, "graduation": how.graduation}
    before = [head for thing in summary["cuts"] for head in thing["heads"]]
    return {"body": body, "replaces": tips([head for head in before if [head["of"], head["key"]] == [entry, key]])}


def _kept_sheets(summary: Any) -> list[str]:
    return [item["entry"] for thing in summary["sheets"] for item in thing["heads"] + thing["past"]]


def draft_done(typed: dict[str, str], summary: Any, tools: Tools, factors: Factors) -> Outcome:
    """Tick a step; it is taken back by a withdrawal."""
    step = tidy(typed, "step")
    wrong = line_error(step, NAME) if step else ASK_STEP
    if summary is None or wrong:
        return {"errors": {"step": wrong or NOT_HERE}}
    if step in done_steps(summary):
        return {"errors": {"step": DONE}}
    return {"body": {"step": step}, "replaces": []}


def done_steps(summary: Any) -> dict[str, str]:
    """Return the steps that are done, each with the entry that says so."""
    return {head["step"]: head["entry"] for thing in summary["done"] for head in thing["heads"]}


def cut_error(body: Body, replaces: list[str], factors: Factors) -> str:
    """Return why a cut cannot be kept, or nothing."""
    if not is_identity(body["entry"]):
        return "entry must be an id, a UUIDv7 in lower case."
    wrong = line_error(body["key"], NAME)
    return wrong or (measure_error(body["measured"], factors) if "measured" in body else "")


def measure_error(said: Any, factors: Factors) -> str:
    """Return what is wrong with a measure as entries hold it, or nothing."""
    if not is_measure(said) or from_exact(said["inches"]) is None:
        return "A measure holds text, inches, unit and graduation."
    if said["graduation"] not in GRADUATIONS.get(said["unit"], []):
        return "Say unit and graduation in full."
    how = setting(said["unit"], said["graduation"], factors)
    wrong = reading_error(said["text"], how)
    if wrong:
        return wrong
    means = exact(read(said["text"], how))
    return "" if means == said["inches"] else f"{said['text']} is {means} in, not {said['inches']} in."


def done_error(body: Body, replaces: list[str], factors: Factors) -> str:
    """Return why a step cannot be ticked, or nothing."""
    return line_error(body["step"], NAME) or ("" if body["step"] else ASK_STEP)
