"""What a project offers to a field: the numbers of what stands alone, and what is in doubt."""

from dataclasses import dataclass
from typing import Any, TypeAlias

from webapp.core.follow_ground import Ground
from webapp.core.follow_order import above
from webapp.core.items import spoken_number
from webapp.core.links import Link
from webapp.core.numbers import Number
from webapp.core.picks import offers
from webapp.core.rings import stands_on, things_of
from webapp.core.tool import Field

Summary: TypeAlias = dict[str, Any]
Item: TypeAlias = dict[str, Any]


@dataclass(frozen=True)
class Offering:
    """What is offered from: the field, the project's ground, the links that the form holds, and what would ring."""

    field: Field
    here: Ground
    links: list[Link]
    barred: dict[str, bool]  # things that stand on what is being changed

    @property
    def many(self) -> bool:
        """Say whether the field takes several numbers at once."""
        return self.field.kind == "lines"

    def numbers(self, kind: str, item: Item) -> list[Number]:
        """Return the numbers of something that the field can take."""
        found = [spoken_number(kind, item, number) for number in self.here.numbers_of(kind, item)]
        return [number for number in found if offers(self.field, number)]

    def has(self, entry: str, key: str) -> bool:
        """Say whether the field takes this number already."""
        return any(k.field == self.field.name and k.entry == entry and k.key == key for k in self.links)

    def alone(self, name: str) -> list[Item]:
        """Return what stands as the only one of its thing, the latest first."""
        things = [thing for thing in self.here.summary[name] if thing.get("thing", "") not in self.barred]
        heads = [thing["heads"][0] for thing in things if len(thing["heads"]) == 1]
        return sorted(heads, key=lambda head: head["rank"], reverse=True)

    def doubtful(self, name: str) -> list[Item]:
        """Return the first of what has rivals: none of them is offered."""
        return [thing["heads"][0] for thing in self.here.summary[name] if len(thing["heads"]) > 1]


def barred(summary: Summary, replaces: str) -> dict[str, bool]:
    """Return the things that stand on the sheet that is being changed: its own numbers would come back to it."""
    if not replaces:
        return {}
    thing_of = things_of(summary)
    own = [thing_of[name] for name in replaces.split(" ") if name in thing_of]
    on = stands_on(summary, thing_of)
    return {thing: True for thing in on if thing in own or any(name in above(thing, on) for name in own)}
