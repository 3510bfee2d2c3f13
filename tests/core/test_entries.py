from random import Random
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.core.histories import JUNK, History, at_random, uid
from webapp.core import entries, fold
from webapp.core.entries_exact import from_exact
from webapp.core.entries_frame import BODY_ROOM, DEEPEST, KEYS, LARGEST, MOST_REPLACED
from webapp.core.entries_kinds import TEXTS
from webapp.core.entries_text import NAME, NOTE, WHY, is_identity, is_instant
from webapp.core.mark import exact
from webapp.tools import TOOLS
from webapp.units import FACTORS

SPACING = {"tool": "spacing", "span": "30", "slat": "2 1/2", "count": "7"}


class Bench:
    """A project that grows by what a maker types."""

    def __init__(self) -> None:
        self.history = History()
        self.history.project()

    @property
    def summary(self) -> dict[str, Any]:
        return fold.summary_of(self.history.entries)

    def draft(self, kind: str, **typed: str) -> dict[str, Any]:
        return entries.draft(kind, typed, self.summary, TOOLS, FACTORS)

    def keep(self, kind: str, **typed: str) -> str:
        drafted = self.draft(kind, **typed)
        assert "errors" not in drafted, drafted
        body = drafted["body"] | ({"engine": "1", "digest": "0" * 64} if kind == "sheet" else {})
        name = self.history.add(kind, body, drafted["replaces"])
        assert entries.check(self.history.entries[-1], TOOLS, FACTORS) == ""
        return name

    def heads(self, things: str = "places") -> list[str]:
        return [head["entry"] for thing in self.summary[things] for head in thing["heads"]]


@pytest.fixture
def bench() -> Bench:
    return Bench()


def errors(drafted: dict[str, Any]) -> dict[str, str]:
    found: dict[str, str] = drafted["errors"]
    return found


def checked(entry: Any) -> str:
    return entries.check(entry, TOOLS, FACTORS)


# Drafts


def test_a_project_takes_inches_where_nothing_is_said():
    drafted = entries.draft("project", {"name": " Bed in ash\t"}, None, TOOLS, FACTORS)
    assert drafted == {
        "kind": "project",
        "body": {"name": "Bed in ash", "unit": "in", "graduation": "1/32"},
        "replaces": [],
    }


def test_every_error_of_a_form_is_said_at_once_in_the_order_of_its_fields():
    typed = {"name": "", "unit": "cubit", "graduation": ""}
    assert list(errors(entries.draft("project", typed, None, TOOLS, FACTORS))) == ["name", "unit"]


def test_a_reading_keeps_its_text_its_exact_value_and_the_graduation_it_was_said_at(bench):
    drafted = bench.draft("reading", place="Left post", reading=" 17 3/8 strong ", note="a\r\n b \r\n")
    assert drafted["body"] == {
        "place": "Left post",
        "text": "17 3/8 strong",
        "inches": "2225/128",
        "unit": "in",
        "graduation": "1/32",
        "note": "a\n b",
    }


def test_a_reading_replaces_what_stands_at_its_place_however_it_is_spelt(bench):
    first = bench.keep("reading", place="Left Post", reading="1")
    bench.keep("reading", place="Right post", reading="1")
    assert bench.draft("reading", place="left  post", reading="2")["replaces"] == [first]


def test_a_reading_replaces_all_rivals_at_its_place(bench):
    one, other = bench.history.reading("rail"), bench.history.reading("rail")
    assert bench.draft("reading", place="rail", reading="2")["replaces"] == [one, other]


@pytest.mark.parametrize(
    ("typed", "field"),
    [
        ({"place": "", "reading": "1"}, "place"),
        ({"place": " \u00a0", "reading": "1"}, "place"),
        ({"place": "x" * (NAME + 1), "reading": "1"}, "place"),
        ({"place": "a\nb", "reading": "1"}, "place"),
        ({"place": "a\ud800", "reading": "1"}, "place"),
        ({"place": "rail"}, "reading"),
        ({"place": "rail", "reading": "3/0"}, "reading"),
        ({"place": "rail", "reading": "-1/16"}, "reading"),
        ({"place": "rail", "reading": "1", "note": "x" * (NOTE + 1)}, "note"),
        ({"place": "rail", "reading": "1", "note": "a\x00"}, "note"),
    ],
)
def test_what_is_wrong_with_a_reading_stands_at_its_field(bench, typed, field):
    assert list(errors(bench.draft("reading", **typed))) == [field]


