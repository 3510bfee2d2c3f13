"""What stands where a field is left blank: said in the field itself, by the field's id."""

from fractions import Fraction
from typing import Any, TypeAlias

from webapp.core.entries_shop import PREFIX
from webapp.core.setting import Setting, SettingError, setting
from webapp.core.shop import called, shop_fields
from webapp.core.text import trim
from webapp.core.tool import Field, Tool
from webapp.core.working import default

Factors: TypeAlias = dict[str, Fraction]

TYPED = ("length", "widths", "count", "pair")  # kinds that are one line of text


def tool_stands(tool: Tool, typed: dict[str, str], filled: dict[str, str], factors: Factors) -> dict[str, str]:
    """Say what stands for each of a tool's fields; `filled` is what was typed with what the project says."""
    try:
        how = setting(filled.get("unit", ""), filled.get("graduation", ""), factors)
    except SettingError:
        return {}
    return {field.name: _stands(field, typed, filled, how) for field in tool.fields if field.kind in TYPED}


def _stands(field: Field, typed: dict[str, str], filled: dict[str, str], how: Setting) -> str:
    if not trim(typed.get(field.name, "")) and trim(filled.get(field.name, "")):
        return f"{filled[field.name]}, your shop's"
    text = default(field, how)
    return f"usually {dict(field.choices).get(text, text)}" if text else ""


def project_stands(summary: dict[str, Any], tools: list[Tool], factors: Factors) -> dict[str, str]:
    """Say what stands for the fields of a project's settings: its name, and the shop's."""
    how = setting(summary["unit"], summary["graduation"], factors)
    said = summary["shop"]
    shop = {f"settings-{PREFIX}{field.name}": _shop(field, said, how) for field in shop_fields(tools)}
    return {"settings-name": summary["name"], **shop}


def _shop(field: Field, said: dict[str, Any], how: Setting) -> str:
    return called(field, said[field.name], how) if field.name in said else ""
