"""Entries that start a project and change its settings, from a form's fields."""

from fractions import Fraction
from typing import Any, TypeAlias

from webapp.core.entries_shop import changed_shop, typed_shop
from webapp.core.entries_text import NAME, needed_error, tidy
from webapp.core.setting import Setting, SettingError, setting
from webapp.core.tool import Tool

Tools: TypeAlias = dict[str, Tool]
Factors: TypeAlias = dict[str, Fraction]
Outcome: TypeAlias = dict[str, Any]

ASK_NAME = "Give the project a name, as bed in ash."


def draft_project(typed: dict[str, str], summary: Any, tools: Tools, factors: Factors) -> Outcome:
    """Make the entry that starts a project: name, unit, graduation."""
    name = tidy(typed, "name")
    errors = name_errors(name)
    spoken = spoken_errors(tidy(typed, "unit"), tidy(typed, "graduation"), factors)
    errors.update(spoken)
    if errors:
        return {"errors": errors}
    how = setting(tidy(typed, "unit"), tidy(typed, "graduation"), factors)
    body = {"name": name, "unit": how.unit, "graduation": how.graduation}
    return {"body": body, "replaces": []}


def spoken_errors(unit: str, graduation: str, factors: Factors) -> dict[str, str]:
    """Return what is wrong with a unit and a graduation, by field."""
    try:
        setting(unit, graduation, factors)
    except SettingError as e:
        return {e.field: e.reason}
    return {}


def name_errors(name: str) -> dict[str, str]:
    """Return what is wrong with a project's name, by field."""
    wrong = needed_error(name, ASK_NAME, NAME)
    return {"name": wrong} if wrong else {}


def draft_settings(typed: dict[str, str], summary: Any, tools: Tools, factors: Factors) -> Outcome:
    """Make the entry that changes a project's settings; what is left blank stays as it is."""
    if summary is None:
        return {"errors": {"name": "This project is not here."}}
    unit = tidy(typed, "unit") or summary["unit"]
    graduation = _graduation(typed, summary, unit)
    errors = _settings_errors(typed)
    spoken = spoken_errors(unit, graduation, factors)
    if spoken:
        return {"errors": {**errors, **spoken}}
    how = setting(unit, graduation, factors)
    shop, wrong = typed_shop(typed, tools, how)
    if errors or wrong:
        return {"errors": {**errors, **wrong}}
    return _settings({**_changes(typed, summary), **_spoken(how, summary)}, changed_shop(shop, summary["shop"]))


def _spoken(how: Setting, summary: Any) -> dict[str, Any]:
    if [how.unit, how.graduation] == [summary["unit"], summary["graduation"]]:
        return {}
    return {"unit": how.unit, "graduation": how.graduation}


def _settings(changes: dict[str, Any], shop: dict[str, Any]) -> Outcome:
    body = {**changes, **({"shop": shop} if shop else {})}
    return {"body": body, "replaces": []} if body else {"errors": {"name": "Nothing is changed here."}}


def _graduation(typed: dict[str, str], summary: Any, unit: str) -> str:
    """Return the graduation that goes with the unit: what was typed, or what stands if the unit stays."""
    stays = summary["graduation"] if unit == summary["unit"] else ""
    return tidy(typed, "graduation") or stays


def _settings_errors(typed: dict[str, str]) -> dict[str, str]:
    errors = name_errors(tidy(typed, "name")) if tidy(typed, "name") else {}
    if tidy(typed, "archived") not in ("", "yes", "no"):
        errors["archived"] = "Say yes to put the project away, or no to take it out again."
    return errors


def _changes(typed: dict[str, str], summary: Any) -> dict[str, Any]:
    body: dict[str, Any] = {}
    name = tidy(typed, "name")
    if name and name != summary["name"]:
        body["name"] = name
    archived = tidy(typed, "archived")
    if archived and (archived == "yes") != summary["archived"]:
        body["archived"] = archived == "yes"
    return body