def test_a_withdrawal_replaces_what_it_takes_back(bench):
    reading = bench.keep("reading", place="rail", reading="1")
    assert bench.draft("withdrawal", entry=reading, why="bent rule") == {
        "kind": "withdrawal",
        "body": {"entry": reading, "why": "bent rule"},
        "replaces": [reading],
    }
    bench.keep("withdrawal", entry=reading)
    assert bench.heads() == []
    assert list(errors(bench.draft("withdrawal", entry=reading))) == ["entry"]


def test_one_of_two_rivals_is_withdrawn_and_the_other_stands(bench):
    one, other = bench.history.reading("rail"), bench.history.reading("rail")
    bench.keep("withdrawal", entry=one)
    assert bench.heads() == [other]


def test_a_pick_settles_rivals_and_what_follows_replaces_the_pick(bench):
    one, other = bench.history.reading("rail"), bench.history.reading("rail")
    pick = bench.keep("pick", entry=other)
    assert bench.heads() == [other]
    assert bench.draft("reading", place="rail", reading="3")["replaces"] == [pick]
    assert list(errors(bench.draft("pick", entry=other))) == ["entry"]
    bench.keep("withdrawal", entry=other)
    assert bench.heads() == []
    bench.keep("pick", entry=one)
    assert bench.heads() == [one]


def test_a_withdrawn_reading_is_taken_back_by_a_pick(bench):
    reading = bench.keep("reading", place="rail", reading="1")
    bench.keep("withdrawal", entry=reading)
    bench.keep("pick", entry=reading)
    assert bench.heads() == [reading]
    assert not bench.summary["places"][0]["heads"][0]["withdrawn"]


def test_a_note_replaces_nothing(bench):
    reading = bench.keep("reading", place="rail", reading="1")
    assert bench.draft("note", entry=reading, text=" bowed ")["replaces"] == []
    bench.keep("note", entry=reading, text="bowed")
    assert [note["text"] for note in bench.summary["places"][0]["heads"][0]["notes"]] == ["bowed"]


@pytest.mark.parametrize("kind", ["withdrawal", "note", "pick"])
@pytest.mark.parametrize("entry", ["", "nonsense", uid(999)])
def test_what_is_said_of_something_that_is_not_here_is_an_error(bench, kind, entry):
    assert list(errors(bench.draft(kind, entry=entry, text="x"))) == ["entry"]


def test_settings_hold_only_what_changes(bench):
    typed = {"name": "Settee", "unit": "in", "graduation": "1/32", "archived": "no"}
    assert bench.draft("settings", **typed)["body"] == {"name": "Settee"}
    assert bench.draft("settings", archived="yes")["body"] == {"archived": True}
    assert bench.draft("settings", graduation="1/64")["body"] == {"unit": "in", "graduation": "1/64"}


def test_a_changed_unit_brings_its_own_graduation(bench):
    assert bench.draft("settings", unit="mm")["body"] == {"unit": "mm", "graduation": "0.5 mm"}


@pytest.mark.parametrize(
    ("typed", "field"),
    [
        ({"name": ""}, "name"),
        ({}, "name"),
        ({"name": "Bed in ash"}, "name"),
        ({"unit": "mm", "graduation": "1/32"}, "graduation"),
        ({"archived": "perhaps"}, "archived"),
    ],
)
def test_what_is_wrong_with_settings_stands_at_its_field(bench, typed, field):
    assert list(errors(bench.draft("settings", **typed))) == [field]


def test_a_sheet_keeps_what_was_typed_and_never_the_answer(bench):
    assert bench.draft("sheet", **SPACING, gap=" ") == {
        "kind": "sheet",
        "body": {
            "tool": "spacing",
            "called": TOOLS["spacing"].title,
            "inputs": {"span": "30", "slat": "2 1/2", "count": "7"},
            "links": [],
            "unit": "in",
            "graduation": "1/32",
        },
        "replaces": [],
    }


def test_a_sheet_takes_the_projects_unit_and_graduation_where_none_is_named(bench):
    bench.keep("settings", unit="mm", graduation="1 mm")
    drafted = bench.draft("sheet", tool="spacing", span="760", slat="60", count="7")
    assert (drafted["body"]["unit"], drafted["body"]["graduation"]) == ("mm", "1 mm")
    named = bench.draft("sheet", **SPACING, unit="in")
    assert (named["body"]["unit"], named["body"]["graduation"]) == ("in", "1/32")


