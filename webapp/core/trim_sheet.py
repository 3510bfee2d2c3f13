"""The parts of the sheet of a rail after a trim."""

from dataclasses import dataclass
from fractions import Fraction

from webapp.core.gauge_words import CAUTIONS as FIT_CAUTIONS
from webapp.core.gauge_words import NOTES as FIT_NOTES
from webapp.core.jointing import JOINTER
from webapp.core.mark import length
from webapp.core.sentence import sentence
from webapp.core.setting import Setting
from webapp.core.sheet import Part, figure, span, strip, tick
from webapp.core.sums import amount, exactly
from webapp.core.tool import Parts
from webapp.core.trim_room import ZERO, Room, room_words
from webapp.core.trim_words import CAUTIONS, EDGE_GONE, NOTES

EDGE_SHOULDER = Fraction(1, 8)  # the least that stays (rule 8)


@dataclass(frozen=True)
class Trim:
    """A rail as it was, what comes off the edge that faces the opening, and the room that is left."""

    width: Fraction | None
    edge: Fraction | None
    depth: Fraction
    cut: Fraction
    room: Room


def sheet_parts(made: Trim, how: Setting) -> Parts:
    """Return all parts of the sheet; `left` is signed."""
    own = {} if made.room.tenon is None else {"left": length(made.room.left, how)}
    return {
        "answer": figure("longest", "Longest tenon a slat may have", length(made.room.longest, how)),
        "figures": [*rail_figures(made, how), *room_figures(made.room, how)],
        "strips": strips(made, how),
        "sums": sums(made, how),
        "cautions": cautions(made, how),
        "notes": [NOTES["depth"], NOTES["most"], FIT_NOTES["edge"], NOTES["common"]],
        **own,
    }


def rail_figures(made: Trim, how: Setting) -> list[Part]:
    """Return the rail's width, edge shoulder and mortise depth after the cut."""
    found = []
    if made.width is not None:
        found.append(figure("width", "Rail, width now", length(made.width - made.cut, how)))
    if made.edge is not None:
        found.append(figure("edge", "Edge shoulder now", edge_value(made.edge - made.cut, how)))
    return [*found, figure("depth", "Slat mortise depth now", length(made.room.depth, how))]


def edge_value(edge: Fraction, how: Setting) -> dict[str, str] | str:
    """Return an edge shoulder as a length, or in words where the cut went past it."""
    if edge >= 0:
        return length(edge, how)
    return sentence(EDGE_GONE, {"into": amount(-edge, how)})


def room_figures(found: Room, how: Setting) -> list[Part]:
    """Return how the slats' tenon stands in its mortise, where its length is known."""
    if found.tenon is None:
        return []
    words = figure("room", "Slat's tenon in its mortise", room_words(found, how))
    if found.left < 0:
        by = figure("over", "Tenon longer than the mortise by", length(-found.left, how))
    else:
        by = figure("left", "Room left beyond the tenon", length(found.left, how))
    deepen = figure("deepen", "Mortises deeper by, or off each tenon's end", length(found.deepen, how))
    return [words, by, *([deepen] if found.deepen > 0 else [])]


def strips(made: Trim, how: Setting) -> list[Part]:
    """Return the mortise with what came off above it, and under it the tenon, both in one length."""
    tenon = ZERO if made.room.tenon is None else made.room.tenon
    whole = length(max(made.depth, made.cut + tenon), how)
    now, end = length(made.cut, how), length(made.depth, how)
    off = span(length(ZERO, how), now, "Comes off", "cut")
    label = f"Slat mortise, {amount(made.depth, how)} deep: {amount(made.room.depth, how)} stay"
    deep = [off, span(now, end, "Mortise", "mortise")]
    beyond = [] if made.room.left >= 0 else [span(end, whole, "Rail", "wood")]
    mortise = strip(label, whole, [*deep, *beyond], [tick(now, "edge now")])
    if made.room.tenon is None:
        return [mortise]
    return [mortise, strip(f"The tenon, {amount(tenon, how)}", whole, [off, *tenon_spans(made, tenon, how)], [])]


def tenon_spans(made: Trim, tenon: Fraction, how: Setting) -> list[Part]:
    """Return the tenon from the new edge, with the room beyond it or with what is too long."""
    now, end, bottom = length(made.cut, how), length(made.cut + tenon, how), length(made.depth, how)
    if made.room.left < 0:
        return [span(now, bottom, "Tenon", "wood"), span(bottom, end, "Too long", "waste")]
    wood = span(now, end, "Tenon", "wood")
    return [wood, span(end, bottom, "Room left", "air")] if made.room.left > 0 else [wood]


def sums(made: Trim, how: Setting) -> list[str]:
    """Return the working."""
    found = made.room
    cut, now = exactly(made.cut, how), exactly(found.depth, how)
    befores = [made.width, made.edge, made.depth]
    lines = [
        f"{exactly(before, how)} - {cut} = {exactly(before - made.cut, how)}"
        for i, before in enumerate(befores)
        if before is not None and before >= made.cut and before not in befores[:i]
    ]
    lines.append(f"{now} - {exactly(found.clearance, how)} = {exactly(found.longest, how)}")
    if found.tenon is not None:
        tenon, size = exactly(found.tenon, how), exactly(abs(found.left), how)
        lines.append(f"{now} - {tenon} = {size}" if found.left >= 0 else f"{tenon} - {now} = {size}")
    return lines


def cautions(made: Trim, how: Setting) -> list[str]:
    """Return what to mind: the tenon, the edge shoulder, the dry fit and the jointer."""
    return [*room_cautions(made, how), *edge_cautions(made, how), FIT_CAUTIONS["apart"], CAUTIONS["dry"], JOINTER]


def room_cautions(made: Trim, how: Setting) -> list[str]:
    """Return that a tenon bottoms or has too little room, and whether deeper mortises mend it."""
    found = made.room
    if found.deepen == 0:
        return []
    parts = {
        "over": amount(abs(found.left), how),
        "deepen": amount(found.deepen, how),
        "clearance": amount(found.clearance, how),
    }
    said = [sentence(CAUTIONS["bottoms" if found.left < 0 else "tight"], parts)]
    if made.width is not None and found.needs >= made.width - made.cut:
        said.append(sentence(CAUTIONS["through"], {**parts, "width": amount(made.width - made.cut, how)}))
    return said


def edge_cautions(made: Trim, how: Setting) -> list[str]:
    """Return that too little is left of the edge shoulder; the wood may be cut already, so it is no error."""
    if made.edge is None or made.edge - made.cut >= EDGE_SHOULDER:
        return []
    edge = made.edge - made.cut
    parts = {"edge": amount(edge, how), "into": amount(abs(edge), how), "least": amount(EDGE_SHOULDER, how)}
    return [sentence(CAUTIONS["edge" if edge >= 0 else "edge-gone"], parts)]
