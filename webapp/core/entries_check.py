"""What each kind must hold before an entry of it is kept; unknown kinds pass with a sound frame."""

from collections.abc import Callable
from fractions import Fraction
from typing import Any, TypeAlias

from webapp.core.entries_against import value_error
from webapp.core.entries_condition import condition_error
from webapp.core.entries_cut import cut_error, done_error
from webapp.core.entries_frame import frame_error
from webapp.core.entries_joint import joint_error
from webapp.core.entries_kinds import TEXTS
from webapp.core.entries_part import part_error
from webapp.core.entries_project import spoken_errors
from webapp.core.entries_round import round_error
from webapp.core.entries_shop import shop_shape_error
from webapp.core.entries_text import HEX, NAME, WHY, is_identity, line_error, needed_error, note_error
from webapp.core.links import links_error
from webapp.core.setting import GRADUATIONS
from webapp.core.text import trim

Body: TypeAlias = dict[str, Any]
Factors: TypeAlias = dict[str, Fraction]
Check: TypeAlias = Callable[[Body, list[str], Factors], str]


def shape_error(entry: Any, factors: Factors) -> str:
    """Return what is wrong with an entry as it stands, or nothing; a sheet is not worked for it."""
    wrong = frame_error(entry)
    if wrong or entry["kind"] not in CHECKS:
        return wrong
    kind, body = entry["kind"], entry["body"]
    missing = [name for name in TEXTS[kind] if not isinstance(body.get(name, None), str)]
    if missing:
        return f"The body of a {kind} must hold {', '.join(missing)} as text."
    return CHECKS[kind](body, entry["replaces"], factors)


def _project(body: Body, replaces: list[str], factors: Factors) -> str:
    return needed_error(trim(body["name"]), "A project needs a name.", NAME) or _spoken(body, factors)


def _spoken(body: Body, factors: Factors) -> str:
    """Return what is wrong with a body's unit and graduation, both said in full."""
    wrong = [reason for reason in spoken_errors(body["unit"], body["graduation"], factors).values()]
    if wrong:
        return wrong[0]
    return "" if body["graduation"] in GRADUATIONS.get(body["unit"], []) else "Say unit and graduation in full."


def _settings(body: Body, replaces: list[str], factors: Factors) -> str:
    if not [key for key in ("name", "unit", "graduation", "archived", "shop") if key in body]:
        return "These settings change nothing."
    if not all(isinstance(body.get(key, ""), str) for key in ("name", "unit", "graduation")):
        return "name, unit and graduation must be text."
    if not isinstance(body.get("archived", False), bool):
        return "archived must be true or false."
    name = needed_error(trim(body["name"]), "A project needs a name.", NAME) if "name" in body else ""
    both = _both(body, factors) if "unit" in body or "graduation" in body else ""
    shop = shop_shape_error(body["shop"], lambda said: _spoken(said, factors)) if "shop" in body else ""
    return name or both or shop


def _both(body: Body, factors: Factors) -> str:
    both = "unit" in body and "graduation" in body
    return _spoken(body, factors) if both else "Unit and graduation are changed together."


def _reading(body: Body, replaces: list[str], factors: Factors) -> str:
    return (
        needed_error(trim(body["place"]), "A reading needs a place.", NAME)
        or _own_note(body.get("note", ""))
        or _spoken(body, factors)
        or value_error(body, factors)
    )


def _own_note(note: Any) -> str:
    return note_error(note) if isinstance(note, str) else "note must be text."


def _withdrawal(body: Body, replaces: list[str], factors: Factors) -> str:
    why = body.get("why", "")
    said = line_error(why, WHY) if isinstance(why, str) else "why must be text."
    return _about(body) or said or ("" if replaces else "A withdrawal must say what it replaces.")


def _about(body: Body) -> str:
    return "" if is_identity(body["entry"]) else "entry must be an id, a UUIDv7 in lower case."


def _note(body: Body, replaces: list[str], factors: Factors) -> str:
    return _about(body) or (note_error(body["text"]) if trim(body["text"]) else "A note needs words.")


def _pick(body: Body, replaces: list[str], factors: Factors) -> str:
    return _about(body)


def _sheet(body: Body, replaces: list[str], factors: Factors) -> str:
    inputs = body.get("inputs", None)
    if not isinstance(inputs, dict) or not all(isinstance(text, str) for text in inputs.values()):
        return "inputs must hold the fields as they were typed."
    if len(body["digest"]) != 64 or not all(c in HEX for c in body["digest"]):
        return "digest must be the SHA-256 of the sheet as 64 small hex digits."
    return (
        links_error(body.get("links", None))
        or line_error(body["called"], NAME)
        or needed_error(body["engine"], "engine must name the version that worked the sheet.", NAME)
        or _spoken(body, factors)
    )


CHECKS: dict[str, Check] = {
    "project": _project,
    "settings": _settings,
    "reading": _reading,
    "withdrawal": _withdrawal,
    "note": _note,
    "sheet": _sheet,
    "pick": _pick,
    "part": part_error,
    "joint": joint_error,
    "round": round_error,
    "condition": condition_error,
    "cut": cut_error,
    "done": done_error,
}
