"""How a number came about: where it stands, its sums, and what it was taken from, with theirs."""

from typing import Any, TypeAlias

from webapp.core.address import origin_address
from webapp.core.built import exact_of
from webapp.core.drawing import mark_view
from webapp.core.follow_ground import ground
from webapp.core.items import Known, items_of, named, number_at, page_of
from webapp.core.links import Link, link_of, links_text
from webapp.core.mark import mark, millimetres
from webapp.core.numbers import Number
from webapp.core.origin import links_on, read_off
from webapp.core.view_links import UNKNOWN, by_source, since
from webapp.core.view_project import back_to
from webapp.core.view_told import Walk, field_labels, told

Gathered: TypeAlias = dict[str, Any]
Item: TypeAlias = dict[str, Any]
View: TypeAlias = dict[str, Any]

DEPTH = 6  # how far sources are nested; each of them can be opened itself


def origin_view(g: Gathered) -> View:
    """Give the number of a key of an entry with all that it came from; nothing where there is no such number."""
    summary = g["project"]
    here = ground(summary, g["worked"], g["factors"])
    walk = Walk(here, items_of(summary), g["tools"], {g["entry"]: True})
    known = walk.items.get(g["entry"])
    number = number_at(here, known[0], known[1], g["key"]) if known is not None else None
    if known is None or number is None:
        return {}
    value = exact_of(number.inches)
    return {
        "title": number.label,
        "project": back_to(summary),
        "at": named(*known),
        "href": page_of(summary, known[0], g["entry"]),
        "mark": mark_view(number.said, ""),
        "exactly": "" if number.count else f"exactly {number.inches} in, {millimetres(value, here.how)} mm",
        "later": not any(head["entry"] == g["entry"] for kind, head in here.heads[g["entry"]]),
        **told(walk, known),
        "sources": sources_of(walk, known, number, DEPTH),
    }


def sources_of(walk: Walk, known: Known, number: Number, depth: int) -> list[View]:
    """Give what a number was taken from, each source once."""
    return sources_view(walk, field_labels(walk, known), stands_on(walk, known, number), depth)


def stands_on(walk: Walk, known: Known, number: Number) -> list[Link]:
    """Return what a number stands on: its links, and for a part's measure in the wood what was read and trimmed."""
    return links_on(known, number) + read_off(walk.here, known, number.key)


def sources_view(walk: Walk, labels: dict[str, str], links: list[Link], depth: int) -> list[View]:
    """Give each source with the numbers that it gave, and what it stands on itself."""
    return [source_view(walk, labels, group, depth) for group in by_source(links)]


def source_view(walk: Walk, labels: dict[str, str], links: list[Link], depth: int) -> View:
    """Give one source; what was shown already, or stands too deep, can be opened and is not told again."""
    entry = links[0].entry
    known = walk.items.get(entry)
    given = [given_view(walk, labels, link) for link in links]
    name = named(*known) if known is not None else UNKNOWN
    words = f"{given[0]['label']}: {given[0]['said']}" if len(given) == 1 else f"{len(given)} numbers"
    view = {"words": f"{words}, from {name}", "given": given, "again": entry in walk.shown, "told": None, "sources": []}
    if known is None or entry in walk.shown or depth == 0:
        return view
    walk.shown[entry] = True
    on = sources_view(walk, field_labels(walk, known), all_links(walk, known, links), depth - 1)
    return {**view, "told": told(walk, known), "sources": on}


def all_links(walk: Walk, known: Known, links: list[Link]) -> list[Link]:
    """Return what the numbers stand on that a source gave; each link once."""
    if known[0] == "sheet" and len(links) > 1:
        return [link_of(link) for link in known[1]["links"]]
    found: dict[str, Link] = {}
    for link in links:
        number = number_at(walk.here, known[0], known[1], link.key)
        for each in stands_on(walk, known, number) if number is not None else []:
            found[links_text([each])] = each
    return list(found.values())


def given_view(walk: Walk, labels: dict[str, str], link: Link) -> View:
    """Give one number as it was taken, with the way to its own origin, and what became of it since."""
    known = walk.items.get(link.entry)
    number = number_at(walk.here, known[0], known[1], link.key) if known is not None else None
    same = number is not None and number.inches == link.inches
    words = number.said if number is not None and same else mark(exact_of(link.inches), walk.here.how)
    field = labels.get(link.field, link.field)
    return {
        "label": f"{field}, {link.line}" if link.line else field,
        "said": words,
        "mark": mark_view(words, ""),
        "of": number.label if number is not None and number.label != link.line else "",
        "href": origin_address(walk.here.summary["id"], link.entry, link.key) if number is not None else "",
        "since": since(walk.here, walk.items, walk.here.source(link)),
    }
