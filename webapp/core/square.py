"""Out of square, from the diagonals."""

from webapp.core.sentence import sentence
from webapp.core.setting import Setting
from webapp.core.square_sheet import sheet_parts
from webapp.core.square_solve import Frame, read_sides
from webapp.core.square_words import CAUTIONS, ERRORS
from webapp.core.sums import amount
from webapp.core.tool import Field, InputErrors, Parts, Tool, Values


def work(values: Values, how: Setting) -> Parts:
    """Return the parts of the sheet; raise InputErrors for diagonals that no such sides can have."""
    frame = Frame(values["sides"], values["rising"], values["falling"])
    check(frame, how)
    return sheet_parts(frame, how)


def check(frame: Frame, how: Setting) -> None:
    """Refuse a diagonal that is as long as two sides together, or too short to span them."""
    both, least = frame.along + frame.up, abs(frame.along - frame.up)
    errors = {}
    for field, diagonal in (("rising", frame.rising), ("falling", frame.falling)):
        said = {"diagonal": amount(diagonal, how), "both": amount(both, how), "least": amount(least, how)}
        if diagonal >= both:
            errors[field] = sentence(ERRORS["too-long"], said)
        if diagonal <= least:
            errors[field] = sentence(ERRORS["too-short"], said)
    if errors:
        raise InputErrors(errors)


TOOL = Tool(
    name="square",
    title="Out of square",
    about="Says from the diagonals how far a frame leans, which way to clamp it, and until when.",
    fields=(
        Field(
            "sides",
            "Sides",
            "pair",
            required=True,
            read=read_sides,
            help="Along x up: 54 x 36; or all four in order round from the bottom: 54 x 36 x 54 x 36",
        ),
        Field("rising", "Rising diagonal", "length", required=True, help="From bottom left to top right."),
        Field("falling", "Falling diagonal", "length", required=True, help="From top left to bottom right."),
    ),
    work=work,
    help=(
        "Read both diagonals corner to corner at dry fit, and the sides. The longer diagonal is the one to clamp "
        "across, and both come to the same length when the frame is square.",
        "Two sides are enough where opposite sides are alike; equal diagonals prove nothing where they are not.",
    ),
    example=(("sides", "58 3/8 x 36"), ("rising", "68 11/16"), ("falling", "68 7/16")),
    cautions=(CAUTIONS["clamp"],),
    stage="dry-fit",
)
