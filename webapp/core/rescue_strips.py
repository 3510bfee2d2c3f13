"""The strips where slats are cut and the opening moved: a slat, and the opening under it."""

from webapp.core.bounds import laid
from webapp.core.mark import length
from webapp.core.rescue_solve import Rescue
from webapp.core.setting import Setting
from webapp.core.sheet import Part, strip, tick
from webapp.core.sums import amount
from webapp.core.trim_room import ZERO


def strips(made: Rescue, how: Setting) -> list[Part]:
    """Return a slat from its own end with the shoulders where they are wanted, or what it falls short by."""
    return [slat(made, how)] if made.mends else [short(made, how)]


def slat(made: Rescue, how: Setting) -> Part:
    """Return a slat with its tenons, and what each end is cut again."""
    near, far, whole = made.tenon, made.overall - made.tenon, made.overall
    bounds = [
        (ZERO, made.was, "Tenon", "wood"),
        (made.was, near, "Cut again", "cut"),
        (near, far, "Between the shoulders", "wood"),
        (far, whole - made.was, "Cut again", "cut"),
        (whole - made.was, whole, "Tenon", "wood"),
    ]
    ticks = [tick(length(near, how), "shoulder"), tick(length(far, how), "shoulder")]
    label = f"A slat, {amount(whole, how)} over all: {amount(made.wanted, how)} between the shoulders"
    return strip(label, length(whole, how), laid(bounds, how), ticks)


def short(made: Rescue, how: Setting) -> Part:
    """Return the opening, with as much of it as the slats fill."""
    filled = made.wanted - made.short
    bounds = [(ZERO, filled, "Slat", "wood"), (filled, made.wanted, "Short", "air")]
    label = f"The opening, {amount(made.wanted, how)}: the slats fill {amount(filled, how)}"
    return strip(label, length(made.wanted, how), laid(bounds, how), [])
