"""The strips of parts from over-all sizes: the posts with what is between them, and the rail."""

from fractions import Fraction

from webapp.core.bounds import laid
from webapp.core.mark import length
from webapp.core.overall_bay import Bay
from webapp.core.setting import Setting
from webapp.core.sheet import Part, strip, tick
from webapp.core.sums import amount

ZERO = Fraction(0)


def strips(made: Bay, how: Setting) -> list[Part]:
    """Return both posts with what is clear between them, then the rail, where its tenons are known."""
    return [posts_strip(made, how), *([rail_strip(made, how)] if made.tenoned else [])]


def posts_strip(made: Bay, how: Setting) -> Part:
    """Return both posts with what is clear between them, and in each the tenon."""
    near, far = made.first.post, made.overall - made.second.post
    bounds = [
        (ZERO, near - made.first.inside, "Post", "wood"),
        (near - made.first.inside, near, "Tenon", "mortise"),
        (near, far, "Clear", "air"),
        (far, far + made.second.inside, "Tenon", "mortise"),
        (far + made.second.inside, made.overall, "Post", "wood"),
    ]
    label = f"{amount(made.overall, how)} over all, {amount(made.clear, how)} clear"
    return strip(label, length(made.overall, how), laid(bounds, how), shoulders(near, far, how))


def rail_strip(made: Bay, how: Setting) -> Part:
    """Return the rail from its own end."""
    near, far = made.first.tenon, made.first.tenon + made.clear
    bounds = [
        (ZERO, near, "Tenon", "wood"),
        (near, far, "Between the shoulders", "wood"),
        (far, made.rail, "Tenon", "wood"),
    ]
    whole = length(made.rail, how)
    return strip(f"The rail, {amount(made.rail, how)}", whole, laid(bounds, how), shoulders(near, far, how))


def shoulders(near: Fraction, far: Fraction, how: Setting) -> list[Part]:
    """Return the ticks of both shoulders."""
    return [tick(length(near, how), "shoulder"), tick(length(far, how), "shoulder")]
