"""Readings that are no lengths: moisture, temperature, minutes; a plain number, what it is of, and its place."""

from fractions import Fraction
from typing import Any, TypeAlias

from webapp.core.entries_exact import from_exact
from webapp.core.entries_facts import NOT_HERE, tips
from webapp.core.entries_text import NAME, line_error, needed_error, tidy
from webapp.core.mark import exact
from webapp.core.reading import ReadingError
from webapp.core.reading_numbers import DIGITS
from webapp.core.text import fold_name, small, trim
from webapp.core.tool import Tool

Tools: TypeAlias = dict[str, Tool]
Factors: TypeAlias = dict[str, Fraction]
Outcome: TypeAlias = dict[str, Any]
Body: TypeAlias = dict[str, Any]

QUANTITIES = ("moisture", "temperature", "time")
UNITS = {"moisture": ("%",), "temperature": ("F", "C"), "time": ("min",)}
# What may stand behind the number, small, and the unit that it says; the longer of two first.
BEHIND = {
    "moisture": (("%", "%"),),
    "temperature": (("°f", "F"), ("°c", "C"), ("f", "F"), ("c", "C")),
    "time": (("minutes", "min"), ("min", "min")),
}
BOUNDS = {"moisture": (0, 300), "temperature": (-60, 300), "time": (0, 100000)}
MOST_LETTERS = 20
ASK_PLACE = "Name what was measured, or where, as upper rail or shop."
ASK_QUANTITY = "Say what it is: moisture, temperature or time."
ASK_NUMBER = "Write the number, as {example}."
EXAMPLES = {"moisture": "8.5", "temperature": "68 F", "time": "90"}
NO_NUMBER = "This is no plain number; write it like {example}."
POINT = "Write it with a point: {point}."
BEYOND = "That is beyond what is kept here: {least} to {most} {unit}."


def draft_condition(typed: dict[str, str], summary: Any, tools: Tools, factors: Factors) -> Outcome:
    """Keep a number that is no length; it replaces what stands for its place and quantity."""
    if summary is None:
        return {"errors": {"place": NOT_HERE}}
    place, quantity, text = tidy(typed, "place"), tidy(typed, "quantity"), tidy(typed, "text")
    metric = summary["unit"] == "mm"
    errors = {}
    if needed_error(place, ASK_PLACE, NAME):
        errors["place"] = needed_error(place, ASK_PLACE, NAME)
    if quantity not in QUANTITIES:
        return {"errors": {**errors, "quantity": ASK_QUANTITY}}
    try:
        value, unit = read_condition(text, quantity, metric)
    except ReadingError as e:
        return {"errors": {**errors, "text": e.reason}}
    if "," in text and not metric:
        errors["text"] = POINT.replace("{point}", text.replace(",", "."))
    if errors:
        return {"errors": errors}
    body = {"place": place, "quantity": quantity, "text": text, "value": exact(value), "unit": unit}
    return {"body": body, "replaces": _standing(summary, place, quantity)}


def _standing(summary: Any, place: str, quantity: str) -> list[str]:
    heads = [head for thing in summary["conditions"] for head in thing["heads"]]
    same = [h for h in heads if fold_name(h["place"]) == fold_name(place) and h["quantity"] == quantity]
    return tips(same)


def read_condition(text: str, quantity: str, metric: bool) -> tuple[Fraction, str]:
    """Read a plain number with or without its unit: the value, and the unit; `metric` decides where none is said."""
    example = EXAMPLES[quantity]
    wrong = line_error(text, MOST_LETTERS) if trim(text) else ASK_NUMBER.replace("{example}", example)
    if wrong:
        raise ReadingError(text, 0, wrong)
    number, unit = _parted(small(trim(text)), quantity, metric)
    value = _decimal(number)
    if value is None:
        raise ReadingError(text, 0, NO_NUMBER.replace("{example}", example))
    least, most = BOUNDS[quantity]
    if not least <= value <= most:
        beyond = BEYOND.replace("{least}", str(least)).replace("{most}", str(most)).replace("{unit}", unit)
        raise ReadingError(text, 0, beyond)
    return value, unit


def _parted(text: str, quantity: str, metric: bool) -> tuple[str, str]:
    """Part a number from its unit."""
    for behind, unit in BEHIND[quantity]:
        if text.endswith(behind):
            return trim(text[: len(text) - len(behind)]), unit
    units = UNITS[quantity]
    return text, units[-1] if metric else units[0]


def _decimal(text: str) -> Fraction | None:
    """Return a decimal's value, or None where it is none."""
    size = text[1:] if text.startswith("-") else text
    parts = size.replace(",", ".").split(".")
    if len(parts) > 2 or not all(part != "" and all(c in DIGITS for c in part) for part in parts):
        return None
    tens = int("1" + "0" * len(parts[-1])) if len(parts) == 2 else 1
    value = Fraction(int("".join(parts)), tens)
    return -value if text.startswith("-") else value


def condition_error(body: Body, replaces: list[str], factors: Factors) -> str:
    """Return why a condition cannot be kept, or nothing."""
    quantity = body["quantity"]
    if quantity not in QUANTITIES or body["unit"] not in UNITS[quantity]:
        return "quantity must be moisture (%), temperature (F or C) or time (min)."
    wrong = needed_error(body["place"], ASK_PLACE, NAME)
    if wrong or from_exact(body["value"]) is None:
        return wrong or "value must be an exact number in lowest terms, as 17/2."
    try:
        value, unit = read_condition(body["text"], quantity, body["unit"] == UNITS[quantity][-1])
    except ReadingError as e:
        return e.reason
    says = exact(value)
    same = says == body["value"] and unit == body["unit"]
    return "" if same else f"{body['text']} is {says} {unit}, not {body['value']} {body['unit']}."
