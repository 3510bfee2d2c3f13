"""Looking into a document by a path: `answer.value.inches`, `slats.*.left.inches`, `marks.slat-3-left.at.mark`."""

from typing import Any


def look(document: Any, path: str) -> Any:
    """Return what stands at the path, as text; a star gives the list of what stands at it in each part."""
    return texts(follow(document, path.split(".")))


def follow(document: Any, steps: list[str]) -> Any:
    if not steps:
        return document
    step, rest = steps[0], steps[1:]
    if step == "*":
        return [follow(part, rest) for part in document]
    return follow(part_of(document, step), rest)


def part_of(document: Any, step: str) -> Any:
    """Take a key of an object, a number of a list, or the one part of a list that has this key."""
    if isinstance(document, dict):
        return document[step]
    if step.isdigit():
        return document[int(step)]
    (part,) = [part for part in document if part["key"] == step]
    return part


def texts(found: Any) -> Any:
    return [texts(part) for part in found] if isinstance(found, list) else str(found)
