"""The shop's settings in a project's entries: from a form's fields, and looked at before they are kept."""

from collections.abc import Callable
from fractions import Fraction
from typing import Any, TypeAlias

from webapp.core.entries_text import NAME, line_error, tidy
from webapp.core.setting import Setting, setting
from webapp.core.shop import KEYS, shop_fields
from webapp.core.text import small
from webapp.core.tool import Field, Tool
from webapp.core.working import check_field

Tools: TypeAlias = dict[str, Tool]
Factors: TypeAlias = dict[str, Fraction]
Shop: TypeAlias = dict[str, Any]

PREFIX = "shop-"  # before the name of a field in the settings' form
FORGET = "none"  # what is typed to take a setting out again


def typed_shop(typed: dict[str, str], tools: Tools, how: Setting) -> tuple[Shop, dict[str, str]]:
    """Return what a form says of the shop by name, and what is wrong with it by the form's fields."""
    shop: Shop = {}
    errors: dict[str, str] = {}
    for field in shop_fields(list(tools.values())):
        text = tidy(typed, PREFIX + field.name)
        if _forgets(field, text):
            text = ""
        elif text:
            wrong = field_error(field, text, tools, how)
            if wrong:
                errors[PREFIX + field.name] = wrong
        else:
            continue
        shop[field.name] = {"text": text, "unit": how.unit, "graduation": how.graduation}
    return shop, errors


def _forgets(field: Field, text: str) -> bool:
    return small(text) == FORGET and FORGET not in [value for value, label in field.choices]


def changed_shop(shop: Shop, stands: Shop) -> Shop:
    """Return what of this is no longer as it stands; what does not stand cannot be forgotten."""
    return {name: said for name, said in shop.items() if said != stands.get(name, {**said, "text": ""})}


def field_error(field: Field, text: str, tools: Tools, how: Setting) -> str:
    """Return what any tool that has this field has against a text, or nothing."""
    reasons = [check_field(tool, field.name, text, how) for tool in tools.values() if _has(tool, field.name)]
    return ([reason for reason in reasons if reason] + [""])[0]


def _has(tool: Tool, name: str) -> bool:
    return any(field.name == name and field.shop for field in tool.fields)


def shop_shape_error(shop: Any, spoken: Callable[[dict[str, Any]], str]) -> str:
    """Return what is wrong with the shape of a body's shop; `spoken` looks at a unit and a graduation."""
    if not isinstance(shop, dict) or not shop:
        return "shop must hold fields by name."
    for said in shop.values():
        if not isinstance(said, dict) or not all(isinstance(said.get(key, None), str) for key in KEYS):
            return f"Each of shop must hold {', '.join(KEYS)} as text."
        wrong = line_error(said["text"], NAME) or spoken(said)
        if wrong:
            return wrong
    return ""


def shop_error(shop: Shop, tools: Tools, factors: Factors) -> str:
    """Return what the tools here have against a shop's texts, or nothing; fields of newer versions pass."""
    for field in shop_fields(list(tools.values())):
        said = shop.get(field.name, None)
        if said is not None and said["text"]:
            wrong = field_error(field, said["text"], tools, setting(said["unit"], said["graduation"], factors))
            if wrong:
                return f"{field.name}: {wrong}"
    return ""
