"""What cannot be done after the glue-up: a list from the joints and parts, each line with its own tick.

All of it is common practice.
"""

from dataclasses import dataclass
from typing import Any, TypeAlias

from webapp.core.entries_cut import done_steps
from webapp.core.entries_part import part_of
from webapp.core.piece_words import the
from webapp.core.sums import counted

Summary: TypeAlias = dict[str, Any]
Item: TypeAlias = dict[str, Any]
Things: TypeAlias = list[tuple[str, Item]]  # the thing's name, and what stands for it

GLUE = "glue "  # the steps of this list begin with it
# What is done, in the order of the list: its key, its heading, and its words before what it is done to.
GROUPS = (
    ("ends", "Ends of through tenons, rounded", "round the ends of"),
    ("eased", "Arrises, eased", "ease the arrises of"),
    ("sanded", "Inside faces, sanded", "sand the inside faces of"),
    ("finished", "Floating parts, finished before they go in", "finish before it goes in:"),
    ("pins", "Pins and dowels, cut", "cut"),
    ("numbered", "Joints, numbered on both halves", "number both halves of"),
)


@dataclass(frozen=True)
class Tick:
    """One line of the list."""

    group: str
    step: str
    what: str  # what it is done to
    done: str  # the entry that says it is done, or nothing


def glue_list(summary: Summary) -> list[Tick]:
    """Return what is to be done before the glue, group by group."""
    done = done_steps(summary)
    return [
        Tick(group, _step(group, thing), what, done.get(_step(group, thing), ""))
        for group, _title, _words in GROUPS
        for thing, what in _lines(summary, group)
    ]


def open_ticks(summary: Summary) -> list[Tick]:
    """Return what is not ticked yet."""
    return [tick for tick in glue_list(summary) if not tick.done]


def tick_words(tick: Tick) -> str:
    """Return a line in words: "round the ends of joint 3, the upper rail in the post"."""
    return f"{[words for group, _title, words in GROUPS if group == tick.group][0]} {tick.what}"


def _step(group: str, thing: str) -> str:
    return f"{GLUE}{group} {thing}"


def _lines(summary: Summary, group: str) -> list[tuple[str, str]]:
    """Return each line of a group: the thing, and how it is named."""
    joints, parts = _standing(summary, "joints"), _standing(summary, "parts")
    if group in ("eased", "sanded"):
        return [(thing, _pieces(part)) for thing, part in parts]
    if group == "finished":
        floating = _floating(summary, joints)
        return [(thing, _pieces(part)) for thing, part in parts if part["entry"] in floating]
    if group == "ends":
        joints = [(thing, joint) for thing, joint in joints if joint["tenon"] == "through"]
    if group == "pins":
        pinned = [(thing, joint) for thing, joint in joints if joint["pins"]]
        return [
            (thing, f"{PINS.get(joint['pins'], 'pins')} of {joint_words(summary, joint)}") for thing, joint in pinned
        ]
    return [(thing, joint_words(summary, joint)) for thing, joint in joints]


PINS = {"pinned": "the pins", "dowelled": "the dowels"}


def _standing(summary: Summary, name: str) -> Things:
    return [(thing["thing"], thing["heads"][0]) for thing in summary[name] if thing["heads"]]


def _pieces(part: Item) -> str:
    return the(part["name"]) + (f", {counted(part['count'], 'piece')}" if part["count"] > 1 else "")


def joint_words(summary: Summary, joint: Item) -> str:
    """Name a joint by its number and its parts: "joint 3, the upper rail and the left post"."""
    parts = [part_of(summary, entry) for entry in joint["parts"]]
    names = [the(part["name"]) for part in parts if part is not None]
    return f"joint {joint['number']}" + (f", {' and '.join(names)}" if names else "")


def _floating(summary: Summary, joints: Things) -> list[str]:
    """Return the parts that float: of each floating joint the one that has the tenon, else the first that is named."""
    found = []
    for _thing, joint in joints:
        both = [part_of(summary, entry) for entry in joint["parts"]]
        parts = [part for part in both if part is not None]
        if joint["tenon"] == "floating" and parts:
            tenoned = [part for part in parts if "tenon" in part["measures"]]
            found.append((tenoned + parts)[0]["entry"])
    return found
