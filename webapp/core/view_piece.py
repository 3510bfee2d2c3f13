"""What a project's page says of its piece: the next thing to do, what no longer holds, the stages, parts and joints."""

from typing import Any, TypeAlias

from webapp.core.address import part_address, sheet_address
from webapp.core.follow import Held
from webapp.core.follow_ground import WHY
from webapp.core.piece import Factors, Item, Piece, Summary, Worked, piece
from webapp.core.piece_glue import GLUE, glue_list, joint_words, tick_words
from webapp.core.piece_next import next_thing
from webapp.core.piece_room import room_warnings
from webapp.core.piece_slats import SLATS
from webapp.core.piece_stages import STAGES
from webapp.core.piece_words import capital, counted_words
from webapp.core.sums import counted
from webapp.core.tool import Tool
from webapp.core.view_stages import stages_view

View: TypeAlias = dict[str, Any]


def piece_view(summary: Summary, tools: list[Tool], worked: Worked, factors: Factors) -> View:
    """Give the piece; `worked` holds the sheets that stand and those that links lead to, by entry."""
    here = piece(summary, worked, factors, tools)
    return {
        "next": _next(here),
        "last": last_view(here),
        "held": _held(here),
        "warnings": room_warnings(summary, worked, factors),
        "stages": stages_view(here),
        "parts": [part_line(summary, thing) for thing in summary["parts"] if thing["heads"]],
        "joints": joints_view(summary),
        "part_names": [part["name"] for part in here.parts],
    }


def _next(here: Piece) -> View:
    n = next_thing(here)
    return {"words": n.words, "more": n.more, "href": n.href, "way": n.way, "entry": n.entry, "key": n.key}


def last_view(here: Piece) -> View | None:
    """Give what was ticked or cut last, with the entry that its undo takes back."""
    ticked = [head for thing in here.summary["done"] for head in thing["heads"]]
    found = sorted(here.cuts + ticked, key=lambda head: head["rank"])
    if not found:
        return None
    newest = found[-1]
    words = _cut_words(here, newest) if "of" in newest else _step_words(here, newest)
    return {"entry": newest["entry"], "words": words}


def _cut_words(here: Piece, cut: Item) -> str:
    sheet = here.worked.get(cut["of"], {}).get("sheet", {})
    labels = [step["label"] for step in sheet.get("steps", []) + sheet.get("marks", []) if step["key"] == cut["key"]]
    called = [each["called"] for each in here.sheets if each["entry"] == cut["of"]]
    slats = ["Slats"] if cut["key"] in SLATS else []
    return f"{(slats + labels + called + ['a sheet'])[0]} cut"


def _step_words(here: Piece, head: Item) -> str:
    step = head["step"]
    if step.startswith(GLUE):
        words = [tick_words(tick) for tick in glue_list(here.summary) if tick.step == step]
        return f"done: {(words + ['a line before the glue'])[0]}"
    titles = [stage.title for stage in STAGES if stage.step == step]
    return f"{(titles + [step])[0]} done"


def _held(here: Piece) -> View | None:
    """Give what no longer holds: how many, whether a press works them again, and what waits for what."""
    stale, waits = here.followed.of("stale"), here.followed.of("waits")
    if not stale and not waits:
        return None
    free = [held for held in stale if not held.cuts]
    return {
        "words": _stale_words(stale),
        "press": ("Work it again" if len(free) == 1 else "Work them again") if free else "",
        "stale": [_held_line(here, held, "is cut: it is not worked again" if held.cuts else "") for held in stale],
        "waits": [_held_line(here, held, f"waits: {_why(here, held)}") for held in waits],
    }


def _stale_words(stale: list[Held]) -> str:
    sheets = len([held for held in stale if held.kind == "sheet"])
    said = counted_words(sheets, len(stale) - sheets)
    return f"{capital(said)} no longer {'holds' if len(stale) == 1 else 'hold'}" if stale else ""


def _why(here: Piece, held: Held) -> str:
    reasons = [WHY[source.why] for source in held.sources if source.why]
    return (reasons + ["what it stands on waits"])[0]


def _held_line(here: Piece, held: Held, words: str) -> View:
    project, item = here.summary["id"], held.item
    part = held.kind == "part"
    return {
        "title": item["name"] if part else item["called"],
        "href": part_address(project, item["entry"]) if part else sheet_address(project, item["entry"]),
        "words": words,
    }


def part_line(summary: Summary, thing: Item) -> View:
    """Give a part as a line: its name, how many there are, its wood."""
    part = thing["heads"][0]
    return {
        "name": part["name"],
        "href": part_address(summary["id"], part["entry"]),
        "words": part_words(part),
        "rivals": len(thing["heads"]) > 1,
    }


def part_words(part: Item) -> str:
    """Say how many pieces a part has, how many are spare, and of which wood."""
    spare = [f"{part['spare']} spare"] if part["spare"] else []
    wood = [part["wood"]] if part["wood"] else []
    return ", ".join([counted(part["count"], "piece"), *spare, *wood])


def joints_view(summary: Summary) -> list[View]:
    """Give the joints by their numbers; rivals stand side by side."""
    pairs = [(thing, head) for thing in summary["joints"] for head in thing["heads"]]
    ordered = sorted(pairs, key=lambda pair: _numbers_first(pair[1]["number"]))
    return [joint_line(summary, head, len(thing["heads"]) > 1) for thing, head in ordered]


def _numbers_first(number: str) -> tuple[int, str]:
    """Return what joints are put in order by: their number, where they begin with one, then their text."""
    digits = ""
    for letter in list(number):
        if letter not in "0123456789":
            break
        digits += letter
    return (int(digits) if digits else 0, number)


def joint_line(summary: Summary, joint: Item, rivals: bool) -> View:
    """Give a joint as a line."""
    said = [word for word in (joint["tenon"], joint["pins"]) if word]
    words = joint_words(summary, joint)
    return {"entry": joint["entry"], "words": capital(words), "more": ", ".join(said), "rivals": rivals}
