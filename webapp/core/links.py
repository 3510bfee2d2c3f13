"""Links: which field of a sheet, or measure of a part, takes its value from which number of which entry."""

from dataclasses import dataclass
from typing import Any, TypeAlias

from webapp.core.entries_exact import from_exact
from webapp.core.entries_text import is_identity
from webapp.core.reading import ReadingError
from webapp.core.reading_lines import Line, read_lines
from webapp.core.text import fold_name, lines, trim
from webapp.core.tool import Field, Tool

Written: TypeAlias = dict[str, str]

KEYS = ("field", "line", "entry", "key", "inches")
MOST = 400
SIDES = ["1", "2", "3", "4"]  # the lines of a pair, `A x B`, or of two
BETWEEN = " x "


@dataclass(frozen=True)
class Link:
    """One link: `line` is the name of a list's line, the number of a pair's side, else nothing."""

    field: str
    line: str
    entry: str
    key: str
    inches: str


def readable_links(written: Any) -> list[Written]:
    """Return what of a body's links can be read here."""
    found = written if isinstance(written, list) else []
    return [{key: link[key] for key in KEYS} for link in found if _fits(link)]


def _fits(link: Any) -> bool:
    return isinstance(link, dict) and all(isinstance(link.get(key, None), str) for key in KEYS)


def links_error(written: Any) -> str:
    """Return what is wrong with the shape of a body's links, or nothing."""
    if not isinstance(written, list) or not all(isinstance(link, dict) for link in written):
        return "links must be a list of objects."
    if len(written) > MOST:
        return f"There is room for {MOST} links."
    for link in written:
        if not _fits(link):
            return f"Each link must hold {', '.join(KEYS)} as text."
        if not is_identity(link["entry"]) or from_exact(link["inches"]) is None:
            return "A link names an entry by its id, and holds an exact number, as 43/24."
    return ""


def link_of(written: Written) -> Link:
    """Return a link of an entry's body."""
    return Link(written["field"], written["line"], written["entry"], written["key"], written["inches"])


def written_link(link: Link) -> Written:
    """Return a link as an entry's body holds it."""
    return {"field": link.field, "line": link.line, "entry": link.entry, "key": link.key, "inches": link.inches}


def links_text(links: list[Link]) -> str:
    """Return links as a form and an address carry them, one on a line."""
    return "\n".join([trim(f"{k.field} {k.entry} {k.key} {k.inches} {k.line}") for k in links])


def read_links(text: str) -> list[Link]:
    """Return the links of a form; a line that is none is passed over."""
    found = []
    for line in lines(text):
        words = trim(line).split(" ")
        if len(words) >= 4 and is_identity(words[1]) and from_exact(words[3]) is not None:
            found.append(Link(words[0], " ".join(words[4:]), words[1], words[2], words[3]))
    return found


def linked_text(field: Field, inches: str) -> str:
    """Return what a linked field holds: the exact value with its unit, or a bare count."""
    return inches if field.kind == "count" else f"{inches} in"


def _parts(field: Field, text: str) -> dict[str, str]:
    """Return the parts of a field's text that links can be about, by name."""
    if field.kind == "lines":
        return {fold_name(each.name): trim(each.text) for each in _lines(text)}
    if field.kind == "pair":
        sides = text.split(BETWEEN)
        return {SIDES[i]: trim(side) for i, side in enumerate(sides) if i < len(SIDES)}
    return {"": trim(text)}


def _named(field: Field, line: str) -> str:
    if field.kind == "lines":
        return fold_name(line)
    return line if field.kind == "pair" else ""


def _lines(text: str) -> list[Line]:
    """Return a list's lines; none where they cannot be told apart, which the field's own error says."""
    try:
        return read_lines(text)
    except ReadingError:
        return []


def put_link(field: Field, text: str, line: str, value: str) -> str:
    """Return a field's text with a value where a link is about; a line or a side that is not there yet is added."""
    if field.kind == "lines":
        return _put_line(text, line, value)
    if field.kind == "pair" and line in SIDES:
        sides = [trim(side) for side in text.split(BETWEEN)] if trim(text) else []
        at = SIDES.index(line)
        return BETWEEN.join([*sides[:at], value, *sides[at + 1 :]])
    return value


def _put_line(text: str, name: str, value: str) -> str:
    kept = _lines(text)
    texts = [f"{each.name}: {value if fold_name(each.name) == fold_name(name) else trim(each.text)}" for each in kept]
    there = any(fold_name(each.name) == fold_name(name) for each in kept)
    return "\n".join(texts if there else [*texts, f"{name}: {value}"])


def holding(tool: Tool, inputs: dict[str, str], links: list[Link]) -> list[Link]:
    """Return the links whose value still stands in the inputs, what was typed over is linked no more."""
    if not links:
        return []
    fields = {field.name: field for field in tool.fields}
    parts = {name: _parts(field, inputs.get(name, "")) for name, field in fields.items()}
    found: dict[str, Link] = {}
    for link in links:
        field = fields.get(link.field)
        if field is not None:
            name = _named(field, link.line)
            if parts[link.field].get(name, "") == linked_text(field, link.inches):
                found[f"{link.field} {name}"] = link
    return list(found.values())
