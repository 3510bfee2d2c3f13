"""What stands on what: exactly what depends on a changed reading goes stale, and is worked again in order."""

import os
from fractions import Fraction
from random import Random
from typing import Any

import pytest
from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, invariant, precondition, rule

from tests.core.chain import Bench, Model

KEYS = ("total", "half")


def states(bench: Bench) -> dict[str, str]:
    return {name: held.state for name, held in bench.follow().held.items()}


def sources(bench: Bench) -> list[tuple[str, str]]:
    """Return what gives a number now, as (entry, key)."""
    summary = bench.summary()
    model = Model(summary)
    heads = [head for thing in summary["places"] + summary["sheets"] for head in thing["heads"]]
    keys = [(head["entry"], key) for head in heads for key in (KEYS if "tool" in head else ("reading",))]
    return [(entry, key) for entry, key in keys if model.now(entry, key) is not None]


def forty(seed: int) -> tuple[Bench, dict[str, list[str]]]:
    """Return a bench of 5 readings and 40 sheets, each on up to two numbers before it; and what each stands on."""
    draw = Random(seed)
    bench = Bench()
    names = [bench.keep("reading", place=f"place {n}", reading=str(n + 1)) for n in range(5)]
    on: dict[str, list[str]] = {}
    for number in range(40):
        chosen = [draw.choice(names[-12:] + names[:5]) for _ in range(draw.choice([1, 2]))]
        key = {name: "total" if name in on else "reading" for name in chosen}
        made = bench.sheet(f"sheet {number}", [(name, key[name]) for name in chosen])
        on[made] = chosen
        names.append(made)
    return bench, on


def reached(on: dict[str, list[str]], start: str) -> set[str]:
    found = {start}
    for name, below in on.items():  # sources stand before what stands on them
        if found.intersection(below):
            found.add(name)
    return found - {start}


@pytest.mark.parametrize("seed", range(3))
def test_of_forty_sheets_exactly_those_that_depend_go_stale_and_one_press_works_them_again(seed):
    bench, on = forty(seed)
    assert set(states(bench).values()) == {"holds"}
    reading = bench.history.entries[2]["id"]
    bench.keep("reading", place="place 1", reading="2 9/16 strong")
    stale = {name for name, state in states(bench).items() if state == "stale"}
    assert stale == reached(on, reading)
    assert 0 < len(stale) < 40
    bench.keep("again")
    assert set(states(bench).values()) == {"holds"}
    values = fresh(bench, on)
    assert {name: worth(bench, name) for name in on} == {name: values[name] for name in on}


def fresh(bench: Bench, on: dict[str, list[str]]) -> dict[str, Fraction]:
    """Work all of it by plain sums from the readings as they are now."""
    values: dict[str, Fraction] = {}
    for place in bench.summary()["places"]:
        for item in place["heads"] + place["past"]:
            values[item["entry"]] = Fraction(place["heads"][0]["inches"])
    for name, below in on.items():
        values[name] = sum((values[each] for each in below), Fraction(0))
    return values


def worth(bench: Bench, name: str) -> Fraction:
    return Fraction(str(Model(bench.summary()).now(name, "total")))


def test_what_is_cut_is_a_fact_and_what_stands_on_it_stands_on_what_it_measured():
    bench = Bench()
    reading = bench.keep("reading", place="opening", reading="13 1/16")
    gauge = bench.sheet("gauge", [(reading, "reading")])
    slats = bench.sheet("slats", [(gauge, "total")])
    bench.keep("cut", entry=gauge, measured="13 1/16 scant")
    assert states(bench) == {gauge: "holds", slats: "stale"}
    bench.keep("again")
    bench.keep("reading", place="opening", reading="13 1/8")
    assert list(states(bench).values()) == ["stale", "holds"]
    assert bench.drafts("again", bench.summary()) == []
    assert worth(bench, slats) == Fraction(13) + Fraction(1, 16) - Fraction(1, 128)


@pytest.mark.parametrize("cut_first", [True, False])
def test_a_cut_on_one_phone_holds_against_another_that_worked_again_meanwhile(cut_first):
    bench = Bench()
    reading = bench.keep("reading", place="opening", reading="13")
    slats = bench.sheet("slats", [(reading, "reading")])
    marks = bench.sheet("marks", [(slats, "total")])
    bench.keep("reading", place="opening", reading="14")
    there, here = bench.drafts("again", bench.summary()), bench.drafts("cut", bench.summary(), entry=slats)
    assert len(there) == 2
    for drafts in (here, there) if cut_first else (there, here):
        bench.put(drafts)
    heads = {head["entry"] for thing in bench.summary()["sheets"] for head in thing["heads"]}
    assert slats in heads
    assert len(heads) == 2
    assert worth(bench, slats) == 13
    late = [item for thing in bench.summary()["sheets"] for item in thing["past"] if item["late"]]
    assert [item["called"] for item in late] == ["slats"]
    assert states(bench)[slats] == "stale"
    marks_now = next(h for t in bench.summary()["sheets"] for h in t["heads"] if h["called"] == "marks")
    assert marks_now["entry"] != marks
    assert states(bench)[marks_now["entry"]] == "stale"  # it took the number that does not stand
    bench.keep("again")
    assert worth(bench, marks) == 13


