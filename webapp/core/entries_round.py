"""A round of dry fit: the places to measure, laid out beforehand; and conditions, which are no lengths."""

from fractions import Fraction
from typing import Any, TypeAlias

from webapp.core.entries_cut import measure_error
from webapp.core.entries_exact import from_exact
from webapp.core.entries_text import NAME, line_error, needed_error
from webapp.core.text import fold_name

Factors: TypeAlias = dict[str, Fraction]
Body: TypeAlias = dict[str, Any]

MOST_PLACES = 200
QUANTITIES = ("moisture", "temperature", "time")
UNITS = {"moisture": ("%",), "temperature": ("F", "C"), "time": ("min",)}


def round_error(body: Body, replaces: list[str], factors: Factors) -> str:
    """Return why a round cannot be kept, or nothing."""
    places = body.get("places")
    if not isinstance(places, list) or not 0 < len(places) <= MOST_PLACES:
        return f"A round has from 1 to {MOST_PLACES} places."
    if not all(isinstance(place, str) and place and not line_error(place, NAME) for place in places):
        return "Each place of a round is a line of text."
    if len({fold_name(place): True for place in places}) != len(places):
        return "The places of a round must differ."
    wrong = measure_error(body["stick"], factors) if "stick" in body else ""
    return line_error(body["called"], NAME) or wrong


def condition_error(body: Body, replaces: list[str], factors: Factors) -> str:
    """Return why a condition cannot be kept, or nothing."""
    if body["quantity"] not in QUANTITIES or body["unit"] not in UNITS[body["quantity"]]:
        return "quantity must be moisture (%), temperature (F or C) or time (min)."
    if from_exact(body["value"]) is None:
        return "value must be an exact number in lowest terms, as 17/2."
    return needed_error(body["place"], "A condition needs a place.", NAME) or needed_error(
        body["text"], "A condition needs a number.", NAME
    )
