"""What stands under a field that is linked: the number it takes, from where, and whether that has changed since."""

from typing import Any, TypeAlias

from webapp.core.built import exact_of
from webapp.core.follow_ground import WHY, Ground, Source, ground
from webapp.core.items import Known, full_name, items_of, named, number_at, page_of, spoken_number
from webapp.core.links import Link
from webapp.core.mark import mark
from webapp.core.picks_form import held_links

Gathered: TypeAlias = dict[str, Any]
View: TypeAlias = dict[str, Any]

EACH = 3  # numbers of one source that are said one by one
UNKNOWN = "a number that is not here"


def sources_view(g: Gathered, typed: dict[str, str]) -> dict[str, View]:
    """Give for each field a text, one source on a line, and the page of the source where there is one alone."""
    links = held_links(g["tool"], typed) if g["project"] is not None else []
    found: dict[str, View] = {field.name: {"text": "", "href": ""} for field in g["tool"].fields}
    if not links:
        return found
    here, items = ground(g["project"], g["worked"], g["factors"]), items_of(g["project"])
    for name in {link.field: True for link in links}:
        found[name] = field_sources(here, items, [link for link in links if link.field == name])
    return found


def field_sources(here: Ground, items: dict[str, Known], links: list[Link]) -> View:
    """Give what stands under one field."""
    groups = by_source(links)
    words = [line for group in groups for line in group_lines(here, items, group)]
    entry = links[0].entry
    alone = len(groups) == 1 and entry in items
    return {"text": "\n".join(words), "href": page_of(here.summary, items[entry][0], entry) if alone else ""}


def group_lines(here: Ground, items: dict[str, Known], links: list[Link]) -> list[str]:
    """Say what is taken from one source: each number, or how many and those that changed."""
    sources = [here.source(link) for link in links]
    if len(links) <= EACH:
        return [link_words(here, items, source) for source in sources]
    changed = [source for source in sources if source.why or source.changed]
    said = [link_words(here, items, source) for source in changed[:EACH]]
    more = [f"and {len(changed) - EACH} more that changed"] if len(changed) > EACH else []
    return [several_words(items, links), *said, *more]


def several_words(items: dict[str, Known], links: list[Link]) -> str:
    """Say many links to one source."""
    name = named(*items[links[0].entry]) if links[0].entry in items else UNKNOWN
    return f"from {name}: {links[0].line} to {links[-1].line}, {len(links)} in all"


def taken_words(here: Ground, items: dict[str, Known], links: list[Link]) -> str:
    """Say where the links of a field take their numbers from, one source on a line, as they were taken."""
    found: list[str] = []
    for group in by_source(links):
        many = len(group) > EACH
        found.extend([several_words(items, group)] if many else [from_words(here, items, link) for link in group])
    return "\n".join(found)


def by_source(links: list[Link]) -> list[list[Link]]:
    """Return links in groups of one source."""
    groups: dict[str, list[Link]] = {}
    for link in links:
        groups.setdefault(link.entry, []).append(link)
    return list(groups.values())


def link_words(here: Ground, items: dict[str, Known], source: Source) -> str:
    """Say one link: "from Lower rail, left: 17 11/16 strong; it is now 17 5/8"."""
    return f"{from_words(here, items, source.link)}{since(here, items, source)}"


def from_words(here: Ground, items: dict[str, Known], link: Link) -> str:
    """Say one link as it was taken: "from Lower rail, left: 17 11/16 strong"."""
    taken = mark(exact_of(link.inches), here.how)
    kind, item = items.get(link.entry, ("", {}))
    number = number_at(here, kind, item, link.key) if kind else None
    name = full_name(kind, item, number) if number is not None else (named(kind, item) if kind else UNKNOWN)
    said = number.said if number is not None and number.inches == link.inches else taken
    return f"from {name}: {said}"


def since(here: Ground, items: dict[str, Known], source: Source) -> str:
    """Say what became of a source: nothing where it still gives the number."""
    if source.why:
        return f"; {WHY[source.why]}"
    if source.number is None or not source.changed:
        return ""
    kind, item = items[source.entry]
    return f"; it is now {spoken_number(kind, item, source.number).said}"
