"""Links followed, and stale sheets worked again, in CPython and in the browser's engine: the same to the character."""

from random import Random
from typing import Any

from tests.core.chain import Bench, worked
from webapp.core.entries_sheet import sheet_of
from webapp.tools import TOOLS
from webapp.units import FACTORS

PLACES = ("opening", "upper rail, width")
READINGS = ("58 3/8", "57 strong", "60 scant", "1500 mm")


def spacing(bench: Bench, random: Random, number: int) -> None:
    """Keep a spacing over a reading, or over a number of another sheet; now and then in the place of another."""
    summary = bench.summary()
    found = [(place["heads"][0]["entry"], "reading", place["heads"][0]["inches"]) for place in linkable(summary)]
    for thing in summary["sheets"]:
        for head in thing["heads"][:1]:
            sheet = sheet_of(head, TOOLS, FACTORS)["sheet"]
            found += [(head["entry"], mark["key"], mark["at"]["inches"]) for mark in sheet["marks"][-2:]]
    if not found:
        return
    entry, key, inches = random.choice(found)
    typed = {"tool": "spacing", "span": f"{inches} in", "slat": "1/2", "count": "2", "called": f"sheet {number}"}
    before = [thing["thing"] for thing in summary["sheets"] if random.random() < 0.2]
    made = bench.drafts("sheet", summary, **typed, links=f"span {entry} {key} {inches}", replaces=" ".join(before[:1]))
    bench.put(made)


def linkable(summary: dict[str, Any]) -> list[dict[str, Any]]:
    return [place for place in summary["places"] if len(place["heads"]) == 1]


def drawn(seed: int) -> tuple[dict[str, Any], list[str]]:
    """Return the state after some presses, and the kept sheets."""
    random = Random(seed)
    bench = Bench()
    bench.keep("part", name="upper rail", width="5 1/2", mortise="1")
    for number in range(random.randint(3, 14)):
        late = random.choice([None, -2]) if number > 2 else None
        sheets = [entry["id"] for entry in bench.history.entries if entry["kind"] == "sheet"]
        match random.randint(0, 5):
            case 0 | 1:
                typed = {"place": random.choice(PLACES), "reading": random.choice(READINGS)}
                bench.put(bench.drafts("reading", bench.summary(late), **typed))
            case 2 | 3:
                spacing(bench, random, number)
            case 4 if sheets:
                typed = {"entry": random.choice(sheets), "measured": random.choice(["", "2 1/16 scant"])}
                bench.put(bench.drafts("cut", bench.summary(late), **typed))
            case _:
                bench.put(bench.drafts("again", bench.summary(late)))
    return bench.summary(), [entry["id"] for entry in bench.history.entries if entry["kind"] == "sheet"]


def test_what_is_stale_waits_or_is_cut_is_the_same_on_the_phone(engine):
    """Each kept sheet's page, with all that it says of its sources, and the press that works again what is stale."""
    calls: list[tuple[str, str, tuple[Any, ...]]] = []
    for seed in range(40):
        summary, sheets = drawn(seed)
        known = worked(summary)
        calls.append(("entries", "draft", ("again", {}, summary, dict(TOOLS), dict(FACTORS), known)))
        g = {"tools": list(TOOLS.values()), "factors": dict(FACTORS), "project": summary, "worked": known}
        calls += [("view", "sheet", ({**g, "entry": entry},)) for entry in sheets[-3:]]
    outcomes = [str(outcome) for outcome in engine.check(calls)]
    for words in ("Stale:", "It waits:", "is now", "It is cut, and is not worked again", "'again'"):
        assert any(words in outcome for outcome in outcomes), words
