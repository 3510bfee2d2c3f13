"""From what was typed to a sheet, or to errors at their fields: the one path for every side."""

from fractions import Fraction
from typing import Any

from webapp.core.reading import ReadingError, read, read_count, read_list
from webapp.core.reading import sentence as placed
from webapp.core.reading_lines import read_places
from webapp.core.reading_pairs import read_pair
from webapp.core.sentence import sentence
from webapp.core.setting import Setting, SettingError, one_of, setting
from webapp.core.sheet import sheet
from webapp.core.text import lines, trim
from webapp.core.tool import Field, InputErrors, Tool

OWN = ("unit", "graduation")  # every tool takes them beside its fields
ERRORS = {
    "choice": "This is {choices}.",
    "unknown": "{tool} has no field of this name; it has {names}.",
}


class ChoiceError(ValueError):
    """A text that is none of a field's choices."""

    def __init__(self, reason: str) -> None:
        super().__init__(reason)
        self.reason = reason


def work(tool: Tool, typed: dict[str, str], factors: dict[str, Fraction]) -> dict[str, Any]:
    """Return {"sheet": …} or {"errors": {field: text}}; names that are no field are passed over."""
    inputs = said(tool, typed)
    try:
        how = setting(typed.get("unit", ""), typed.get("graduation", ""), factors)
        parts = tool.work(read_fields(tool, inputs, how), how)
    except SettingError as e:
        return {"errors": {e.field: e.reason}}
    except InputErrors as e:
        return {"errors": e.errors}
    head = {"tool": tool.name, "inputs": inputs, "unit": how.unit, "graduation": how.graduation}
    return {"sheet": sheet(head, parts)}


def said(tool: Tool, typed: dict[str, str]) -> dict[str, str]:
    """Return each field that is not blank, in declared order, outer white removed, one kind of line end."""
    texts = [(field.name, trim("\n".join(lines(typed.get(field.name, ""))))) for field in tool.fields]
    return {name: text for name, text in texts if text}


def read_fields(tool: Tool, inputs: dict[str, str], how: Setting) -> dict[str, Any]:
    """Return the values of the fields; raise InputErrors with every field that does not read."""
    values = {}
    errors = {}
    for field in tool.fields:
        text = inputs.get(field.name, default(field, how))
        if text or field.required:
            try:
                values[field.name] = value(field, text, how)
            except ReadingError as e:
                errors[field.name] = said_of(field, e)
            except ChoiceError as e:
                errors[field.name] = e.reason
    if errors:
        raise InputErrors(errors)
    return values


def said_of(field: Field, wrong: ReadingError) -> str:
    """Say what is wrong and where; in a list the name of the line is the place, and stands in the reason."""
    return placed(wrong.text, 0 if field.kind == "lines" else wrong.position, wrong.reason)


def default(field: Field, how: Setting) -> str:
    """Return the text that stands for a blank field."""
    return field.default[1 if how.metric else 0] if field.default else ""


def value(field: Field, text: str, how: Setting) -> Any:
    """Return the value of one field; raise ReadingError or ChoiceError."""
    if field.read is not None:
        return field.read(text, how)
    if field.kind == "lines":
        return read_places(text, how, field.sign)
    if field.kind == "pair":
        return read_pair(text, how, field.sign)
    if field.kind == "widths":
        return read_list(text, how, field.sign)
    if field.kind == "count":
        return read_count(text)
    if field.kind == "choice":
        return chosen(field, text)
    return read(text, how, field.sign)


def chosen(field: Field, text: str) -> str:
    """Return a choice that is one of the field's own."""
    names = [name for name, label in field.choices]
    if text not in names:
        raise ChoiceError(sentence(ERRORS["choice"], {"choices": one_of(names)}))
    return text


def check_field(tool: Tool, name: str, text: str, how: Setting) -> str:
    """Return what is wrong with a field as it is left on the form, or nothing; a blank one is left in peace."""
    own = [field for field in tool.fields if field.name == name and trim(text)]
    try:
        for field in own:
            value(field, trim(text), how)
    except ReadingError as e:
        return said_of(own[0], e)
    except ChoiceError as e:
        return e.reason
    return ""


def unknown_fields(tool: Tool, typed: dict[str, str]) -> dict[str, str]:
    """Return an error for each name that is no field of the tool."""
    names = [field.name for field in tool.fields] + list(OWN)
    reason = sentence(ERRORS["unknown"], {"tool": tool.name, "names": ", ".join(names)})
    return {name: reason for name in typed if name not in names}
