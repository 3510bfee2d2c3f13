"""Entries as they are made from a form's fields, and as they are looked at before they are kept."""

from collections.abc import Callable
from fractions import Fraction
from typing import Any, TypeAlias

from webapp.core.entries_again import draft_again
from webapp.core.entries_check import shape_error
from webapp.core.entries_condition import draft_condition
from webapp.core.entries_cut import draft_cut, draft_done
from webapp.core.entries_facts import draft_note, draft_pick, draft_reading, draft_withdrawal
from webapp.core.entries_joint import draft_joint
from webapp.core.entries_like import draft_like
from webapp.core.entries_part import draft_part
from webapp.core.entries_project import draft_project, draft_settings
from webapp.core.entries_round import draft_round
from webapp.core.entries_sheet import draft_sheet, sheet_of
from webapp.core.entries_shop import shop_error
from webapp.core.tool import Tool

Entry: TypeAlias = dict[str, Any]
Tools: TypeAlias = dict[str, Tool]
Factors: TypeAlias = dict[str, Fraction]
Outcome: TypeAlias = dict[str, Any]
Draft: TypeAlias = Callable[[dict[str, str], Any, Tools, Factors], Outcome]

DRAFTS: dict[str, Draft] = {
    "project": draft_project,
    "like": draft_like,
    "settings": draft_settings,
    "reading": draft_reading,
    "withdrawal": draft_withdrawal,
    "note": draft_note,
    "pick": draft_pick,
    "sheet": draft_sheet,
    "part": draft_part,
    "joint": draft_joint,
    "round": draft_round,
    "condition": draft_condition,
    "cut": draft_cut,
    "done": draft_done,
}
AGAIN = "again"  # the press that works again what is stale


def draft(
    kind: str,
    typed: dict[str, str],
    summary: dict[str, Any] | None,
    tools: Tools,
    factors: Factors,
    worked: dict[str, Any] | None = None,
) -> Outcome:
    """Return {"kind", "body", "replaces"} made from a form's fields, or {"errors": {field: text}}.

    `summary` is the project as the form's maker saw it, without the entry that is being made; `worked` holds the
    kept sheets that its links lead to. What makes several entries comes with those to follow the first, `also`:
    each a draft.
    """
    if kind == AGAIN:
        return draft_again(typed, summary, worked or {}, tools, factors)
    if kind not in DRAFTS:
        return {"errors": {"kind": f"Nothing of the kind {kind} can be kept."}}
    outcome = DRAFTS[kind](typed, summary, tools, factors)
    return outcome if "errors" in outcome else {"kind": kind, **outcome}


def check(entry: Any, tools: Tools, factors: Factors) -> str:
    """Return why an entry cannot be kept, or nothing; a sheet is worked for it."""
    wrong = shape_error(entry, factors)
    if not wrong and entry["kind"] == "settings":
        return shop_error(entry["body"].get("shop", {}), tools, factors)
    if wrong or entry["kind"] != "sheet":
        return wrong
    outcome = sheet_of(entry["body"], tools, factors)
    return str(outcome["why"]) if "why" in outcome else ""
