"""The sheet a tool answers with, its parts, and its text as compact JSON."""

from fractions import Fraction
from typing import Any, TypeAlias

from webapp.core.mark import length
from webapp.core.setting import Setting

Length: TypeAlias = dict[str, str]
Part: TypeAlias = dict[str, Any]

ORDER = ("answer", "figures", "marks", "steps", "strips", "plans", "sums", "cautions", "notes")
STRIP = ["label", "length", "spans", "ticks"]
SPAN = ["from", "to", "label", "kind"]
BARE = (
    "\x00\x01\x02\x03\x04\x05\x06\x07\x08\x09\x0a\x0b\x0c\x0d\x0e\x0f"
    "\x10\x11\x12\x13\x14\x15\x16\x17\x18\x19\x1a\x1b\x1c\x1d\x1e\x1f"
)
HEX = "0123456789abcdef"
SHORT = {"\b": "\\b", "\t": "\\t", "\n": "\\n", "\f": "\\f", "\r": "\\r"}
CONTROLS = {**{BARE[i]: f"\\u00{HEX[i // 16]}{HEX[i % 16]}" for i in range(len(BARE))}, **SHORT}


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
    """Return the sheet: head, the common parts in their order, then the tool's own; empty ones left out, but no 0."""
    known = {name: parts[name] for name in ORDER if name in parts}
    own = {name: part for name, part in parts.items() if name not in ORDER}
    return {"format": 1, **head, **{name: part for name, part in {**known, **own}.items() if part or part == 0}}


def to_json(value: Any) -> str:
    """Return `value` (dicts, lists, text, integers, booleans) as compact JSON, its characters unescaped."""
    text = written(value)
    # Compact JSON has no control characters but those inside text, so one look at the whole finds them.
    for plain, escaped in CONTROLS.items():
        if plain in text:
            text = text.replace(plain, escaped)
    return text


def written(value: Any) -> str:
    """Return JSON in which control characters inside text are still bare."""
    if isinstance(value, str):
        return quoted(value)
    if isinstance(value, dict):
        return strip_written(value) if is_strip(value) else dict_written(value)
    if isinstance(value, (list, tuple)):
        return "[" + ",".join([written(part) for part in value]) + "]"
    if isinstance(value, bool):
        return "true" if value else "false"
    return str(value)


def dict_written(value: Part) -> str:
    """Return an object, its keys in their order; lengths, of which there are hundreds, the short way."""
    if len(value) == 3 and "mm" in value and "mark" in value and "inches" in value:
        return length_written(value)
    return "{" + ",".join([f"{quoted(key)}:{written(part)}" for key, part in value.items()]) + "}"


def length_written(value: Part) -> str:
    """Return a LENGTH; only its mark can hold a quote, the sign for inches."""
    return f'{{"inches":"{value["inches"]}","mark":{quoted(value["mark"])},"mm":"{value["mm"]}"}}'


def is_strip(value: Part) -> bool:
    """Tell whether an object is a strip of spans and nothing else."""
    if "spans" not in value or list(value) != STRIP:
        return False
    return all(len(part) == len(SPAN) and "kind" in part for part in value["spans"])


def strip_written(value: Part) -> str:
    """Return a strip; where a span begins at the very LENGTH at which the one before ended, it is written once."""
    spans = []
    last, said = None, ""
    for part in value["spans"]:
        start = said if part["from"] is last else dict_written(part["from"])
        last = part["to"]
        said = dict_written(last)
        ends = f'"from":{start},"to":{said}'
        spans.append(f'{{{ends},"label":{quoted(part["label"])},"kind":{quoted(part["kind"])}}}')
    head = f'"label":{quoted(value["label"])},"length":{dict_written(value["length"])}'
    return f'{{{head},"spans":[{",".join(spans)}],"ticks":{written(value["ticks"])}}}'


def quoted(text: str) -> str:
    """Return `text` between quotes, its own quotes and backslashes escaped."""
    if '"' in text or "\\" in text:
        text = text.replace("\\", "\\\\").replace('"', '\\"')
    return f'"{text}"'
