"""The parts of the sheet where slats are cut and the opening moved."""

from fractions import Fraction
from typing import Any

from webapp.core.mark import length
from webapp.core.rescue_solve import Rescue
from webapp.core.rescue_strips import strips
from webapp.core.rescue_sums import sums
from webapp.core.rescue_words import CAUTIONS, DEEP, LABELS, NOTES, SHORT, STEPS
from webapp.core.sentence import sentence
from webapp.core.setting import Setting
from webapp.core.sheet import Part, figure
from webapp.core.sums import amount
from webapp.core.tool import Parts
from webapp.core.trim_room import Room


def sheet_parts(made: Rescue, how: Setting) -> Parts:
    """Return all parts of the sheet."""
    return {
        "answer": answer(made, how),
        "figures": figures(made, how),
        "steps": steps(made, how),
        "strips": strips(made, how),
        "sums": sums(made, how),
        "cautions": cautions(made, how),
        "notes": notes(made, how),
    }


def answer(made: Rescue, how: Setting) -> Part:
    """Return the tenon, or how much farther in each end is cut; where no cut mends it, that in words."""
    label = LABELS[made.standing]
    if not made.mends:
        return figure("new-slats", label, sentence(SHORT[shortage(made)], {"short": amount(made.short, how)}))
    if made.standing == "uncut":
        return figure("tenon", label, length(made.tenon, how))
    return figure("recut", label, length(made.recut, how))


def shortage(made: Rescue) -> str:
    """Return why no cut mends it."""
    if made.over < 0:
        return "loose"
    return "no-tenon" if made.short > 0 else "none-left"


def figures(made: Rescue, how: Setting) -> list[Part]:
    """Return what goes with the answer."""
    if not made.mends:
        return new_slats(made, how)
    if made.standing == "uncut":
        return [*planned(made, how), *mortise(made.room, how)]
    found = [figure("stop", "Stop, away from the blade by", length(made.recut, how))] if made.over > 0 else []
    return [
        *found,
        figure("tenon", "Tenon at each end, then", length(made.tenon, how)),
        figure("was", "Tenon at each end, as cut", length(made.was, how)),
        *planned(made, how),
        *mortise(made.room, how),
    ]


def new_slats(made: Rescue, how: Setting) -> list[Part]:
    """Return by how much the slats fall short, and how long new ones are."""
    label = "Loose between the shoulders by" if made.over < 0 else "Shorter than the opening by"
    short = figure("short", label, length(made.short, how))
    anew: list[tuple[str, Fraction | None]] = [("New slats, over all", made.anew)]
    return [short, *[figure("overall", name, length(x, how)) for name, x in anew if x is not None]]


def planned(made: Rescue, how: Setting) -> list[Part]:
    """Return how the tenon differs from the one that was planned."""
    if made.planned is None or made.planned == made.tenon:
        return []
    more = made.tenon - made.planned
    if more > 0:
        return [figure("longer", "Tenon longer than planned by", length(more, how))]
    return [figure("shorter", "Tenon shorter than planned by", length(-more, how))]


def mortise(found: Room | None, how: Setting) -> list[Part]:
    """Return how deep the slats' mortises must be, and how much that is beyond what they are."""
    if found is None:
        return []
    value: Any = length(found.deepen, how)
    if found.deepen == 0:
        value = sentence(DEEP, {"left": amount(found.left, how)})
    needs = figure("mortise", "Slat mortises, this deep or more", length(found.needs, how))
    return [needs, figure("deepen", "Slat mortises deeper by", value)]


def steps(made: Rescue, how: Setting) -> list[Part]:
    """Return what is done, in order; nothing where the slats fit or are of no use."""
    deepen = [] if made.room is None or made.room.deepen == 0 else [made.room.deepen]
    last = [figure("deepen-mortises", STEPS["deepen"], length(x, how)) for x in deepen]
    if made.standing == "uncut":
        first = figure("set-stop", STEPS["set"], length(made.tenon, how))
    elif made.standing == "recut":
        first = figure("set-stop", STEPS["set-again"], length(made.recut, how))
    else:
        return last
    one = figure("try-one", STEPS["one"], length(made.wanted, how))
    return [first, one, figure("cut-all", STEPS["all"], STEPS["every"]), *last]


def cautions(made: Rescue, how: Setting) -> list[str]:
    """Return what is to be minded at the mortises and at the saw."""
    if not made.mends:
        return [CAUTIONS["loose"]] if made.over < 0 else []
    found = made.room
    deepen = []
    if found is not None and found.deepen > 0:
        parts = {"deepen": amount(found.deepen, how), "needs": amount(found.needs, how)}
        deepen = [sentence(CAUTIONS["deepen"], parts)]
    return [*deepen, *([] if made.standing == "fits" else [CAUTIONS["stop"], CAUTIONS["saw"]])]


def notes(made: Rescue, how: Setting) -> list[str]:
    """Return what else is to be known."""
    if not made.mends:
        return [*([NOTES["no-plan"]] if made.anew is None else []), NOTES["every"]]
    recut = [NOTES["half"], NOTES["cheeks"]] if made.standing == "recut" else []
    spare = sentence(NOTES["clearance"], {"clearance": amount(made.clearance, how)})
    return [*recut, *([] if made.room is None else [spare]), NOTES["every"], NOTES["week"]]
