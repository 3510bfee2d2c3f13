"""The parts of the sheet of parts from over-all sizes."""

from fractions import Fraction

from webapp.core.mark import length
from webapp.core.overall_bay import CLEARANCE, LEAD, WALL, Bay, End
from webapp.core.overall_strips import strips
from webapp.core.overall_words import CAUTIONS, NOTES
from webapp.core.sentence import sentence
from webapp.core.setting import Setting
from webapp.core.sheet import Part, figure, mark_at
from webapp.core.sums import amount, exactly
from webapp.core.tool import Parts

ZERO = Fraction(0)


def sheet_parts(made: Bay, alike: bool, how: Setting) -> Parts:
    """Return all parts of the sheet; `alike` says that the second post was left out."""
    return {
        "answer": figure("clear", "Clear, shoulder to shoulder", length(made.clear, how)),
        "figures": figures(made, how),
        "marks": marks(made, how),
        "strips": strips(made, how),
        "sums": sums(made, how),
        "cautions": cautions(made, how),
        "notes": notes(made, alike, how),
    }


def figures(made: Bay, how: Setting) -> list[Part]:
    """Return the rail with its tenons, and where its middle lies."""
    half = figure("half", "Middle to either shoulder", length(made.clear / 2, how))
    if not made.tenoned:
        return [half]
    rail = figure("rail", "Rail, over all", length(made.rail, how))
    one, other = made.first.tenon, made.second.tenon
    if one == other:
        return [rail, figure("tenon", "Tenon, each end", length(one, how)), half]
    tenon = figure("tenon", "Tenon in the first post", length(one, how))
    return [rail, tenon, figure("other-tenon", "Tenon in the other post", length(other, how)), half]


def marks(made: Bay, how: Setting) -> list[Part]:
    """Return where the shoulders lie from the rail's own end."""
    if not made.tenoned:
        return []
    near, far = made.first.tenon, made.first.tenon + made.clear
    return [
        mark_at("shoulder-near", "Near shoulder, from the rail's end", near, how),
        mark_at("shoulder-far", "Far shoulder, from the same end", far, how),
    ]


def sums(made: Bay, how: Setting) -> list[str]:
    """Return the working."""
    whole, clear = exactly(made.overall, how), exactly(made.clear, how)
    posts = both(made.first.post, made.second.post, "-", how)
    lines = [f"{whole} {posts} = {clear}"]
    if made.tenoned:
        tenons = both(made.first.tenon, made.second.tenon, "+", how)
        lines.append(f"{clear} {tenons} = {exactly(made.rail, how)}")
    return lines


def both(one: Fraction, other: Fraction, sign: str, how: Setting) -> str:
    """Return two ends in a sum: `- 2 x 3 7/16`, or each for itself where they differ."""
    if one == other:
        return f"{sign} 2 x {exactly(one, how)}"
    return f"{sign} {exactly(one, how)} {sign} {exactly(other, how)}"


def ends(made: Bay) -> list[End]:
    """Return the ends, one alone where they are alike."""
    return [made.first] if made.first == made.second else [made.first, made.second]


def cautions(made: Bay, how: Setting) -> list[str]:
    """Return what to mind: the posts' own sizes, and what a blind mortise leaves of them."""
    thin = [end for end in ends(made) if made.tenoned and not end.through and end.wall < WALL]
    return [CAUTIONS["finished"], *[wall_caution(end, how) for end in thin]]


def wall_caution(end: End, how: Setting) -> str:
    """Return what a mortise leaves of one post, where that is too little."""
    parts = {
        "clear": amount(CLEARANCE, how),
        "tenon": amount(end.tenon, how),
        "post": amount(end.post, how),
        "wall": amount(max(ZERO, end.wall), how),
        "lead": amount(LEAD, how),
        "least": amount(WALL, how),
    }
    return sentence(CAUTIONS["wall" if end.wall > 0 else "breaks"], parts)


def notes(made: Bay, alike: bool, how: Setting) -> list[str]:
    """Return what was taken for what, and how the shoulders are laid out."""
    through = [through_note(end, how) for end in ends(made) if made.tenoned and end.through]
    return [
        NOTES["finished"],
        *([NOTES["same"]] if alike else []),
        *through,
        *([] if made.tenoned else [NOTES["no-tenon"]]),
        NOTES["set"],
        NOTES["middle"],
    ]


def through_note(end: End, how: Setting) -> str:
    """Return how far a tenon stands proud of its post."""
    parts = {"tenon": amount(end.tenon, how), "post": amount(end.post, how)}
    proud = {"proud": amount(end.tenon - end.post, how)}
    return sentence(NOTES["proud" if end.tenon > end.post else "flush"], {**parts, **proud})
