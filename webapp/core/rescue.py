"""Slats that are cut for an opening that has moved: where their shoulders go now, if anywhere."""

from webapp.core.rescue_sheet import sheet_parts
from webapp.core.rescue_solve import Rescue
from webapp.core.rescue_words import CAUTIONS, ERRORS
from webapp.core.sentence import sentence
from webapp.core.setting import Setting
from webapp.core.sums import amount
from webapp.core.tool import Field, InputErrors, Parts, Tool, Values
from webapp.core.trim_room import CLEARANCE


def work(values: Values, how: Setting) -> Parts:
    """Return the parts of the sheet; raise InputErrors for shoulders that no such slats can have."""
    made = Rescue(
        values["overall"],
        values.get("shoulder"),
        values["wanted"],
        values.get("tenon"),
        values.get("depth"),
        values["clearance"],
    )
    check(made, how)
    return sheet_parts(made, how)


def check(made: Rescue, how: Setting) -> None:
    """Refuse shoulders as far apart as the slats are long."""
    if made.shoulder is not None and made.shoulder >= made.overall:
        parts = {"overall": amount(made.overall, how), "shoulder": amount(made.shoulder, how)}
        raise InputErrors({"shoulder": sentence(ERRORS["no-tenon"], parts)})


TOOL = Tool(
    name="rescue",
    title="When slats are cut and the opening moved",
    about="Says whether slats that are cut can still be used, and where their shoulders go now.",
    fields=(
        Field("overall", "Slats, over all", "length", required=True, help="As cut, over both tenons."),
        Field(
            "shoulder",
            "Shoulder to shoulder, as cut",
            "length",
            help="Left blank where no shoulder is cut yet.",
        ),
        Field("wanted", "Shoulder to shoulder, wanted", "length", required=True, help="The opening as it is now."),
        Field("tenon", "Tenon length, planned", "length", help="At each end."),
        Field("depth", "Slat mortise depth", "length", help="As the mortises are now."),
        CLEARANCE,
    ),
    work=work,
    help=(
        "The slats are cut, and the opening came out another: a post finished thin, a rail was trimmed. Where no "
        "shoulder is cut yet the difference goes into the tenons. Where they are cut and too long between the "
        "shoulders, each end is cut again half of that farther in, and the tenons grow by it.",
        "Longer tenons want deeper mortises; say their depth, and it says how much. What is too short between the "
        "shoulders stays so, and wants new slats.",
    ),
    example=(
        ("overall", "14 13/16"),
        ("shoulder", "13 1/16"),
        ("wanted", "13"),
        ("tenon", "7/8"),
        ("depth", "15/16"),
    ),
    cautions=(CAUTIONS["stop"], CAUTIONS["saw"]),
    stage="slats",
)
