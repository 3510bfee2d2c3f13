"""A reading's value looked at before it is kept: that its text says so, as a length or against a round's stick."""

from fractions import Fraction
from typing import Any, TypeAlias

from webapp.core.entries_exact import from_exact
from webapp.core.entries_facts import reading_error, reading_value
from webapp.core.entries_text import is_identity
from webapp.core.gauge_against import against
from webapp.core.mark import exact
from webapp.core.setting import setting

Body: TypeAlias = dict[str, Any]
Factors: TypeAlias = dict[str, Fraction]


def value_error(body: Body, factors: Factors) -> str:
    """Return why a reading's text and its exact value do not go together, or nothing."""
    how = setting(body["unit"], body["graduation"], factors)
    said = body.get("stick", "")
    stick = from_exact(said) if isinstance(said, str) else None
    wrong = _within(body, stick) or reading_error(body["text"], how, stick)
    if wrong or from_exact(body["inches"]) is None:
        return wrong or "inches must be an exact number in lowest terms, as 43/24."
    means = exact(reading_value(body["text"], how, stick))
    return "" if means == body["inches"] else f"{body['text']} is {means} in, not {body['inches']} in."


def _within(body: Body, stick: Fraction | None) -> str:
    """Return what is wrong with a reading's round and its stick, or nothing; most readings have neither."""
    if "stick" in body and (stick is None or stick <= 0 or not against(body["text"])):
        return "stick must be the exact length that this was said against."
    within = body.get("round", "")
    if "round" in body and not (isinstance(within, str) and is_identity(within)):
        return "round must be an id, a UUIDv7 in lower case."
    return ""
