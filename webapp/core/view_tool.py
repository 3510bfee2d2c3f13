"""What a tool's page says: the answer, the errors, or that nothing is typed yet."""

from typing import Any, TypeAlias

from webapp.core.address import help_address, work_address
from webapp.core.entries_sheet import spoken
from webapp.core.shop import filled
from webapp.core.view_project import back_to
from webapp.core.view_sheet import sheet_view
from webapp.core.view_stands import tool_stands
from webapp.core.working import work

Gathered: TypeAlias = dict[str, Any]
View: TypeAlias = dict[str, Any]


def tool_view(g: Gathered) -> View:
    """Give a tool's page, but for what its fields are linked to: `sheet`, `errors` by field, or `blank`."""
    declared = g["tool"]
    names = [field.name for field in declared.fields]
    typed = {name: text for name, text in g["typed"].items() if name in names + ["unit", "graduation"]}
    outcome = _outcome(g, typed) if any(name in names for name in typed) else {}
    return {
        "title": declared.title,
        "about": declared.about,
        "help": help_address(declared.name, g["project"]["id"] if g["project"] is not None else ""),
        "project": back_to(g["project"]) if g["project"] is not None else None,
        "blank": not outcome,
        "sheet": sheet_view(outcome["sheet"]) if "sheet" in outcome else None,
        "errors": outcome.get("errors", {}),
        "wrong": _first_wrong(g, outcome.get("errors", {})),
        "stands": tool_stands(declared, typed, spoken_in(g, typed), g["factors"]),
        "keep_in": _keep_in(g, typed) if g["project"] is None and "sheet" in outcome else [],
    }


def _first_wrong(g: Gathered, errors: dict[str, str]) -> str:
    """Name the first field that something is wrong with; nothing where all is well."""
    labels: dict[str, str] = {field.name: field.label for field in g["tool"].fields}
    return ([labels.get(name, "the field") for name in errors] + [""])[0]


def spoken_in(g: Gathered, typed: dict[str, str]) -> dict[str, str]:
    """Give what was typed with what the project says where the maker named no other: unit, graduation, shop."""
    summary = g["project"]
    if summary is None:
        return typed
    named = spoken(summary, typed)
    return {**named, **filled(g["tool"], named, summary, g["factors"])}


def _outcome(g: Gathered, typed: dict[str, str]) -> dict[str, Any]:
    return work(g["tool"], spoken_in(g, typed), g["factors"])


def _keep_in(g: Gathered, typed: dict[str, str]) -> list[View]:
    at_hand = [p for p in g["projects"] if not p["archived"]]
    return [{"name": p["name"], "href": work_address(g["tool"].name, {**typed, "project": p["id"]})} for p in at_hand]
