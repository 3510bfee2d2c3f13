"""Forms: a tool's, made from its declaration; and the keeping forms, one a kind of entry.

None of them judges what was typed: the core does, and its sentences are put on the fields.
"""

from collections.abc import Iterable, Mapping
from functools import cache
from types import MappingProxyType
from typing import Any

from flask_wtf import FlaskForm
from wtforms import FileField, HiddenField, SelectField, StringField, TextAreaField
from wtforms.fields.choices import SelectChoice

from webapp.core.entries_shop import PREFIX
from webapp.core.setting import GRADUATIONS, UNITS
from webapp.core.shop import shop_fields
from webapp.core.tool import Field, Tool
from webapp.tools import TOOLS

UNIT_WORDS = {"in": "inches", "ft": "feet and inches", "mm": "millimetres"}
SPOKEN_GRADUATIONS = list(dict.fromkeys(g for unit in UNITS for g in GRADUATIONS[unit]))


Choices = list[tuple[str, str]]


def units() -> Choices:
    """Return the units to choose from, each with its words."""
    return [(unit, UNIT_WORDS[unit]) for unit in UNITS]


def graduations(blank: str) -> Choices:
    """Return the graduations to choose from, the blank one first."""
    return [("", blank), *((g, g if g.endswith("mm") else f"{g} in") for g in SPOKEN_GRADUATIONS)]


def choice(label: str, choices: Iterable[tuple[str, str]]) -> SelectField:
    """Make a select that takes what was sent: the core says what is wrong with it."""
    return SelectField(label, choices=[SelectChoice(*pair) for pair in choices], validate_choice=False)


class KeepingForm(FlaskForm):  # type: ignore[misc]
    """A form that keeps something: a token, and the id of the entry that it makes."""

    entry_id = HiddenField()
    address = ""
    trouble = ""


class ProjectForm(KeepingForm):
    """Start a project."""

    name = StringField("Name")
    unit = choice("Unit", units())
    graduation = choice("Graduation", graduations("1/32 in, or 0.5 mm"))


class SettingsForm(KeepingForm):
    """Rename a project, or change how it speaks and what its shop is like."""

    name = StringField("New name")
    unit = choice("Unit", [("", "as it is"), *units()])
    graduation = choice("Graduation", graduations("as it is"))
    archived = HiddenField()
    helps: Mapping[str, str] = MappingProxyType({})  # the shop's fields
    out = ""


class LikeForm(KeepingForm):
    """Start another project from this one."""

    name = StringField("Name")


class ReadingForm(KeepingForm):
    """Keep a reading at a place."""

    place = StringField("Place", render_kw={"list": "places"})
    reading = StringField("Reading", render_kw={"data-kind": "length"})
    note = StringField("Note")
    round = HiddenField()


class NoteForm(KeepingForm):
    """Write a note beside a reading."""

    entry = HiddenField()
    text = StringField("Note")


class WithdrawalForm(KeepingForm):
    """Withdraw a reading or a sheet."""

    entry = HiddenField()
    why = StringField("Why")
    round = HiddenField()  # where it is withdrawn from, to go back there


class PickForm(KeepingForm):
    """Say which of two rivals holds; the buttons stand beside the rivals."""

    round = HiddenField()


class RoundForm(KeepingForm):
    """Lay out a dry fit; or measure a round once more."""

    called = StringField("Call it")
    places = TextAreaField("Places")
    stick = StringField("Stick", render_kw={"data-kind": "length"})
    like = HiddenField()


class ConditionForm(KeepingForm):
    """Keep a reading that is no length."""

    place = StringField("Of what")
    quantity = choice("What", [("moisture", "moisture, %"), ("temperature", "temperature"), ("time", "minutes")])
    text = StringField("Number", render_kw={"inputmode": "decimal"})


class CutForm(KeepingForm):
    """Mark a sheet, or a line of it, as cut; the buttons stand beside what is cut."""

    entry = HiddenField()
    measured = StringField("What it measured", render_kw={"data-kind": "length"})


class AgainForm(KeepingForm):
    """Work again what is stale; the buttons say what."""


class SheetForm(KeepingForm):
    """Keep a sheet."""

    tool = HiddenField()
    replaces = HiddenField()
    called = StringField("Call it")
    open = False
    inputs: tuple[tuple[str, str], ...] = ()


class BringForm(FlaskForm):  # type: ignore[misc]
    """Bring in a project file."""

    file = FileField("Project file")
    trouble = ""


KEEPING: dict[str, type[KeepingForm]] = {
    "project": ProjectForm,
    "like": LikeForm,
    "reading": ReadingForm,
    "note": NoteForm,
    "withdrawal": WithdrawalForm,
    "pick": PickForm,
    "sheet": SheetForm,
    "cut": CutForm,
    "again": AgainForm,
    "round": RoundForm,
    "condition": ConditionForm,
}


def keeping_form(kind: str) -> type[KeepingForm]:
    """Return the form that keeps entries of a kind."""
    return KEEPING[kind] if kind in KEEPING else settings_form(tuple(shop_fields(list(TOOLS.values()))))


@cache
def settings_form(shop: tuple[Field, ...]) -> type[KeepingForm]:
    """Make the form of a project's settings, with those of the shop that the tools declare."""
    members: dict[str, Any] = {PREFIX + field.name: _input(field, "as it is") for field in shop}
    members["helps"] = {PREFIX + field.name: field.help for field in shop}
    return type("SettingsForm", (SettingsForm,), members)


@cache
def tool_form(tool: Tool) -> type[FlaskForm]:
    """Make a tool's form from its declaration: plain fields, no token (it would land in the address)."""
    members: dict[str, Any] = {field.name: _input(field) for field in tool.fields}
    members["unit"] = choice("Unit", [("", "the project's"), *units()])
    members["graduation"] = choice("Graduation", graduations("the project's"))
    members |= {name: HiddenField() for name in ("project", "replaces", "called", "links")}
    members["Meta"] = type("Meta", (), {"csrf": False})
    return type(f"{tool.name.title()}Form", (FlaskForm,), members)


def _input(field: Field, blank: str = "") -> Any:
    if field.kind == "choice":
        return choice(field.label, [("", blank), *field.choices] if blank else field.choices)
    kind = TextAreaField if field.kind == "lines" else StringField
    return kind(field.label, render_kw={"data-kind": field.kind})
