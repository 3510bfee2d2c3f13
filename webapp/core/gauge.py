"""A gauge stick at dry fit: which openings it fits, and what comes off which rail."""

from fractions import Fraction
from typing import NoReturn

from webapp.core.gauge_openings import AGAINST, KEEPS, Opening, read_keep, read_openings
from webapp.core.gauge_sheet import sheet_parts
from webapp.core.gauge_solve import fitted
from webapp.core.gauge_words import CAUTIONS, ERRORS
from webapp.core.jointing import JOINTER, jointer_cautions
from webapp.core.sentence import sentence
from webapp.core.setting import Setting
from webapp.core.sums import amount
from webapp.core.tool import Field, InputErrors, Parts, Tool, Values


def work(values: Values, how: Setting) -> Parts:
    """Return the parts of the sheet; raise InputErrors where openings and stick do not go together."""
    openings = values["openings"]
    check_stick(openings, values["keep"], how)
    made = fitted(openings, values["keep"], values["fit"], values["bite"], values.get("tenon"))
    jointer = jointer_cautions(values["bite"], values["least_length"], values["least_thickness"], how)
    return sheet_parts(made, jointer, how)


def check_stick(openings: list[Opening], keep: str | Fraction, how: Setting) -> None:
    """Refuse openings said against a stick whose length is not said, or that leave nothing of it."""
    for opening in openings:
        if opening.against:
            check_against(opening, keep, how)


def check_against(opening: Opening, keep: str | Fraction, how: Setting) -> None:
    """Refuse one of them."""
    if isinstance(keep, str):
        refuse("stick-wanted", {"name": opening.name})
    if keep + opening.size <= 0:
        parts = {"name": opening.name, "lack": amount(-opening.size, how), "stick": amount(keep, how)}
        refuse("stick-short", parts)


def refuse(key: str, parts: dict[str, str]) -> NoReturn:
    """Raise the error of the table at the stick's length, the last field concerned."""
    raise InputErrors({"keep": sentence(ERRORS[key], parts)})


TOOL = Tool(
    name="gauge",
    title="Gauge stick",
    about="Holds a stick against every opening of a dry fit, and says what comes off which rail.",
    fields=(
        Field(
            "openings",
            "Openings",
            "lines",
            required=True,
            choices=AGAINST,
            help="Rail, end: between the shoulders as read; or against the stick: fits, lacks 1/16 strong, loose 1/32.",
            read=read_openings,
        ),
        Field(
            "keep",
            "Keep",
            "length",
            default=("largest", "largest"),
            choices=KEEPS,
            help="Which opening the stick is cut to; or the length of the stick that was tried.",
            read=read_keep,
        ),
        Field(
            "fit",
            "Fits within",
            "length",
            default=("1/64 in", "0.5 mm"),
            help="What differs no more than this is left alone.",
            sign="zero",
        ),
        Field("bite", "Bite", "length", default=("1/32 in", "1 mm"), help="What one pass of the jointer takes."),
        Field("tenon", "Tenon length", "length", help="Of the slats, at each end: gives them over all.", sign="zero"),
        Field(
            "least_length",
            "Least length",
            "length",
            default=("12 in", "305 mm"),
            help="The shortest rail that goes over your jointer.",
            shop=True,
        ),
        Field(
            "least_thickness",
            "Least thickness",
            "length",
            default=("3/8 in", "10 mm"),
            help="The thinnest rail that goes over your jointer.",
            shop=True,
        ),
    ),
    work=work,
    help=(
        "Put the piece together dry, clamp it, and read each opening close to both ends of its rails; or cut a stick "
        "to one of them and say how it goes in elsewhere. Name a place by the rail that would be trimmed there, "
        "and its end. The slats are all cut to one length, and the rails trimmed to that, never slat by slat.",
        "An opening that lacks gets its rail's edge jointed; where one end lacks more than the other, the rest is "
        "planed to a struck line. One that is loose stays so: wood does not come back. Then put it together dry once "
        "more, and try the stick in every place before any slat is cut.",
    ),
    example=(
        (
            "openings",
            "back rail, left: 13 1/16 strong\nback rail, right: 13 1/16\nend rail, front: 13\nend rail, back: 13 1/32",
        ),
        ("tenon", "7/8"),
    ),
    cautions=(CAUTIONS["apart"], JOINTER),
    stage="trim",
)
