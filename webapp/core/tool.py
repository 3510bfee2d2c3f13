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
    """One input.

    `kind` says how it is typed and read: length; widths (several lengths); count; choice (one of `choices`);
    pair (`A x B`); lines (one `name: length` a line, read as pairs of name and length). `sign` is positive,
    zero or any. `read` takes the text and the setting where a field is read in a way of its own, and raises
    ReadingError; the words it takes beside lengths stand in `choices`. `shop` marks what belongs to the
    maker's shop, as a machine's least length: a project remembers it.
    """

    name: str
    label: str
    kind: str
    required: bool = False
    default: tuple[str, ...] = ()  # nothing, or the text for inches and the text for millimetres
    choices: tuple[tuple[str, str], ...] = ()  # value and label
    help: str = ""
    sign: str = "positive"
    read: Callable[[str, Setting], Any] | None = None
    shop: bool = False


@dataclass(frozen=True)
class Tool:
    """One tool; `work` takes the values read and the setting, and returns the parts of a sheet.

    `stage` names the stage of the piece that its sheets belong to, a key of piece_stages.STAGES.
    """

    name: str
    title: str
    about: str
    fields: tuple[Field, ...]
    work: Callable[[Values, Setting], Parts]
    help: tuple[str, ...] = ()
    example: tuple[tuple[str, str], ...] = ()  # field and text, as typed
    cautions: tuple[str, ...] = ()
    stage: str = ""
