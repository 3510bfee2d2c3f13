"""Marks and strips as a screen draws them: text, booleans, lists; places as text with two decimals."""

from typing import Any, TypeAlias

from webapp.core.mark import mark_parts, spoken_parts
from webapp.core.mark_shape import is_mark

View: TypeAlias = dict[str, Any]
Whole: TypeAlias = tuple[int, int]
Placed: TypeAlias = tuple[str, int, int]  # a kind, from and to in hundredths

# The drawing's own units, about one to a pixel of a phone.
WIDTH = 360
MARGIN = 8  # at either side, so that the ends' lines and the outermost nicks are whole
TOP = 10
EDGE = 46  # the rail's edge: wood stands on it, nicks point up to it
NICK = 7  # wide and high
LETTER = 7  # a label's character, on the safe side
MOST_LETTERS = 6  # of an answer as large as can be
CROWDED = 400  # hundredths: an outline would hide a span narrower than this, and eat its neighbours
HEIGHTS = {"wood": 36, "cut": 36, "waste": 36, "mortise": 12}
FILLS = {"wood": "url(#hatch)", "cut": "none", "waste": "none", "mortise": "none"}


def mark_view(text: str, unit: str = "") -> View:
    """Give a mark, or a reading worded like one, in its parts; any other text is drawn as it was said."""
    if not is_mark(text):
        return {"text": text, "plain": True, "long": len(text) > MOST_LETTERS}
    parts = mark_parts(text)
    hair = parts["hair"] != ""
    return {
        "text": text,
        "plain": False,
        **parts,
        "hair": hair,
        "inch": '"' if '"' in text else "",
        "unit": "" if hair else unit,
        "long": len(parts["feet"]) + len(parts["whole"]) > 4,
        "spoken": spoken_parts(parts, '"' in text),
    }


def strip_view(strip: View) -> View:
    """Give a strip in true proportions: a span or tick is drawn at its own place, or thinned out, never moved."""
    whole = _two_ints(strip["length"]["inches"])
    spans = [_placed(span, whole) for span in strip["spans"]]
    ticks = [{"x": _across(tick["at"], whole), "label": tick["label"]} for tick in strip["ticks"]]
    return {
        "label": strip["label"],
        "length": strip["length"]["mark"],
        "box": f"0 0 {WIDTH} {EDGE + 2 * NICK + 14}",
        "crowded": any(end - start < CROWDED for kind, start, end in spans),
        "shapes": _shapes(spans),
        "edge": f"M{MARGIN} {EDGE}H{WIDTH - MARGIN}",
        "ends": [f"M{MARGIN} {TOP - 6}V{EDGE + 8}", f"M{WIDTH - MARGIN} {TOP - 6}V{EDGE + 8}"],
        "nicks": "".join([_nick(tick["x"]) for tick in _apart(ticks, False)]),
        "labels": [_label(tick) for tick in _apart(ticks, True) if tick["label"]],
    }


def _two_ints(inches: str) -> Whole:
    """Read a LENGTH's "inches": "43/24" or "3"."""
    parts = inches.split("/") + ["1"]
    return int(parts[0]), int(parts[1])


def _across(at: dict[str, str], whole: Whole) -> int:
    """Give a LENGTH's place on the drawing in hundredths, a half to the right; in ints, to spare the phone."""
    top, bottom = _two_ints(at["inches"])
    over = bottom * whole[0]
    return MARGIN * 100 + (2 * top * whole[1] * (WIDTH - 2 * MARGIN) * 100 + over) // (2 * over)


def _decimal(hundredths: int) -> str:
    """Write hundredths with two decimals."""
    whole, part = divmod(abs(hundredths), 100)
    sign = "-" if hundredths < 0 else ""
    return f"{sign}{whole}.0{part}" if part < 10 else f"{sign}{whole}.{part}"


def _placed(span: View, whole: Whole) -> Placed:
    return span["kind"], _across(span["from"], whole), _across(span["to"], whole)


def _shapes(spans: list[Placed]) -> list[View]:
    """Give the spans of each kind as one path, so that a thousand slats are one thing to draw; air is left empty."""
    paths: dict[str, list[str]] = {}
    for kind, start, end in spans:
        if kind != "air":
            drawn = f"{kind} thin" if end - start < CROWDED else kind
            paths.setdefault(drawn, []).append(_box(start, end - start, HEIGHTS.get(kind, 36)))
    return [{"kind": kind, "fill": FILLS.get(kind, "none"), "d": "".join(boxes)} for kind, boxes in paths.items()]


def _box(x: int, width: int, height: int) -> str:
    """Give a box that stands on the edge; its width is that between its ends as drawn, so that neighbours meet."""
    across = _decimal(width)
    return f"M{_decimal(x)} {EDGE - height}h{across}v{height}h-{across}z"


def _apart(ticks: list[View], lettered: bool) -> list[View]:
    """Give the ticks, from the left, that have room for their nick, or for their label."""
    chosen = []
    free = -100000
    for tick in sorted(ticks, key=lambda tick: tick["x"]):
        room = _room(tick["label"]) if lettered else NICK * 100
        left = _left(tick["x"], room)
        if left >= free:
            chosen.append(tick)
            free = left + room
    return chosen


def _room(label: str) -> int:
    return (len(label) + 1) * LETTER * 100


def _left(x: int, room: int) -> int:
    """Give where something about `x` begins: to the right of it where half would not go on the drawing."""
    anchor = _anchor(x, room)
    if anchor == "start":
        return x
    return x - room if anchor == "end" else x - room // 2


def _anchor(x: int, room: int) -> str:
    if x - room // 2 < 0:
        return "start"
    return "end" if x + room // 2 > WIDTH * 100 else "middle"


def _nick(x: int) -> str:
    """Give a knife nick, a small triangle; its point is the mark."""
    half = NICK * 50
    foot = EDGE + NICK + 2
    return f"M{_decimal(x)} {EDGE + 2}L{_decimal(x - half)} {foot}H{_decimal(x + half)}z"


def _label(tick: View) -> View:
    return {
        "text": tick["label"],
        "x": _decimal(tick["x"]),
        "y": str(EDGE + 2 * NICK + 8),
        "anchor": _anchor(tick["x"], _room(tick["label"])),
    }
