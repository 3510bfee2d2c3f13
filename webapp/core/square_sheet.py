"""The parts of a square's sheet."""

from fractions import Fraction

from webapp.core.mark import length
from webapp.core.sentence import sentence
from webapp.core.setting import Setting
from webapp.core.sheet import Part, figure, span, strip, tick
from webapp.core.square_solve import Frame
from webapp.core.square_words import CAUTIONS, NOTES, PAIRS, WAYS
from webapp.core.sums import amount, exactly
from webapp.core.tool import Parts

SIDES_OFF = Fraction(1, 16)  # diagonals further than this from what the sides say: one was misread


def sheet_parts(frame: Frame, how: Setting) -> Parts:
    """Return all parts of the sheet."""
    return {
        "answer": answer(frame, how),
        "figures": figures(frame, how),
        "steps": steps(frame, how),
        "strips": strips(frame, how),
        "sums": sums(frame, how),
        "cautions": cautions(frame, how),
        "notes": notes(frame, how),
        "out": length(frame.out, how),
        "out_up": length(frame.out_up, how),
        "clamp": frame.clamp,
        "goal": length(frame.goal, how),
    }


def answer(frame: Frame, how: Setting) -> Part:
    """Return how far the top has gone, its way said in the label."""
    way = gone(frame.out, "right", "left")
    return figure("out", f"Top {way}, over {amount(frame.up, how)} up", length(abs(frame.out), how))


def gone(x: Fraction, more: str, less: str) -> str:
    """Return which way something has gone."""
    if x == 0:
        return "is where it should be"
    return f"has gone {more if x > 0 else less}"


def figures(frame: Frame, how: Setting) -> list[Part]:
    """Return the same fault seen along the frame, where to clamp, and until when."""
    way = gone(frame.out_up, "up", "down")
    longer = max(frame.rising, frame.falling)
    return [
        figure("out-up", f"Right end {way}, over {amount(frame.along, how)} along", length(abs(frame.out_up), how)),
        figure("clamp", "Clamp across", WAYS.get(frame.clamp, "neither: the diagonals are equal")),
        figure("goal", "Until both diagonals read", length(frame.goal, how)),
        figure("draw", "The longer one comes in by", length(longer - frame.goal, how)),
        figure("true", "Diagonal of these sides, square", length(frame.true, how)),
    ]


def steps(frame: Frame, how: Setting) -> list[Part]:
    """Return what to do about it."""
    if frame.clamp == "none":
        return []
    return [
        figure("clamp", f"Clamp across {WAYS[frame.clamp]}, until it reads", length(frame.goal, how)),
        figure("again", "Read both again when the clamps are off", "they should be alike"),
    ]


def strips(frame: Frame, how: Setting) -> list[Part]:
    """Return both diagonals in one length, each with the goal ticked."""
    start, whole = length(Fraction(0), how), max(frame.rising, frame.falling)
    found = []
    for name, diagonal in (("Rising", frame.rising), ("Falling", frame.falling)):
        end = length(diagonal, how)
        spans = [span(start, end, name, "wood")]
        if diagonal < whole:
            spans.append(span(end, length(whole, how), "short of the other", "air"))
        goal = [tick(length(frame.goal, how), "goal")]
        found.append(strip(f"{name}, {amount(diagonal, how)}", length(whole, how), spans, goal))
    return found


def sums(frame: Frame, how: Setting) -> list[str]:
    """Return the working."""
    scale = how.factors["mm"] if how.metric else Fraction(1)
    d1, d2, a = exactly(frame.rising, how), exactly(frame.falling, how), exactly(frame.along, how)
    excess = exactly(frame.excess / scale, how)
    return [f"{d1} x {d1} - {d2} x {d2} = {excess}", f"{excess} / (4 x {a}) = {exactly(frame.out, how)}"]


def cautions(frame: Frame, how: Setting) -> list[str]:
    """Return what to mind: readings that do not agree, and the clamp."""
    found = []
    if abs(frame.goal - frame.true) > SIDES_OFF:
        said = {"true": amount(frame.true, how), "goal": amount(frame.goal, how)}
        found.append(sentence(CAUTIONS["sides-again"], said))
    if frame.clamp != "none":
        found.append(CAUTIONS["clamp"])
    return found


def notes(frame: Frame, how: Setting) -> list[str]:
    """Return what the diagonals do not prove."""
    bottom, right, top, left = frame.sides
    by = [abs(bottom - top), abs(right - left)]
    if max(by) > 0:
        which = PAIRS[0] if by[0] >= by[1] else PAIRS[1]
        return [sentence(NOTES["sides-differ"], {"which": which, "most": amount(max(by), how)}), NOTES["one-tape"]]
    return [NOTES["two-sides"], NOTES["one-tape"]]
