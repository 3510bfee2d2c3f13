"""The sheet a tool answers with, its parts, and its text as compact JSON."""

from fractions import Fraction
from typing import Any, TypeAlias

from webapp.core.mark import length
from webapp.core.setting import Setting

Length: TypeAlias = dict[str, str]
Part: TypeAlias = dict[str, Any]

ORDER = (
    "answer", "figures", "marks", "steps", "strips", "plans", "sums", "cautions", "notes",
)


def figure(key: str, label: str, value: Any) -> Part:
    """Return a figure (or an answer): `value` is a LENGTH, an integer or text."""
    return {"key": key, "label": label, "value": value}


def marked(key: str, label: str, at: Length) -> Part:
    """Return a mark at a LENGTH that is made already."""
    return {"key": key, "label": label, "at": at}


def mark_at(key: str, label: str, x: Fraction, setting: Setting) -> Part:
    """Return a mark at `x` inches from the datum, rounded from its own place."""
    return marked(key, label, length(x, setting))


def span(start: Length, end: Length, label: str, kind: str) -> Part:
    """Return a span of a strip; `kind` is wood, air, cut, waste or mortise."""
    return {"from": start, "to": end, "label": label, "kind": kind}


def tick(at: Length, label: str) -> Part:
    """Return a tick of a strip."""
    return {"at": at, "label": label}


def strip(label: str, whole: Length, spans: list[Part], ticks: list[Part]) -> Part:
    """Return a strip of `whole` length; its places are from the datum."""
    return {"label": label, "length": whole, "spans": spans, "ticks": ticks}


def sheet(head: Part, parts: Part) -> Part:
    """Return the sheet: head, the common parts in their order, then the tool's own; empty ones left out."""
    known = {name: parts[name] for name in ORDER if name in parts}
    own = {name: part for name, part in parts.items() if name not in ORDER}
    return {"format": 1, **head, **{name: part for name, part in {**known, **own}.items() if part}}


def to_json(value: Any) -> str:
    """Return `value` (dicts, lists, text, integers, booleans) as compact JSON, characters unescaped."""
    return controls_escaped(written(value))


def written(value: Any) -> str:
    """Return JSON in which control characters inside text are still bare."""
    if isinstance(value, str):
        return quoted(value)
    if isinstance(value, dict):
        return "{" + ",".join([quoted(key) + ":" + written(part) for key, part in value.items()]) + "}"
    if isinstance(value, (list, tuple)):
        return "[" + ",".join([written(part) for part in value]) + "]"
    if isinstance(value, bool):
        return "true" if value else "false"
    return str(value)


def quoted(text: str) -> str:
    """Return `text` between quotes, its own quotes and backslashes escaped."""
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'


def controls_escaped(json: str) -> str:
    """Return `json` with control characters escaped: compact JSON has none but those inside text."""
    return json
