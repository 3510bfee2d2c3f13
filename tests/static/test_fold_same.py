"""The fold and the making of entries, in CPython and in the browser's engine: the same to the character."""

import json
from random import Random
from typing import Any

from tests.core.histories import JUNK, History, at_random
from webapp.core import fold
from webapp.core.entries import DRAFTS
from webapp.tools import TOOLS
from webapp.units import FACTORS

# The phone's own way: plain entries out of its store, folded one by one, in the order that they lie there.
FOLD = """async (histories) => {
    const { toPython, json } = await import("/static/engine/python.js");
    const { start, add, summary, summaries } = await import("/static/engine/core/fold.js");
    return JSON.parse(histories).map((entries) => {
        const state = start();
        for (const entry of toPython(entries)) add(state, entry);
        return [json(summary(state)), json(summaries(toPython(entries)))];
    });
}"""
TEXTS = ("58 3/8", "2 1/2 strong", "-1", "", "1 ft 2 in", "x", "é\u2009", "\ud800", "x" * 90, "a\nb", "𝔘 3")


def packed(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))


def shuffled(seed: int) -> list[dict[str, Any]]:
    random = Random(seed)
    other = History(500)
    other.project("Ŝettee “𝔘”")
    entries = [*at_random(random), *other.entries]
    random.shuffle(entries)
    return entries


def test_the_fold_of_any_history_is_the_same_on_the_phone(engine):
    histories = [shuffled(seed) for seed in range(400)]
    there = engine.run(FOLD, json.dumps(histories))
    here = [[packed(fold.summary_of(h)), packed(fold.summaries(h))] for h in histories]
    for seed, (said, wanted) in enumerate(zip(there, here, strict=True)):
        assert said == wanted, f"history {seed}"
    assert sum('heads":[{' in both for _, both in here) > 200


def typed(random: Random, shown: list[str]) -> dict[str, str]:
    """Fill the fields of all forms, well or badly."""
    good = {
        "name": "Settee",
        "unit": random.choice(["", "in", "mm", "cubit"]),
        "graduation": random.choice(["", "1/16", "1 mm", "1/7"]),
        "archived": random.choice(["yes", "no", ""]),
        "shop-least_length": random.choice(["14", "350 mm", "none", ""]),
        "place": random.choice(["rail", "SPAN,  left"]),
        "reading": random.choice(["58 3/8", "2 1/2 strong", "45.5 mm"]),
        "entry": random.choice([*shown, "x"]),
        "why": "",
        "text": "one\r\n two \n",
        "tool": "spacing",
        "replaces": " ".join(random.choices([*shown, ""], k=2)),
        "span": "30",
        "slat": "2 1/2",
        "count": "7",
    }
    return {name: random.choice(TEXTS) if random.random() < 0.08 else text for name, text in good.items()}


def drafts(seed: int) -> list[tuple[str, str, Any]]:
    random = Random(seed)
    history = History()
    history.project()
    summary = fold.summary_of(history.entries + at_random(random))
    shown = [i["entry"] for t in summary["places"] + summary["sheets"] for i in t["heads"] + t["past"]]
    about = summary if random.random() < 0.95 else None
    return [
        ("entries", "draft", (kind, typed(random, shown), about, dict(TOOLS), dict(FACTORS)))
        for kind in [*DRAFTS, "later"]
    ]


def test_an_entry_made_from_any_form_is_the_same_on_the_phone(engine):
    calls = [call for seed in range(40) for call in drafts(seed)]
    outcomes = engine.check(calls)
    made = sum("body" in dict(outcome["gives"]["dict"]) for outcome in outcomes)
    assert made > len(calls) // 4
    assert len(calls) - made > len(calls) // 4


def test_an_entry_is_refused_with_the_same_words_on_the_phone(engine):
    entries = [entry for seed in range(60) for entry in at_random(Random(seed))]
    outcomes = engine.check([("entries", "check", (e, dict(TOOLS), dict(FACTORS))) for e in [*entries, *JUNK]])
    assert {bool(outcome["gives"]) for outcome in outcomes} == {True, False}
