"""Histories of entries, made by hand and at random, for the tests of the fold, the store and the phone."""

from collections.abc import Iterable
from random import Random
from typing import Any

Entry = dict[str, Any]

PLACES = ("Span, left", "span,  LEFT", "rail", "post \u00be", "é")
TEXTS = (("58 3/8", "467/8"), ("58 3/8 strong", "7473/128"), ("2 1/16", "33/16"), ("0", "0"))
SHOP: tuple[Any, ...] = (
    {"text": "14", "unit": "in", "graduation": "1/32"},
    {"text": "350 strong", "unit": "mm", "graduation": "1 mm", "newer": 1},
    {"text": "", "unit": "ft", "graduation": "1/8"},
    {"text": "14", "unit": "mm", "graduation": "1/8"},
    {"text": "14", "unit": "in"},
    "14",
)
JUNK: tuple[Any, ...] = ("", "x", 7, True, None, [], {}, {"entry": 3}, ["a"], -1)


def uid(number: int) -> str:
    """Return a UUIDv7 that is easy to tell from others."""
    return f"01900000-0000-7000-8000-{number:012x}"


class History:
    """A project's entries, each made with the next number."""

    def __init__(self, number: int = 1) -> None:
        self.entries: list[Entry] = []
        self.number = number
        self.id = uid(number)

    def add(self, kind: str, body: Any, replaces: Iterable[str] = (), *, sent: bool = True) -> str:
        place = len(self.entries)
        entry = {
            "id": uid(self.number + place),
            "project": self.id,
            "kind": kind,
            "body": body,
            "made_at": f"2026-11-25T10:17:{place % 60:02}.{place % 1000:03}Z",
            "by": "a phone",
            "replaces": list(replaces),
        }
        self.entries.append({**entry, **({"seq": place + 1} if sent else {"counter": place + 1})})
        return str(entry["id"])

    def project(self, name: str = "Bed in ash", unit: str = "in", graduation: str = "1/32") -> str:
        return self.add("project", {"name": name, "unit": unit, "graduation": graduation})

    def reading(self, place: str, text: str = "58 3/8", replaces: Iterable[str] = (), **more: Any) -> str:
        sent = more.pop("sent", True)
        said = {"place": place, "text": text, "inches": dict(TEXTS)[text], "unit": "in", "graduation": "1/32"}
        return self.add("reading", {**said, **more}, replaces, sent=sent)

    def withdrawal(self, entry: str, replaces: Iterable[str] = (), **more: Any) -> str:
        return self.add("withdrawal", {"entry": entry, **more}, replaces or [entry])

    def pick(self, entry: str, replaces: Iterable[str]) -> str:
        return self.add("pick", {"entry": entry}, replaces)

    def sheet(self, called: str = "Headboard", replaces: Iterable[str] = ()) -> str:
        said = {"tool": "spacing", "called": called, "inputs": {"span": "30"}, "links": []}
        stamp = {"unit": "in", "graduation": "1/32", "engine": "1", "digest": "0" * 64}
        return self.add("sheet", {**said, **stamp}, replaces)


def at_random(random: Random, most: int = 30) -> list[Entry]:
    """Return a history that no program would make: junk, rings, entries that are missing, unknown kinds."""
    history = History()
    count = random.randint(0, most)
    for place in range(count):
        kind = random.choice(list(BODIES))
        target = _target(random, history, count)
        body = BODIES[kind](random, target)
        replaces = [target] if random.random() < 0.6 else _replaced(random, count)
        if random.random() < 0.1:
            body = _spoilt(random, body)
        history.add(kind, body, replaces, sent=place < count * 2 // 3)
    return [_strange(random, entry) for entry in history.entries]


def _target(random: Random, history: History, count: int) -> str:
    """Name an entry that is spoken of: mostly a reading or a sheet that is there."""
    shown = [entry["id"] for entry in history.entries if entry["kind"] in ("reading", "sheet")]
    return str(random.choice(shown)) if shown and random.random() < 0.8 else _any(random, count)


def _replaced(random: Random, count: int) -> list[str]:
    """Name any entries, earlier, later, missing, itself."""
    return [_any(random, count) for _ in range(random.choice([0, 0, 0, 1, 2, 3]))]


def _any(random: Random, count: int) -> str:
    return uid(random.randint(1, count + 2))


def _spoilt(random: Random, body: dict[str, Any]) -> Any:
    if body and random.random() < 0.7:
        return {**body, random.choice(list(body)): random.choice(JUNK)}
    return random.choice(JUNK)


def _strange(random: Random, entry: Entry) -> Entry:
    """Spoil a part of the frame now and then, as only a newer version or a stranger would."""
    if random.random() > 0.05:
        return entry
    key = random.choice(["kind", "made_at", "by", "replaces", "body"])
    return {**entry, key: random.choice(JUNK)}


def _reading(random: Random, _target: str) -> dict[str, Any]:
    text, inches = random.choice(TEXTS)
    note = {"note": "bowed"} if random.random() < 0.3 else {}
    said = {"place": random.choice(PLACES), "text": text, "inches": inches}
    return {**said, "unit": "in", "graduation": "1/32", **note}


def _settings(random: Random, _target: str) -> dict[str, Any]:
    said = {
        "name": random.choice(["Bed", "Settee"]),
        "unit": random.choice(["mm", "in", "cubits"]),
        "graduation": random.choice(["1/16", "1 mm", "1/7"]),
        "archived": random.choice([True, False]),
        "shop": {random.choice(["least_length", "turn", "é"]): random.choice(SHOP)},
    }
    return {key: value for key, value in said.items() if random.random() < 0.5}


def _sheet(random: Random, _target: str) -> dict[str, Any]:
    inputs = {"span": "58 3/8", "slat": random.choice(["2", "2 1/2"])}
    said = {"tool": "spacing", "called": random.choice(["A", "B"]), "inputs": inputs, "links": []}
    return {**said, "unit": "in", "graduation": "1/32", "engine": "1", "digest": "0" * 64}


BODIES = {
    "project": lambda _r, _t: {"name": "Bed in ash", "unit": "in", "graduation": "1/32"},
    "settings": _settings,
    "reading": _reading,
    "withdrawal": lambda r, t: {"entry": t, **({"why": "bent rule"} if r.random() < 0.5 else {})},
    "note": lambda _r, t: {"entry": t, "text": "seen again"},
    "sheet": _sheet,
    "pick": lambda _r, t: {"entry": t},
    "later": lambda _r, t: {"entry": t, "deep": [{"er": 1}]},
}
