"""Rounds and conditions in CPython and in the browser's engine: drafts, what is refused, and the round's page."""

from random import Random
from typing import Any

from tests.core.test_entries import Bench
from webapp.core import entries
from webapp.core.setting import setting
from webapp.tools import TOOLS
from webapp.units import FACTORS

PLACES = (
    "Upper rail, left",
    "Upper rail, right",
    "lower  rail, left",
    "Diagonals, rising",
    "diagonal, falling",
    "side, up",
)
SAID = (
    "13",
    "13 1/16 strong",
    "13 1/8",
    "14",
    "fits",
    "lacks 1/32",
    "Loose by 1/16 scant",
    "lacks",
    "fits 1",
    "lacks 90",
)
NUMBERS = ("8.5", "8,5", "8 %", "68 \u00b0F", "-4 C", "90 min", "x", "", "1.2.3", "999999", "\u0663", "--1", "1" * 21)


def test_what_is_said_against_a_stick_reads_the_same(engine):
    how = [setting("in", "1/32", FACTORS), setting("mm", "0.5 mm", FACTORS)]
    outcomes = engine.check([("gauge_against", "difference", (text, each)) for text in SAID[4:] for each in how])
    assert {"gives", "raises"} <= {key for outcome in outcomes for key in outcome}


def test_a_number_that_is_no_length_reads_the_same(engine):
    calls: list[Any] = [
        ("entries_condition", "read_condition", (text, quantity, metric))
        for text in NUMBERS
        for quantity in ("moisture", "temperature", "time")
        for metric in (True, False)
    ]
    outcomes = engine.check(calls)
    assert sum("gives" in outcome for outcome in outcomes) > 15


def fitted(seed: int) -> Bench:
    """Measure two rounds at random, with withdrawals, as far as a maker's typing is taken."""
    random = Random(seed)
    bench = Bench()
    bench.keep("part", name="Upper rail", faces="lower", shoulder=random.choice(["30", "60"]))
    rounds = [bench.keep("round", places="\n".join(PLACES), stick=random.choice(["", "13 1/16"]))]
    rounds.append(bench.keep("round", like=rounds[0], stick=random.choice(["", "none", "13"])))
    for _ in range(random.randint(0, 14)):
        typed = {"place": random.choice(PLACES), "reading": random.choice(SAID), "round": random.choice(rounds)}
        if random.random() < 0.2 and bench.heads():
            bench.keep("withdrawal", entry=random.choice(bench.heads()))
        elif "errors" not in bench.draft("reading", **typed):
            bench.keep("reading", **typed)
    return bench


def test_a_round_says_the_same(engine):
    calls: list[Any] = []
    for seed in range(25):
        summary = fitted(seed).summary
        rounds = [head["entry"] for thing in summary["rounds"] for head in thing["heads"]]
        base = {"project": summary, "tools": [], "factors": dict(FACTORS)}
        for typed in ({}, {"at": "2", "taken": "1"}, {"held": PLACES[3]}):
            calls += [("view", "round", ({**base, "entry": entry, "typed": typed},)) for entry in rounds]
        reading = {"place": PLACES[0], "reading": SAID[seed % len(SAID)], "round": rounds[0]}
        for kind, said in (("round", {"like": rounds[0]}), ("round", {}), ("reading", reading)):
            calls.append(("entries", "draft", (kind, said, summary, dict(TOOLS), dict(FACTORS))))
    outcomes = engine.check(calls)
    assert all("gives" in outcome for outcome in outcomes)


def test_a_reading_against_a_stick_is_refused_with_the_same_words(engine):
    bench = fitted(3)
    read = [entry for entry in bench.history.entries if entry["kind"] in ("reading", "round")]
    spoilt = [
        {**e, "body": {**e["body"], **more}} for e in read for more in ({"stick": "13"}, {"round": 3}, {"like": 3})
    ]
    outcomes = engine.check([("entries", "check", (e, dict(TOOLS), dict(FACTORS))) for e in read + spoilt])
    assert all(entries.check(entry, TOOLS, FACTORS) == "" for entry in read)
    assert sum(outcome["gives"] != "" for outcome in outcomes) > len(read)