def test_a_changed_sheet_replaces_the_one_it_was_changed_from(bench):
    first = bench.keep("sheet", **SPACING)
    second = bench.keep("sheet", **SPACING | {"count": "6"}, replaces=first)
    assert bench.heads("sheets") == [second]
    rival = bench.keep("sheet", **SPACING | {"count": "5"}, replaces=first)
    assert bench.heads("sheets") == [second, rival]
    bench.keep("pick", entry=second)
    last = bench.keep("sheet", **SPACING | {"count": "4"}, replaces=second)
    assert bench.heads("sheets") == [last]


def test_a_sheet_that_cannot_be_worked_says_why_at_its_fields(bench):
    assert list(errors(bench.draft("sheet", tool="spacing", span="", slat="2", count="x"))) == ["span", "count"]
    assert list(errors(bench.draft("sheet", **SPACING | {"tool": "lathe"}))) == ["tool"]
    assert list(errors(bench.draft("sheet", **SPACING, called="x" * (NAME + 1)))) == ["called"]


@pytest.mark.parametrize("kind", ["", "later", "__class__"])
def test_a_kind_that_no_form_makes_is_an_error(bench, kind):
    assert list(errors(bench.draft(kind))) == ["kind"]


@pytest.mark.parametrize("kind", ["settings", "reading", "withdrawal", "note", "pick"])
def test_nothing_is_said_in_a_project_that_is_not_here(kind):
    typed = {"name": "x", "place": "x", "reading": "1", "entry": uid(2), "text": "x"}
    assert "errors" in entries.draft(kind, typed, None, TOOLS, FACTORS)


# Checks


CONDITION = {"place": "stack", "quantity": "moisture", "text": "8.5", "value": "17/2", "unit": "%"}


def sound() -> dict[str, dict[str, Any]]:
    """Return one entry of every kind that passes."""
    bench = Bench()
    reading = bench.keep("reading", place="rail", reading="58 3/8 strong", note="bowed")
    bench.keep("note", entry=reading, text="bowed")
    bench.keep("withdrawal", entry=reading, why="bent rule")
    bench.keep("pick", entry=reading)
    bench.keep("settings", name="Settee", graduation="1/16", archived="yes")
    kept = bench.keep("sheet", **SPACING)
    bench.keep("part", name="upper rail", width="5 1/2", faces="lower")
    bench.keep("part", name="slat", count="9", spare="2", wood="ash", tenon="15/16")
    bench.keep("joint", number="3", one="Upper rail", other="slat", tenon="blind")
    bench.keep("cut", entry=kept, key="gap", measured="2 scant")
    bench.keep("done", step="stage dry fit")
    bench.history.add("round", {"called": "Dry fit", "places": ["upper rail, left"]})
    bench.history.add("condition", CONDITION)
    bench.history.add("later", {"deep": [{"er": [1, None, True, "x"]}]})
    return {entry["kind"]: entry for entry in bench.history.entries}


SOUND = sound()


def test_a_sound_entry_of_every_kind_passes():
    assert set(SOUND) == {*TEXTS, "later"}
    assert [kind for kind, entry in SOUND.items() if checked(entry)] == []


@pytest.mark.parametrize("kind", list(SOUND))
@pytest.mark.parametrize("key", KEYS)
def test_a_frame_must_be_whole(kind, key):
    assert checked({name: part for name, part in SOUND[kind].items() if name != key}) == f"The entry lacks {key}."


@pytest.mark.parametrize("kind", list(SOUND))
@pytest.mark.parametrize("key", KEYS)
@pytest.mark.parametrize("junk", JUNK, ids=repr)
def test_junk_in_a_frame_is_refused(kind, key, junk):
    entry = {**SOUND[kind], key: junk}
    lenient = (key == "replaces" and junk == [] and kind != "withdrawal") or (
        (key, junk) in (("by", "x"), ("kind", "x")) and kind != "project"
    )
    later = kind == "later" and key == "body" and isinstance(junk, dict)
    started = kind == "project" and (key, junk) in (("by", "x"),)
    assert (checked(entry) == "") == (lenient or later or started)


@pytest.mark.parametrize("entry", [*JUNK, [SOUND], "id"], ids=repr)
def test_what_is_no_entry_is_refused(entry):
    assert checked(entry) != ""


