"""Joints between two parts, each with its number, from a form's fields."""

from fractions import Fraction
from typing import Any, TypeAlias

from webapp.core.entries_facts import NOT_HERE, tips
from webapp.core.entries_part import part_named
from webapp.core.entries_text import NAME, is_identity, needed_error, tidy
from webapp.core.text import fold_name
from webapp.core.tool import Tool

Tools: TypeAlias = dict[str, Tool]
Factors: TypeAlias = dict[str, Fraction]
Outcome: TypeAlias = dict[str, Any]
Body: TypeAlias = dict[str, Any]

TENONS = ("", "through", "blind", "floating")
PINS = ("", "pinned", "dowelled")
ASK_JOINT = "Give the joint its number, as it is stamped on both halves."
TWO_PARTS = "Name two parts that are in the project."


def draft_joint(typed: dict[str, str], summary: Any, tools: Tools, factors: Factors) -> Outcome:
    """Make a joint between two parts; it replaces the joint of the same number."""
    if summary is None:
        return {"errors": {"number": NOT_HERE}}
    number = tidy(typed, "number")
    errors = {}
    if needed_error(number, ASK_JOINT, NAME):
        errors["number"] = needed_error(number, ASK_JOINT, NAME)
    parts = [part_named(summary, tidy(typed, key)) for key in ("one", "other")]
    for i, key in enumerate(("one", "other")):
        if parts[i] is None:
            errors[key] = TWO_PARTS
    if errors:
        return {"errors": errors}
    names = [part["entry"] for part in parts if part is not None]
    tenon, pins = _one_of(typed, "tenon", TENONS), _one_of(typed, "pins", PINS)
    body = {"number": number, "parts": names, "tenon": tenon, "pins": pins}
    heads = [head for thing in summary["joints"] for head in thing["heads"]]
    return {"body": body, "replaces": tips([head for head in heads if fold_name(head["number"]) == fold_name(number)])}


def _one_of(typed: dict[str, str], name: str, words: tuple[str, ...]) -> str:
    said = tidy(typed, name)
    return said if said in words else ""


def joint_error(body: Body, replaces: list[str], factors: Factors) -> str:
    """Return why a joint cannot be kept, or nothing."""
    parts = body.get("parts")
    if not isinstance(parts, list) or len(parts) != 2 or not all(isinstance(p, str) and is_identity(p) for p in parts):
        return "parts must be two ids of parts."
    if body.get("tenon", "?") not in TENONS or body.get("pins", "?") not in PINS:
        return "tenon must be through, blind, floating or nothing; pins pinned, dowelled or nothing."
    return needed_error(body["number"], ASK_JOINT, NAME)
