"""What a tool declares: its fields, its words, and the one function that works it."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, TypeAlias

from webapp.core.setting import Setting

Values: TypeAlias = dict[str, Any]
Parts: TypeAlias = dict[str, Any]


class InputErrors(ValueError):  # noqa: N818 - it carries the errors of several fields
    """Inputs that read well and do not go together: a sentence for each field concerned."""

    def __init__(self, errors: dict[str, str]) -> None:
        super().__init__("; ".join(errors.values()))
        self.errors = errors


@dataclass(frozen=True)
class Field:
    """One input: `kind` is length, widths, count or choice; `sign` is positive, zero or any."""

    name: str
    label: str
    kind: str
    required: bool = False
    default: tuple[str, ...] = ()  # nothing, or the text for inches and the text for millimetres
    choices: tuple[tuple[str, str], ...] = ()  # value and label
    help: str = ""
    sign: str = "positive"


@dataclass(frozen=True)
class Tool:
    """One tool; `work` takes the values read and the setting, and returns the parts of a sheet."""

    name: str
    title: str
    about: str
    fields: tuple[Field, ...]
    work: Callable[[Values, Setting], Parts]
    help: tuple[str, ...] = ()
    example: tuple[tuple[str, str], ...] = ()  # field and text, as typed
    cautions: tuple[str, ...] = ()
