"""The ids of what one press makes: counted up from the first, and put where a copy names what was copied with it."""

from typing import Any, TypeAlias

from webapp.core.entries_text import HEX

Draft: TypeAlias = dict[str, Any]
Body: TypeAlias = dict[str, Any]

PLACES = (4096, 256, 16, 1)  # of the last digits of an id, which count the entries that follow


def sibling(identity: str, number: int) -> str:
    """Return the id of what follows an entry as number so and so: the same one at every press."""
    tail = 0
    for c in identity[-len(PLACES) :]:
        tail = tail * 16 + HEX.find(c)
    return identity[: -len(PLACES)] + "".join([HEX[(tail + number) // place % 16] for place in PLACES])


def numbered(drafted: Draft, identity: str) -> list[Draft]:
    """Return a draft and those that follow it, `also`, as {"id", "kind", "body", "replaces"}.

    A draft that is a copy says of which entry, `copied`: what names that entry in the bodies of the others names
    the copy then.
    """
    drafts = [drafted] + drafted.get("also", [])
    names = [sibling(identity, i) for i in range(len(drafts))]
    copies = {draft["copied"]: names[i] for i, draft in enumerate(drafts) if "copied" in draft}
    return [
        {
            "id": names[i],
            "kind": draft["kind"],
            "body": _renamed(draft["body"], copies) if copies else draft["body"],
            "replaces": draft["replaces"],
        }
        for i, draft in enumerate(drafts)
    ]


def _renamed(body: Body, copies: dict[str, str]) -> Body:
    """Return a body whose links, and whose two parts where it is a joint, name the copies."""
    said = dict(body)
    if "links" in body:
        said["links"] = [{**link, "entry": copies.get(link["entry"], link["entry"])} for link in body["links"]]
    if "parts" in body:
        said["parts"] = [copies.get(name, name) for name in body["parts"]]
    return said
