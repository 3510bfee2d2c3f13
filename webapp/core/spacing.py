"""Slats and gaps along a rail."""

from fractions import Fraction

from webapp.core.setting import Setting
from webapp.core.spacing_check import (
    check_gaps,
    check_margins,
    check_most,
    check_said,
    check_shoulder,
    check_slats,
)
from webapp.core.spacing_closing import check_closing
from webapp.core.spacing_said import Said
from webapp.core.spacing_sheet import sheet_parts
from webapp.core.spacing_solve import Layout, layout, nearest_layout
from webapp.core.spacing_words import CAUTIONS, ENDS
from webapp.core.tool import Field, Parts, Tool, Values


def work(values: Values, how: Setting) -> Parts:
    """Return the parts of the sheet; raise InputErrors for what cannot be laid out."""
    said = Said(
        values["span"],
        values.get("slat", []),
        values.get("count", 0),
        values.get("gap"),
        values["ends"],
        values.get("margin"),
        values.get("shoulder"),
        values.get("offset", Fraction(0)),
    )
    check_said(said)
    check_margins(said, how)
    made = solved(said, how)
    check_shoulder(said, made, how)
    return sheet_parts(said, made, how)


def solved(said: Said, how: Setting) -> Layout:
    """Return the layout for what was said."""
    if said.count == 0:
        check_slats(said, said.least, "slat" if said.least == 1 else "ends", how)
        found = nearest_layout(said)
        check_most(said, found)
        return found
    if said.slat:
        check_slats(said, said.count, "count", how)
    made = layout(said, said.count)
    check_gaps(said, made, how)
    check_closing(said, how)
    return made


TOOL = Tool(
    name="spacing",
    title="Slats and gaps",
    about="Spaces slats evenly along a rail, with every mark from one end.",
    fields=(
        Field("span", "Clear span", "length", required=True, help="Between the posts, shoulder to shoulder."),
        Field("slat", "Slat width", "widths", help="One width; or several that repeat in turn: 2; 6"),
        Field("count", "How many slats", "count"),
        Field("gap", "Gap", "length"),
        Field("ends", "Ends", "choice", default=("gap", "gap"), choices=ENDS),
        Field("margin", "Margin", "length", help="Air at each end; goes with a margin at both ends."),
        Field(
            "shoulder",
            "Edge shoulder",
            "length",
            help="Of each slat's tenon: gives the mortises' own marks.",
            sign="zero",
        ),
        Field(
            "offset",
            "Offset",
            "length",
            help="From the rail's own end to the start of the span: places are then from the rail's end.",
            sign="zero",
        ),
    ),
    work=work,
    help=(
        "Say the clear span and what is known of slat, count and gap; what is left out is worked. "
        "A slat alone takes the count whose gap is nearest to the slat; a count alone makes slat and gap equal.",
        "Every mark is rounded from its own place, so errors do not add up along the rail.",
    ),
    example=(("span", "58 3/8"), ("slat", "2 3/4"), ("count", "9")),
    cautions=CAUTIONS,
    stage="slat-mortises",
)
