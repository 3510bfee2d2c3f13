"""A project started from another one: its settings, parts, joints and sheets as they stand, none of its readings."""

from fractions import Fraction
from typing import Any, TypeAlias

from webapp.core.entries_joint import joint_error
from webapp.core.entries_part import part_error
from webapp.core.entries_project import name_errors
from webapp.core.entries_sheet import sheet_of
from webapp.core.entries_text import tidy
from webapp.core.numbers import BUILT
from webapp.core.tool import Tool

Tools: TypeAlias = dict[str, Tool]
Factors: TypeAlias = dict[str, Fraction]
Outcome: TypeAlias = dict[str, Any]
Item: TypeAlias = dict[str, Any]

SHEET = ("tool", "called", "inputs", "unit", "graduation", "links")
PART = ("name", "count", "spare", "wood", "faces", "measures", "links")
JOINT = ("number", "parts", "tenon", "pins")


def draft_like(typed: dict[str, str], summary: Any, tools: Tools, factors: Factors) -> Outcome:
    """Make the entry that starts the project, and in `also` those of its shop, its parts, its joints, its sheets."""
    name = tidy(typed, "name")
    errors = name_errors(name)
    if summary is None or errors:
        return {"errors": errors or {"name": "The project to start from is not here."}}
    body = {"name": name, "unit": summary["unit"], "graduation": summary["graduation"]}
    parts = _parts(summary, factors)
    copies = parts + _sheets(summary, tools, factors)
    also = _settings(summary) + _linked(summary, copies) + _joints(summary, parts, factors)
    return {"kind": "project", "body": body, "replaces": [], "also": also}


def _settings(summary: Any) -> list[Outcome]:
    shop = summary["shop"]
    return [{"kind": "settings", "body": {"shop": shop}, "replaces": []}] if shop else []


def _heads(summary: Any, name: str) -> list[Item]:
    return [head for thing in summary[name] for head in thing["heads"]]


def _copy(kind: str, head: Item, body: dict[str, Any]) -> Outcome:
    return {"kind": kind, "body": body, "replaces": [], "copied": head["entry"]}


def _sheets(summary: Any, tools: Tools, factors: Factors) -> list[Outcome]:
    """Return the sheets that stand; one that cannot be worked here stays with its own project."""
    pairs = [(head, {key: head[key] for key in SHEET}) for head in _heads(summary, "sheets")]
    outcomes = [(head, body, sheet_of(body, tools, factors)) for head, body in pairs]
    return [
        _copy("sheet", head, {**body, **_spoken(outcome["sheet"])})
        for head, body, outcome in outcomes
        if "sheet" in outcome
    ]


def _spoken(sheet: dict[str, Any]) -> dict[str, Any]:
    """Return unit and graduation in full, which another version may have left blank."""
    return {key: sheet[key] for key in ("unit", "graduation")}


def _parts(summary: Any, factors: Factors) -> list[Outcome]:
    """Return the parts that stand; one of a newer version, which could not be kept here, stays behind."""
    copies = [_copy("part", head, {key: head[key] for key in PART}) for head in _heads(summary, "parts")]
    return [copy for copy in copies if not part_error(copy["body"], [], factors)]


def _joints(summary: Any, parts: list[Outcome], factors: Factors) -> list[Outcome]:
    """Return the joints that stand between parts that go along."""
    leads = _leads(summary, "parts", parts)
    found = []
    for head in _heads(summary, "joints"):
        names = [leads[name] for name in head["parts"] if name in leads]
        body = {**{key: head[key] for key in JOINT}, "parts": names}
        if not joint_error(body, [], factors):
            found.append(_copy("joint", head, body))
    return found


def _leads(summary: Any, name: str, copies: list[Outcome]) -> dict[str, str]:
    """Return for the entries of things the one that is copied and stands for them; a rival stands for itself."""
    copied = [copy["copied"] for copy in copies]
    leads: dict[str, str] = {}
    for thing in summary[name]:
        heads = [head["entry"] for head in thing["heads"] if head["entry"] in copied]
        entries = [item["entry"] for item in thing["heads"] + thing["past"]]
        for entry in entries if len(thing["heads"]) == 1 and heads else heads:
            leads[entry] = heads[0] if len(thing["heads"]) == 1 else entry
    return leads


def _linked(summary: Any, copies: list[Outcome]) -> list[Outcome]:
    """Return the copies with the links to what goes along; of the others the value alone stays, as it was typed."""
    leads = {**_leads(summary, "sheets", copies), **_leads(summary, "parts", copies)}
    found = []
    for copy in copies:
        links = [link for link in copy["body"]["links"] if link["entry"] in leads and not _read(link)]
        kept = [{**link, "entry": leads[link["entry"]]} for link in links]
        found.append({**copy, "body": {**copy["body"], "links": kept}})
    return found


def _read(link: dict[str, str]) -> bool:
    """Say whether a link leads to a part as it is in the wood: to a reading, which stays."""
    return link["key"].startswith(BUILT)
