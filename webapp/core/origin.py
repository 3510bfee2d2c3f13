"""What a number stands on, as it was when it was worked: the very entries that its links name, and theirs."""

from typing import Any, TypeAlias

from webapp.core.built import reading_of, trims
from webapp.core.follow import sheets_behind
from webapp.core.follow_ground import Ground
from webapp.core.items import Known, items_of
from webapp.core.links import Link, link_of
from webapp.core.numbers import BUILT, READING, Number
from webapp.core.text import fold_name

Summary: TypeAlias = dict[str, Any]
Item: TypeAlias = dict[str, Any]

MOST = 200  # sheets whose working is asked for at once


def sheets_above(summary: Summary, entry: str) -> list[str]:
    """Return the sheets whose working is needed to say how a number of an entry came about."""
    items = items_of(summary)
    found: dict[str, bool] = {}
    ways = [entry]
    while ways and len(found) < MOST:
        at = ways.pop(0)
        if at in items and at not in found:
            found[at] = True
            ways.extend([link["entry"] for link in items[at][1].get("links", [])])
    named = [name for name in found if items[name][0] == "sheet"]
    return list({name: True for name in [*named, *sheets_behind(summary, list(found))]})


def links_on(known: Known, number: Number) -> list[Link]:
    """Return the links that a number stands on; what is a line of a list, as it was taken, stands on that alone."""
    kind, item = known
    links = [link_of(link) for link in item.get("links", [])]
    if kind == "part":
        return [link for link in links if link.field == number.key]
    own = [link for link in links if link.line and fold_name(link.line) == fold_name(number.label)]
    return own if own and own[0].inches == number.inches else links


def read_off(here: Ground, known: Known, key: str) -> list[Link]:
    """Return what a part's measure as built stands on: what was read off the wood, and what was trimmed since."""
    kind, item = known
    if kind != "part" or not key.startswith(BUILT):
        return []
    measure = key[len(BUILT) :]
    read = reading_of(here.summary, item["name"], measure)
    found = [Link("read off the wood", "", read["entry"], READING, read["inches"])] if read is not None else []
    cuts = {cut["entry"]: cut for thing in here.summary["cuts"] for cut in thing["heads"]}
    for trim in trims(here.summary, item["name"], here.worked):
        cut = cuts[trim.cut]
        found.append(Link("trimmed", "", cut["of"], cut["key"], str(trim.amount)))
    return found
