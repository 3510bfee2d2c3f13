"""Lengths as marks that can be found on a tape, and as the exact and metric text beside them."""

from fractions import Fraction

from webapp.core.digits import decimal_text, feet_text, half_up, mixed_text, point_text
from webapp.core.setting import Setting
from webapp.core.words import say_fraction, say_number

HAIR = "a hair"
LEAN_WORDS = ["strong", "scant"]
FINE = Fraction(1, 64)
FINE_PER_MM = 10
# A lean has three spoken values, a quarter under, none and a quarter over, so an eighth parts them.
LEAN_PARTS = 8


def mark(x: Fraction, setting: Setting, division: Fraction | None = None) -> str:
    """Mark a length in inches on the setting's graduation, or on a division of a machine's own."""
    scale = setting.division if division is None else division
    top = x.numerator
    if top < 0:
        return "-" + mark_size(-top, x.denominator, scale, setting)
    return mark_size(top, x.denominator, scale, setting)


def mark_size(top: int, bottom: int, scale: Fraction, setting: Setting) -> str:
    """Mark top/bottom inches; what would print as 0 goes to the fine scale, then to a hair."""
    steps, lean = nearest(top * scale.denominator, bottom * scale.numerator)
    if steps != 0 or top == 0:
        return number_text(steps, scale, setting) + lean
    fine = fine_scale(setting)
    steps, lean = nearest(top * fine.denominator, bottom * fine.numerator)
    if steps == 0:
        return HAIR
    return number_text(steps, fine, setting) + lean


def fine_scale(setting: Setting) -> Fraction:
    """Give the scale on which a length is marked that is too small for the graduation."""
    return setting.factors["mm"] / FINE_PER_MM if setting.metric else FINE


def nearest(top: int, bottom: int) -> tuple[int, str]:
    """Round top/bottom (not negative) to a whole number, a half down, and say what is left over."""
    steps, rest = divmod(top, bottom)
    if 2 * rest > bottom:
        return steps + 1, " scant" if LEAN_PARTS * (bottom - rest) >= bottom else ""
    return steps, " strong" if LEAN_PARTS * rest >= bottom else ""


def number_text(steps: int, scale: Fraction, setting: Setting) -> str:
    """Write so many divisions of a scale as the setting's unit writes numbers."""
    if setting.metric:
        return decimal_text(steps, scale, setting.factors["mm"])
    whole, top = divmod(steps * scale.numerator, scale.denominator)
    if setting.unit == "ft":
        return feet_text(whole, top, scale.denominator)
    return mixed_text(whole, top, scale.denominator)


def millimetres(x: Fraction, setting: Setting) -> str:
    """Write a length in inches as millimetres with two decimals, a half away from zero."""
    mm = setting.factors["mm"]
    size = half_up(abs(x.numerator) * mm.denominator * 100, x.denominator * mm.numerator)
    text = point_text(size, 2, 100)
    return "-" + text if x.numerator < 0 and size > 0 else text


def exact(x: Fraction) -> str:
    """Write the exact value: `43/24`, `2`."""
    return str(x)


def mixed(x: Fraction) -> str:
    """Write the exact value as a maker writes it in a sum: `3 29/80`."""
    whole, top = divmod(abs(x.numerator), x.denominator)
    text = mixed_text(whole, top, x.denominator)
    return "-" + text if x.numerator < 0 else text


def length(x: Fraction, setting: Setting, division: Fraction | None = None, graduation: str = "") -> dict[str, str]:
    """Give a LENGTH: exact inches, mark, millimetres, and the graduation where it is another."""
    made = {"inches": exact(x), "mark": mark(x, setting, division), "mm": millimetres(x, setting)}
    if division is not None and division != setting.division:
        made["graduation"] = graduation or scale_text(division, setting)
    return made


def scale_text(division: Fraction, setting: Setting) -> str:
    """Name a division as graduations are named: `1/64`, `0.1 mm`."""
    if setting.metric:
        return decimal_text(1, division, setting.factors["mm"]) + " mm"
    return exact(division)


def mark_parts(text: str) -> dict[str, str]:
    """Take a mark's text apart for drawing; what it does not have is an empty text."""
    minus = "-" if text.startswith("-") else ""
    words = text[len(minus) :].replace('"', "").split(" ")
    lean = words.pop() if words[-1] in LEAN_WORDS else ""
    hair = HAIR if " ".join(words) == HAIR else ""
    feet = words.pop(0).replace("'", "") if words[0].endswith("'") else ""
    fraction = words.pop().split("/") if "/" in words[-1] else ["", ""]
    whole = words[0] if len(words) == 1 and hair == "" else ""
    top, bottom = fraction
    return {
        "minus": minus, "feet": feet, "whole": whole, "top": top, "bottom": bottom, "lean": lean, "hair": hair,
    }  # fmt: skip


def spoken(text: str) -> str:
    """Say a mark's text in words, so that reading them gives the mark back."""
    return spoken_parts(mark_parts(text), '"' in text)


def spoken_parts(parts: dict[str, str], feet_project: bool) -> str:
    """Say a mark's parts in words."""
    number = parts["hair"] or say_size(parts, feet_project)
    return f"{'minus ' if parts['minus'] else ''}{number}{', ' if parts['lean'] else ''}{parts['lean']}"


def say_size(parts: dict[str, str], feet_project: bool) -> str:
    """Say feet and inches; inches are named where a bare number would be feet."""
    inches = say_inches(parts)
    if parts["feet"] == "":
        one = parts["whole"] == "" or (parts["whole"] == "1" and parts["top"] == "")
        return f"{inches} {'inch' if one else 'inches'}" if feet_project else inches
    feet = f"{say_number(parts['feet'])} {'foot' if parts['feet'] == '1' else 'feet'}"
    return feet if parts["whole"] == "0" and parts["top"] == "" else f"{feet} {inches}"


def say_inches(parts: dict[str, str]) -> str:
    """Say a whole number, a fraction or both; a decimal keeps its digits."""
    whole, top = parts["whole"], parts["top"]
    if top == "":
        return whole if "." in whole else say_number(whole)
    fraction = say_fraction(top, parts["bottom"])
    return fraction if whole in ["", "0"] else f"{say_number(whole)} and {fraction}"