NAMED = [(kind, name) for kind in TEXTS for name in TEXTS[kind]]


@pytest.mark.parametrize(("kind", "name"), NAMED)
@pytest.mark.parametrize("junk", [7, True, None, [], {}, "\ud800"], ids=repr)
def test_junk_in_a_body_is_refused(kind, name, junk):
    entry = SOUND[kind]
    assert checked({**entry, "body": {**entry["body"], name: junk}}) != ""


@pytest.mark.parametrize(
    ("kind", "change"),
    [
        ("project", {"name": " "}),
        ("project", {"unit": "cubit"}),
        ("project", {"graduation": ""}),
        ("project", {"unit": "mm"}),
        ("settings", {"unit": "mm"}),
        ("settings", {"graduation": 3}),
        ("settings", {"archived": "yes"}),
        ("settings", {"archived": 1}),
        ("settings", {"name": "x" * (NAME + 1)}),
        ("reading", {"place": "\t"}),
        ("reading", {"text": "58 3/8"}),
        ("reading", {"text": "58 3/8 x"}),
        ("reading", {"inches": "14946/256"}),
        ("reading", {"inches": "1e9"}),
        ("reading", {"graduation": "1/64"}),
        ("reading", {"note": 3}),
        ("reading", {"note": "x" * (NOTE + 1)}),
        ("withdrawal", {"entry": "x"}),
        ("withdrawal", {"why": 3}),
        ("withdrawal", {"why": "x" * (WHY + 1)}),
        ("note", {"text": " "}),
        ("note", {"text": "x" * (NOTE + 1)}),
        ("sheet", {"tool": "lathe"}),
        ("sheet", {"inputs": {}}),
        ("sheet", {"inputs": {"span": " 30", "slat": "2 1/2", "count": "7"}}),
        ("sheet", {"inputs": {"slat": "2 1/2", "span": "30", "count": "7"}}),
        ("sheet", {"inputs": {"span": "30", "slat": "2 1/2", "count": "7", "unit": "mm"}}),
        ("sheet", {"inputs": {"span": 30}}),
        ("sheet", {"links": None}),
        ("sheet", {"links": ["x"]}),
        ("sheet", {"digest": "0" * 63}),
        ("sheet", {"digest": "G" * 64}),
        ("sheet", {"engine": ""}),
        ("sheet", {"called": "a\nb"}),
    ],
)
def test_a_body_that_says_something_else_is_refused(kind, change):
    entry = SOUND[kind]
    assert checked({**entry, "body": {**entry["body"], **change}}) != ""


@pytest.mark.parametrize("body", [{}, {"later": 1}, {"unit": "in"}, {"graduation": "1/32"}])
def test_settings_change_something_and_unit_and_graduation_together(body):
    assert checked({**SOUND["settings"], "body": body}) != ""


def test_a_withdrawal_must_replace_something():
    assert checked({**SOUND["withdrawal"], "replaces": []}) != ""


@pytest.mark.parametrize("kind", list(TEXTS))
def test_what_a_newer_version_adds_to_a_body_is_kept(kind):
    entry = SOUND[kind]
    assert checked({**entry, "body": {**entry["body"], "later": [1]}}) == ""


@pytest.mark.parametrize("value", [1.5, float("nan"), LARGEST + 1, -LARGEST - 1, "\udc00", {1: 2}, (1,), b"x"])
def test_what_json_cannot_carry_safely_is_refused_in_any_body(value):
    assert checked({**SOUND["later"], "body": {"x": [value]}}) != ""
    assert checked({**SOUND["later"], "body": {"x": [LARGEST, -LARGEST]}}) == ""


def test_a_body_has_a_depth_and_a_length():
    def nested(deep: int) -> Any:
        return {"x": nested(deep - 1)} if deep else "x"

    assert checked({**SOUND["later"], "body": nested(DEEPEST)}) == ""
    assert checked({**SOUND["later"], "body": nested(DEEPEST + 1)}) != ""
    assert checked({**SOUND["later"], "body": {"x": "x" * (BODY_ROOM - 2)}}) == ""
    assert checked({**SOUND["later"], "body": {"x": "x" * (BODY_ROOM - 1)}}) != ""


