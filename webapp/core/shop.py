"""What belongs to the maker's shop, as a machine's least length: said once in a project, for every tool."""

from fractions import Fraction
from typing import Any, TypeAlias

from webapp.core.mark import exact
from webapp.core.reading import ReadingError, read
from webapp.core.setting import GRADUATIONS, Setting, SettingError, setting
from webapp.core.text import trim
from webapp.core.tool import Field, Tool

Said: TypeAlias = dict[str, str]  # by KEYS
Factors: TypeAlias = dict[str, Fraction]

KEYS = ("text", "unit", "graduation")  # what was said, and the setting it was said in


def shop_fields(tools: list[Tool]) -> list[Field]:
    """Return the shop's fields of all tools, each name once, as the first tool declares it."""
    found: dict[str, Field] = {}
    for tool in tools:
        for field in tool.fields:
            if field.shop:
                found.setdefault(field.name, field)
    return list(found.values())


def called(field: Field, said: Said, how: Setting) -> str:
    """Return what was said once in today's setting: as it was typed where it means the same, else exactly."""
    text = said["text"]
    if field.kind != "length" or field.read is not None:
        return text
    try:
        meant = read(text, setting(said["unit"], said["graduation"], how.factors))
    except ReadingError:
        return text
    try:
        return text if read(text, how) == meant else f"{exact(meant)} in"
    except ReadingError:
        return f"{exact(meant)} in"


def filled(tool: Tool, typed: dict[str, str], summary: dict[str, Any], factors: Factors) -> dict[str, str]:
    """Return the shop's own texts for the fields of a tool that are blank, in the setting that is typed."""
    try:
        how = setting(typed.get("unit", ""), typed.get("graduation", ""), factors)
    except SettingError:
        return {}
    blank = [field for field in tool.fields if field.shop and not trim(typed.get(field.name, ""))]
    said = summary["shop"]
    return {field.name: called(field, said[field.name], how) for field in blank if field.name in said}


def readable_shop(body: dict[str, Any]) -> dict[str, Any]:
    """Return what of a body's shop can be taken here."""
    shop = body.get("shop")
    if not isinstance(shop, dict):
        return {}
    return {name: {key: said[key] for key in KEYS} for name, said in shop.items() if _fits(said)}


def _fits(said: Any) -> bool:
    if not isinstance(said, dict) or not all(isinstance(said.get(key, None), str) for key in KEYS):
        return False
    return said["graduation"] in GRADUATIONS.get(said["unit"], [])
