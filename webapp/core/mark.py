"""Lengths as marks that can be found on a tape, and as the exact and metric text beside them."""

from fractions import Fraction

from webapp.core.setting import Setting

HAIR = "a hair"
FINE = Fraction(1, 64)
FINE_PER_MM = 10
# A lean has three spoken values, a quarter under, none and a quarter over, so an eighth parts them.
LEAN_PARTS = 8
MOST_PLACES = 3


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


def mixed_text(whole: int, top: int, bottom: int) -> str:
    """Write whole + top/bottom in lowest terms: `2 3/16`, `2`, `3/16`, `0`."""
    if top == 0:
        return str(whole)
    part = common_part(top, bottom)
    if whole == 0:
        return f"{top // part}/{bottom // part}"
    return f"{whole} {top // part}/{bottom // part}"


def feet_text(inches: int, top: int, bottom: int) -> str:
    """Write inches + top/bottom with feet where there are any; a 0 keeps the inches' place."""
    feet, whole = divmod(inches, 12)
    if feet == 0:
        return mixed_text(whole, top, bottom) + '"'
    if top == 0:
        return f"{feet}' {whole}\""
    part = common_part(top, bottom)
    return f"{feet}' {whole} {top // part}/{bottom // part}\""


def common_part(a: int, b: int) -> int:
    """Find the greatest number that divides both."""
    while b != 0:
        a, b = b, a % b
    return a


def decimal_text(steps: int, scale: Fraction, mm: Fraction) -> str:
    """Write so many divisions in millimetres, with the fewest decimals that the scale needs."""
    top, bottom = scale.numerator * mm.denominator, scale.denominator * mm.numerator
    places, tens = 0, 1
    while top * tens % bottom != 0 and places < MOST_PLACES:
        places, tens = places + 1, tens * 10
    return point_text(half_up(steps * top * tens, bottom), places, tens)


def point_text(units: int, places: int, tens: int) -> str:
    """Write units of the last decimal place with their point."""
    if places == 0:
        return str(units)
    whole, part = divmod(units, tens)
    return f"{whole}.{('00' + str(part))[-places:]}"


def half_up(top: int, bottom: int) -> int:
    """Round top/bottom (not negative) to a whole number, a half up."""
    return (2 * top + bottom) // (2 * bottom)


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


def length(
    x: Fraction, setting: Setting, division: Fraction | None = None, graduation: str = ""
) -> dict[str, str]:
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
