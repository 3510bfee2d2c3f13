"""Numbers written in digits: mixed numbers, feet and inches, decimals."""

from fractions import Fraction

MOST_PLACES = 3
TAPE = 64  # the finest graduation of an inch, and a multiple of all others


def common_part(a: int, b: int) -> int:
    """Find the greatest number that divides both."""
    while b != 0:
        a, b = b, a % b
    return a


def lowest_text(top: int, bottom: int) -> str:
    """Write top/bottom in lowest terms, with a line: `3/16`, `0/1`."""
    part = common_part(top, bottom)
    return f"{top // part}/{bottom // part}"


# A tape has only so many fractions, and a sheet hundreds of marks: these are written once.
TAPE_TEXTS = [lowest_text(top, TAPE) for top in range(TAPE)]


def part_text(top: int, bottom: int) -> str:
    """Write top/bottom, less than 1, in lowest terms."""
    return TAPE_TEXTS[top * TAPE // bottom] if TAPE % bottom == 0 else lowest_text(top, bottom)


def mixed_text(whole: int, top: int, bottom: int) -> str:
    """Write whole + top/bottom in lowest terms: `2 3/16`, `2`, `3/16`, `0`."""
    if top == 0:
        return str(whole)
    return part_text(top, bottom) if whole == 0 else f"{whole} {part_text(top, bottom)}"


def feet_text(inches: int, top: int, bottom: int) -> str:
    """Write inches + top/bottom with feet where there are any; a 0 keeps the inches' place."""
    feet, whole = divmod(inches, 12)
    if feet == 0:
        return mixed_text(whole, top, bottom) + '"'
    if top == 0:
        return f"{feet}' {whole}\""
    return f"{feet}' {whole} {part_text(top, bottom)}\""


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
