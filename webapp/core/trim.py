"""A rail after a trim: its width, its edge shoulder, and how long a slat's tenon may be now."""

from webapp.core.jointing import JOINTER
from webapp.core.sentence import sentence
from webapp.core.setting import Setting
from webapp.core.sums import amount
from webapp.core.tool import Field, InputErrors, Parts, Tool, Values
from webapp.core.trim_room import CLEARANCE, room
from webapp.core.trim_sheet import Trim, sheet_parts
from webapp.core.trim_words import CAUTIONS, ERRORS


def work(values: Values, how: Setting) -> Parts:
    """Return the parts of the sheet; raise InputErrors for sizes that no rail can have, or a cut that leaves none."""
    left = room(values["depth"], values["cut"], values.get("tenon"), values["clearance"])
    made = Trim(values.get("width"), values.get("edge"), values["depth"], values["cut"], left)
    errors = {**rail_errors(made, how), **cut_errors(made, how)}
    if errors:
        raise InputErrors(errors)
    return sheet_parts(made, how)


def rail_errors(made: Trim, how: Setting) -> dict[str, str]:
    """Return what cannot be of the rail as it was."""
    width = made.width
    if width is None:
        return {}
    found = {}
    parts = {"width": amount(width, how), "depth": amount(made.depth, how)}
    if made.edge is not None and made.edge >= width:
        found["edge"] = sentence(ERRORS["no-tenon"], {**parts, "edge": amount(made.edge, how)})
    if made.depth >= width:
        found["depth"] = sentence(ERRORS["no-bottom"], parts)
    return found


def cut_errors(made: Trim, how: Setting) -> dict[str, str]:
    """Return what the cut does not leave."""
    parts = {"cut": amount(made.cut, how), "depth": amount(made.depth, how)}
    if made.width is not None and made.cut >= made.width:
        return {"cut": sentence(ERRORS["no-rail"], {**parts, "width": amount(made.width, how)})}
    if made.room.depth <= 0:
        return {"cut": sentence(ERRORS["no-mortise"], parts)}
    if made.room.longest <= 0:
        said = {"clearance": amount(made.room.clearance, how), "left": amount(made.room.depth, how)}
        return {"clearance": sentence(ERRORS["no-room"], said)}
    return {}


TOOL = Tool(
    name="trim",
    title="Rail after a trim",
    about="Says what a cut off the edge of a rail leaves: width, edge shoulder, and room for the tenons of its slats.",
    fields=(
        Field("width", "Rail, width", "length", help="Before the cut."),
        Field("edge", "Edge shoulder", "length", sign="zero", help="On the edge that is cut, before the cut."),
        Field("depth", "Slat mortise depth", "length", required=True, help="Before the cut."),
        Field("cut", "Comes off", "length", required=True, help="Of the edge that faces the opening: the most."),
        Field("tenon", "Slat's tenon length", "length"),
        CLEARANCE,
    ),
    work=work,
    help=(
        "At dry fit a rail's edge is jointed until the slats go in. That same edge holds their mortises, and they are "
        "shallower by all that comes off: a tenon that had room before may bottom now.",
        "Say the mortise depth and what comes off, before the cut or after. With the slat's tenon it says whether the "
        "tenon still goes in, and how much deeper the mortises must be where it does not.",
    ),
    example=(("width", "5 1/2"), ("edge", "1/2"), ("depth", "1"), ("cut", "1/16 strong"), ("tenon", "15/16")),
    cautions=(CAUTIONS["dry"], JOINTER),
    stage="trim",
)