def test_two_phones_that_work_the_same_again_make_no_rivals():
    bench = Bench()
    reading = bench.keep("reading", place="opening", reading="13")
    slats = bench.sheet("slats", [(reading, "reading")])
    bench.keep("reading", place="opening", reading="14")
    twice = [bench.drafts("again", bench.summary()) for _ in range(2)]
    for drafts in twice:
        bench.put(drafts)
    [thing] = bench.summary()["sheets"]
    assert [len(thing["heads"]), thing["thing"]] == [1, slats]
    bench.keep("reading", place="opening", reading="15")
    bench.keep("again")
    assert [len(thing["heads"]) for thing in bench.summary()["sheets"]] == [1]
    assert worth(bench, slats) == 15


def test_a_ring_is_refused_where_it_can_be_seen():
    bench = Bench()
    reading = bench.keep("reading", place="opening", reading="13")
    one = bench.sheet("one", [(reading, "reading")])
    two = bench.sheet("two", [(one, "total")])
    typed = bench.typed_sheet("one", [(two, "total")])
    assert bench.drafts("sheet", bench.summary(), **typed, replaces=one) == []
    assert len(bench.drafts("sheet", bench.summary(), **typed)) == 1


class Chain(RuleBasedStateMachine):
    """Any presses in any order, some of them made on a phone that has not heard of the last ones."""

    def __init__(self) -> None:
        super().__init__()
        self.bench = Bench()
        for number in range(2):
            self.bench.keep("reading", place=f"place {number}", reading=str(number + 3))

    def press(self, kind: str, late: int = 0, **typed: str) -> bool:
        summary = self.bench.summary(max(3, len(self.bench.history.entries) - late))
        made = self.bench.drafts(kind, summary, **typed)
        self.bench.put(made)
        return bool(made)

    def entries(self, kind: str) -> list[str]:
        return [entry["id"] for entry in self.bench.history.entries if entry["kind"] == kind]

    @rule(place=st.integers(0, 4), size=st.integers(1, 30), late=st.sampled_from([0, 0, 0, 3]))
    def measure(self, place: int, size: int, late: int) -> None:
        self.press("reading", late, place=f"place {place}", reading=f"{size}/2")

    @rule(data=st.data(), late=st.sampled_from([0, 2]))
    def withdraw(self, data: st.DataObject, late: int) -> None:
        kinds = ["reading", "sheet", "cut"]
        names = [name for kind in kinds for name in self.entries(kind)]
        self.press("withdrawal", late, entry=data.draw(st.sampled_from(names)))

    @rule(data=st.data())
    def pick(self, data: st.DataObject) -> None:
        names = self.entries("reading") + self.entries("sheet")
        self.press("pick", entry=data.draw(st.sampled_from(names)))

    @rule(data=st.data(), many=st.integers(1, 2))
    def link(self, data: st.DataObject, many: int) -> None:
        found = sources(self.bench)
        if found:
            chosen = [data.draw(st.sampled_from(found)) for _ in range(many)]
            self.bench.sheet(f"sheet {len(self.bench.history.entries)}", chosen)

    @precondition(lambda self: self.entries("sheet"))
    @rule(data=st.data())
    def come_by_sync(self, data: st.DataObject) -> None:
        """Take in a sheet that another phone changed to stand on anything: the ring that it could not see."""
        one = data.draw(st.sampled_from(self.entries("sheet")))
        found = sources(self.bench)
        if found:
            typed = self.bench.typed_sheet("by sync", [data.draw(st.sampled_from(found))])
            made = self.bench.drafts("sheet", self.bench.summary(), **typed)
            self.bench.put([{**each, "replaces": [one]} for each in made])

    @precondition(lambda self: self.entries("sheet"))
    @rule(data=st.data(), measured=st.sampled_from(["", "7 1/4", "9 scant"]), late=st.sampled_from([0, 4]))
    def cut(self, data: st.DataObject, measured: str, late: int) -> None:
        key = data.draw(st.sampled_from(["", "total", "half"]))
        entry = data.draw(st.sampled_from(self.entries("sheet")))
        self.press("cut", late, entry=entry, key=key, measured=measured)

    @rule(late=st.sampled_from([0, 0, 2, 6]))
    def work_again(self, late: int) -> None:
        before = self.cut_heads()
        self.press("again", late)
        assert before <= self.cut_heads(), "what is cut was worked again by itself"
        if late == 0:
            follows = self.bench.follow()
            left = [held for held in follows.of("stale") if not held.cuts]
            assert self.bench.drafts("again", self.bench.summary()) == [], [held.item["called"] for held in left]

    def cut_heads(self) -> set[str]:
        summary = self.bench.summary()
        cut = {head["of"] for thing in summary["cuts"] for head in thing["heads"]}
        return cut & {head["entry"] for thing in summary["sheets"] for head in thing["heads"]}

    @invariant()
    def it_holds_what_the_model_holds(self) -> None:
        summary = self.bench.summary()
        model = Model(summary)
        heads = [head for thing in summary["sheets"] for head in thing["heads"] if head["links"]]
        assert states(self.bench) == {head["entry"]: model.state(head) for head in heads}

    @invariant()
    def what_holds_is_what_a_fresh_sheet_would_say(self) -> None:
        model = Model(self.bench.summary())
        for held in self.bench.follow().of("holds"):
            for source in held.sources:
                assert source.link.inches == model.now(source.link.entry, source.link.key)


MANY = int(os.environ.get("SHOULDERLINE_CHAINS", "20"))  # 500 in the slow setting

Chain.TestCase.settings = settings(max_examples=MANY, stateful_step_count=30, deadline=None)
TestChain: Any = Chain.TestCase
