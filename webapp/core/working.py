"""From what was typed to a sheet, or to errors at their fields: the one path for every side."""

from fractions import Fraction
from typing import Any

from webapp.core.reading import ReadingError, read, read_count, read_list
from webapp.core.setting import Setting, SettingError, setting
from webapp.core.sheet import sheet
from webapp.core.text import trim
from webapp.core.tool import Field, InputErrors, Tool

OWN = ("unit", "graduation")


def work(tool: Tool, typed: dict[str, str], factors: dict[str, Fraction]) -> dict[str, Any]:
    """Return {"sheet": …} or {"errors": {field: text}}; names that are no field are passed over."""
    inputs = said(tool, typed)
    try:
        how = setting(trim(typed.get("unit", "")), trim(typed.get("graduation", "")), factors)
        values = read_fields(tool, inputs, how)
        head = {"tool": tool.name, "inputs": inputs, "unit": how.unit, "graduation": how.graduation}
        return {"sheet": sheet(head, tool.work(values, how))}
    except SettingError as e:
        return {"errors": {e.field: e.reason}}
    except InputErrors as e:
        return {"errors": e.errors}


def said(tool: Tool, typed: dict[str, str]) -> dict[str, str]:
    """Return each field that is not blank, in declared order, outer white removed."""
    texts = [(field.name, trim(typed.get(field.name, ""))) for field in tool.fields]
    return {name: text for name, text in texts if text}


def read_fields(tool: Tool, inputs: dict[str, str], how: Setting) -> dict[str, Any]:
    """Return the values of the fields; raise InputErrors with every field that does not read."""
    values = {}
    errors = {}
    for field in tool.fields:
        text = inputs.get(field.name, default(field, how))
        try:
            if text or field.required:
                values[field.name] = value(field, text, how)
        except ReadingError as e:
            errors[field.name] = e.reason
    if errors:
        raise InputErrors(errors)
    return values


def default(field: Field, how: Setting) -> str:
    """Return the text that stands for a blank field."""
    return field.default[1 if how.metric else 0] if field.default else ""


def value(field: Field, text: str, how: Setting) -> Any:
    """Return the value of one field."""
    if field.kind == "widths":
        return read_list(text, how)
    if field.kind == "count":
        return read_count(text)
    if field.kind == "choice":
        return text
    return read(text, how)


def check_field(tool: Tool, name: str, text: str, how: Setting) -> str:
    """Return what is wrong with one field by itself, or nothing: for the form, when a field is left."""
    chosen = [field for field in tool.fields if field.name == name]
    try:
        for field in chosen:
            if trim(text):
                value(field, trim(text), how)
    except ReadingError as e:
        return e.reason
    return ""


def unknown_fields(tool: Tool, typed: dict[str, str]) -> dict[str, str]:
    """Return an error for each name that is no field of the tool."""
    names = [field.name for field in tool.fields] + list(OWN)
    return {
        name: f"{tool.name} has no field of this name; it has {', '.join(names)}."
        for name in typed
        if name not in names
    }
