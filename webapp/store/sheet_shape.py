"""The shape of a sheet (contract 3), for sheets that were worked elsewhere and are shown here."""

from collections.abc import Callable
from typing import Any

from webapp.core.entries_exact import from_exact

Fits = Callable[[Any], bool]


def _text(value: Any) -> bool:
    return isinstance(value, str)


def _length(value: Any) -> bool:
    """Say whether a value is a LENGTH: its exact inches, its mark, its millimetres."""
    if not isinstance(value, dict) or not all(_text(value.get(key)) for key in ("inches", "mark", "mm")):
        return False
    return from_exact(value["inches"]) is not None and _text(value.get("graduation", ""))


def _value(value: Any) -> bool:
    return _length(value) or _text(value) or _whole(value)


def _whole(value: Any) -> bool:
    return isinstance(value, int) and not isinstance(value, bool)


def _stretch(value: Any) -> bool:
    """Say whether a value is a LENGTH that something can be drawn along."""
    return _length(value) and not value["inches"].startswith("-") and value["inches"] != "0"


def _maybe(fits: Fits) -> Fits:
    return lambda value: value is None or fits(value)


def _texts(value: Any) -> bool:
    return isinstance(value, dict) and all(map(_text, value.values()))


def _object(**parts: Fits) -> Fits:
    """Return a test for an object that has these parts; it may have others."""
    return lambda value: isinstance(value, dict) and all(fits(value.get(key)) for key, fits in parts.items())


def _each(fits: Fits) -> Fits:
    return lambda value: isinstance(value, list) and all(map(fits, value))


FIGURE = _object(key=_text, label=_text, value=_value)
SPAN = _object(**{"from": _length, "to": _length, "label": _text, "kind": _text})
STRIP = _object(label=_text, length=_stretch, spans=_each(SPAN), ticks=_each(_object(at=_length, label=_text)))
NEEDED: dict[str, Fits] = {
    "tool": _text,
    "inputs": _texts,
    "unit": _text,
    "graduation": _text,
    "answer": FIGURE,
}
LISTS: dict[str, Fits] = {
    "figures": _each(FIGURE),
    "marks": _each(_object(key=_text, label=_text, at=_length)),
    "steps": _each(_object(key=_text, label=_text, value=_maybe(_value))),
    "strips": _each(STRIP),
    "plans": _each(_object(label=_text)),
    "sums": _each(_text),
    "cautions": _each(_text),
    "notes": _each(_text),
}


def sheet_error(sheet: Any) -> str:
    """Return what is wrong with a sheet's shape, or nothing."""
    if not isinstance(sheet, dict) or not _whole(sheet.get("format")) or sheet["format"] != 1:
        return "it is no sheet of format 1."
    wrong = [key for key, fits in NEEDED.items() if not fits(sheet.get(key))]
    wrong += [key for key, fits in LISTS.items() if key in sheet and not fits(sheet[key])]
    return f"{wrong[0]} has another shape." if wrong else ""