def test_an_entry_replaces_a_bounded_number_each_once_and_never_itself():
    entry = SOUND["later"]
    assert checked({**entry, "replaces": [uid(1000 + n) for n in range(MOST_REPLACED)]}) == ""
    assert checked({**entry, "replaces": [uid(1000 + n) for n in range(MOST_REPLACED + 1)]}) != ""
    assert checked({**entry, "replaces": [uid(1000), uid(1000)]}) != ""
    assert checked({**entry, "replaces": [entry["id"]]}) != ""


def test_a_project_has_the_id_of_its_first_entry_and_no_other_entry_has():
    assert checked({**SOUND["project"], "project": uid(500)}) != ""
    assert checked({**SOUND["reading"], "id": SOUND["reading"]["project"]}) != ""


@pytest.mark.parametrize(
    "text",
    [
        "01900000-0000-7000-8000-00000000000",
        "01900000-0000-7000-8000-0000000000000",
        "01900000-0000-4000-8000-000000000000",
        "01900000-0000-7000-c000-000000000000",
        "01900000-0000-7000-8000-00000000000A",
        "01900000-0000-7000-8000-00000000000g",
        "01900000x0000-7000-8000-000000000000",
        "",
    ],
)
def test_an_id_is_a_lower_case_uuid_of_version_7(text):
    assert not is_identity(text)
    assert is_identity("01900000-0000-7abc-bdef-000000000000")


@pytest.mark.parametrize(
    "text",
    [
        "2026-02-29T00:00:00.000Z",
        "2100-02-29T00:00:00.000Z",
        "2026-13-01T00:00:00.000Z",
        "2026-00-01T00:00:00.000Z",
        "2026-04-31T00:00:00.000Z",
        "2026-01-00T00:00:00.000Z",
        "2026-01-01T24:00:00.000Z",
        "2026-01-01T00:60:00.000Z",
        "2026-01-01T00:00:60.000Z",
        "2026-01-01T00:00:00.00Z",
        "2026-01-01T00:00:00.000",
        "2026-01-01t00:00:00.000Z",
        "2026-01-01T00:00:00.000+01:00",
        "٢٠٢٦-01-01T00:00:00.000Z",
    ],
)
def test_a_time_is_a_real_one_in_utc_with_milliseconds(text):
    assert not is_instant(text)


@pytest.mark.parametrize("text", ["2024-02-29T23:59:59.999Z", "2000-02-29T00:00:00.000Z", "2026-12-31T00:00:00.000Z"])
def test_a_time_that_there_is_passes(text):
    assert is_instant(text)


# Laws


@given(st.fractions())
def test_an_exact_value_comes_back_from_its_text(value):
    assert from_exact(exact(value)) == value or len(exact(value)) > 80


@given(st.text(max_size=12))
def test_an_exact_text_is_in_lowest_terms_or_none(text):
    found = from_exact(text)
    assert found is None or exact(found) == text


@given(st.randoms(use_true_random=False))
def test_no_entry_at_all_makes_the_check_raise(random: Random):
    for entry in at_random(random):
        assert isinstance(checked(entry), str)


@given(st.randoms(use_true_random=False))
def test_no_state_at_all_makes_a_draft_raise_and_every_draft_passes_the_check(random: Random):
    history = History()
    history.project()
    summary = fold.summary_of(history.entries + at_random(random))
    shown = [i["entry"] for t in summary["places"] + summary["sheets"] for i in t["heads"] + t["past"]]
    typed = {
        "name": "Bench",
        "place": random.choice(["rail", "Span, left"]),
        "reading": "1 1/2",
        "entry": random.choice([*shown, "x"]),
        "text": "seen",
        "replaces": " ".join(random.choices([*shown, "x", ""], k=2)),
        "shop-least_length": random.choice(["", "14", "none", "x"]),
        **SPACING,
        "unit": "in",
        "graduation": "1/16",
    }
    made = [entries.draft(kind, typed, summary, TOOLS, FACTORS) for kind in entries.DRAFTS]
    for number, drafted in enumerate([part for draft in made for part in [draft, *draft.pop("also", [])]]):
        if "errors" not in drafted:
            body = drafted["body"] | ({"engine": "1", "digest": "0" * 64} if drafted["kind"] == "sheet" else {})
            name = history.id if drafted["kind"] == "project" else uid(7000 + number)
            frame = {"id": name, "project": history.id, "made_at": "2026-11-25T10:17:35.123Z", "by": "x"}
            assert checked({**drafted, **frame, "body": body}) == ""
