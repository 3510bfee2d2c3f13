"""What a project's page says of each stage: a line in words, and behind it sheets, parts, rounds, ways and a tick."""

from typing import Any, TypeAlias

from webapp.core.address import glue_address, measure_address, part_address, round_address, work_address
from webapp.core.built import drawn_words
from webapp.core.piece import Item, Piece
from webapp.core.piece_glue import glue_list
from webapp.core.piece_known import known, missing, stale
from webapp.core.piece_milling import places, unread
from webapp.core.piece_rails import rails
from webapp.core.piece_stages import STAGES, Stage, begun, reached
from webapp.core.view_project import MANY, head_view

View: TypeAlias = dict[str, Any]

PARTS = {  # the measures that matter at a stage
    "stock": (),
    "finish-milling": ("thickness", "width"),
    "layout": ("shoulder", "overall"),
    "tenons": ("tenon",),
    "slat-mortises": ("mortise",),
}
WIDE = "0123456789"


def stages_view(here: Piece) -> list[View]:
    """Give the stages in order."""
    at = reached(here) if begun(here) else -1
    return [_stage(here, stage, at == i) for i, stage in enumerate(STAGES)]


def _stage(here: Piece, stage: Stage, now: bool) -> View:
    done = here.done.get(stage.step, "")
    lacks = [] if done else missing(here, stage.key)
    sheets = here.of_stage(stage.key)
    return {
        "key": stage.key,
        "title": stage.title,
        "state": "done" if done else ("next" if now else ""),
        "now": now,
        "words": "; ".join(known(here, stage.key) + lacks),
        "stale": "; ".join(stale(here, stage.key)),
        "sheets": _sheets(here, sheets[-MANY:]),
        "earlier": f"{len(sheets) - MANY} earlier ones stand below, among the kept sheets"
        if len(sheets) > MANY
        else "",
        "lines": _lines(here, stage.key),
        "ways": _ways(here, stage.key),
        "step": "" if done else stage.step,
        "undo": done,
    }


def _sheets(here: Piece, sheets: list[Item]) -> list[View]:
    """Give sheets as lines."""
    return [head_view(here.summary, sheet, list(here.tools.values()), here.worked) for sheet in sheets]


def _lines(here: Piece, key: str) -> list[View]:
    """Give what a stage opens to beside its sheets: parts with what matters of them, rounds, rails."""
    if key == "dry-fit":
        return [_round(here, each) for each in here.rounds]
    if key == "trim":
        return [_line(f"{rail.words}", f"{rail.said}, cut" if rail.cut else rail.said, "") for rail in _rails(here)]
    if key == "rest":
        heads = [head for thing in here.summary["conditions"] for head in thing["heads"]]
        return [_line(head["place"], _unit(head), "") for head in heads]
    if key in PARTS:
        return [_part(here, part, PARTS[key]) for part in here.parts if _matters(part, PARTS[key])]
    return []


def _rails(here: Piece) -> list[Any]:
    return rails(here.summary, here.worked)


def _line(label: str, words: str, href: str) -> View:
    return {"label": label, "words": words, "href": href}


def _unit(head: Item) -> str:
    return f"{head['text']} {head['unit']}" if head["text"][-1:] in WIDE else str(head["text"])


def _round(here: Piece, each: Item) -> View:
    return _line(each["called"] or "A round", "", round_address(here.summary["id"], each["entry"]))


def _matters(part: Item, keys: tuple[str, ...]) -> bool:
    return not keys or any(key in part["measures"] for key in keys)


def _part(here: Piece, part: Item, keys: tuple[str, ...]) -> View:
    said = [drawn_words(part, key, here.how) for key in keys if key in part["measures"]]
    return _line(part["name"], " x ".join(said), part_address(here.summary["id"], part["entry"]))


def _ways(here: Piece, key: str) -> list[View]:
    """Give the ways from a stage: its tools, the list before the glue, what is still to be read off the wood."""
    project = here.summary["id"]
    tools = [tool for tool in here.tools.values() if tool.stage == key]
    found = [{"title": tool.title, "href": work_address(tool.name, {"project": project})} for tool in tools]
    if key in ("ease", "glue-up") and glue_list(here.summary):
        found.append({"title": "Before the glue", "href": glue_address(project)})
    if key == "finish-milling":
        found.extend(
            [
                {"title": f"Measure {place}", "href": measure_address(project, place)}
                for place in places(unread(here))[:3]
            ]
        )
    return found
