"""The vectors of readings and marks in the browser's engine, and both sides asked the same."""

import random
from fractions import Fraction

import pytest

from tests.core.drawn_readings import DRAWS, draws
from tests.core.places import SETTINGS, setting_of
from tests.vectors import cases
from webapp.core.mark import exact

pytestmark = pytest.mark.browser
READERS = {
    "length": ("reading", "read"),
    "widths": ("reading", "read_list"),
    "count": ("reading", "read_count"),
    "pair": ("reading_pairs", "read_pair"),
    "run": ("reading_pairs", "read_run"),
    "lines": ("reading_lines", "read_lines"),
}


def reader_call(case):
    kind = case.get("read", "length")
    module, function = READERS[kind]
    more = [] if kind in ("count", "lines") else [setting_of(case)]
    sign = [case["sign"]] if "sign" in case else []
    return module, function, (case["text"], *more, *sign)


def test_readings_in_the_browsers_engine(engine):
    """What CPython's own tests hold to the vectors, the engine gives too: value, place and sentence."""
    vectors = cases("readings")
    outcomes = engine.check([reader_call(case) for case in vectors])
    for case, outcome in zip(vectors, outcomes, strict=True):
        assert ("at" in case) is ("raises" in outcome), case
        if "at" in case:
            assert outcome["raises"] == "ReadingError"
            assert outcome["has"]["position"] == case["at"]
            assert case["says"] in outcome["has"]["reason"]
        elif case.get("read", "length") == "length":
            top, bottom = outcome["gives"]["fraction"]
            assert exact(Fraction(int(top), int(bottom))) == case["inches"]


def test_marks_in_the_browsers_engine(engine):
    vectors = cases("marks")
    calls = [
        (Fraction(c["inches"]), setting_of(c), Fraction(c["division"]) if "division" in c else None) for c in vectors
    ]
    outcomes = engine.check([("mark", "mark", call) for call in calls])
    assert [outcome["gives"] for outcome in outcomes] == [case["mark"] for case in vectors]
    engine.check([("mark", "length", call) for call in calls])
    said = [case["mark"] for case in vectors]
    engine.check([("mark", "spoken", (text,)) for text in said] + [("mark", "mark_parts", (text,)) for text in said])


def test_marks_of_any_length_are_the_same_in_both_places(engine):
    chance = random.Random(20)
    lengths = [Fraction(chance.randint(-(10**6), 10**6), chance.choice([7, 64, 127, 4096, 25400])) for _ in range(2000)]
    engine.check([("mark", "length", (x, chance.choice(SETTINGS))) for x in lengths])
    engine.check([("mark", "mixed", (x,)) for x in lengths[:200]])


def test_names_fold_alike_in_both_places(engine):
    texts = ["  Upper\u00a0 Rail,\tleft ", "İ ſ K É", "🙂 A", "", "A\r\nb\n"]
    calls = [("text", name, (text,)) for name in ("trim", "small", "fold_name", "lines") for text in texts]
    engine.check(calls)


def test_drawn_readings_are_the_same_in_both_places(engine):
    """The same texts as tests/core/test_reading_fuzz.py draws: value, place and sentence are equal."""
    drawn = list(draws(DRAWS, seed=1909))
    accepted = 0
    for start in range(0, len(drawn), 5000):
        outcomes = engine.check([("reading", "read", each) for each in drawn[start : start + 5000]])
        accepted += sum("gives" in outcome for outcome in outcomes)
    assert accepted >= DRAWS * 0.3


def test_drawn_lists_and_counts_are_the_same_in_both_places(engine):
    drawn = list(draws(DRAWS // 5, seed=1910))
    texts = [
        f"{first[0]}; {second[0]}, {third[0]}"
        for first, second, third in zip(drawn, drawn[1:], drawn[2:], strict=False)
    ]
    engine.check([("reading", "read_list", (text, how)) for text, (_, how) in zip(texts, drawn, strict=False)])
    engine.check([("reading", "read_count", (text,)) for text, _ in drawn])
    engine.check([("reading_pairs", "read_run", (f"{text} x 8", how)) for text, how in drawn])
