"""A project like another one: its settings and its sheets as they stand, none of its readings."""

from random import Random
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.core.histories import History, at_random, uid
from webapp.core import entries, fold
from webapp.core.entries_numbered import numbered, sibling
from webapp.core.entries_text import is_identity
from webapp.tools import TOOLS
from webapp.units import FACTORS

SPACING = {"span": "30", "slat": "2 1/2", "count": "7"}
NEW = uid(9000)


def sheet(history: History, called: str, replaces: tuple[str, ...] = (), **changes: Any) -> str:
    body = {"tool": "spacing", "called": called, "inputs": dict(SPACING), "links": [], "unit": "in"}
    stamp = {"graduation": "1/32", "engine": "1", "digest": "0" * 64}
    return history.add("sheet", {**body, **stamp, **changes}, replaces)


def like(history: History, name: str = "Bed in oak") -> dict[str, Any]:
    return entries.draft("like", {"name": name}, fold.summary_of(history.entries), TOOLS, FACTORS)


def kept(drafted: dict[str, Any]) -> list[dict[str, Any]]:
    """Return the entries as an edge makes them."""
    frame = {"project": NEW, "made_at": "2026-11-25T10:17:35.123Z", "by": "x"}
    seen = {"engine": "1", "digest": "0" * 64}
    made = []
    for number, draft in enumerate(numbered(drafted, NEW)):
        body = draft["body"] | (seen if draft["kind"] == "sheet" else {})
        made.append({**draft, "body": body, **frame, "counter": number + 1})
    return made


@pytest.fixture
def history() -> History:
    made = History()
    made.project(unit="in", graduation="1/16")
    return made


def test_settings_shop_and_sheets_go_along_and_readings_do_not(history: History) -> None:
    history.reading("rail")
    history.add("settings", {"unit": "mm", "graduation": "1 mm"})
    shop = {"least_length": {"text": "14", "unit": "in", "graduation": "1/16"}}
    history.add("settings", {"shop": shop, "archived": True})
    sheet(history, "Slats")
    made = fold.summary_of(kept(like(history)))
    assert (made["name"], made["unit"], made["graduation"]) == ("Bed in oak", "mm", "1 mm")
    assert (made["shop"], made["archived"], made["places"]) == (shop, False, [])
    (thing,) = made["sheets"]
    (head,) = thing["heads"]
    assert (head["called"], head["inputs"], head["unit"], head["graduation"]) == ("Slats", SPACING, "in", "1/32")
    assert thing["past"] == []


def test_a_sheet_goes_as_it_stands_and_a_withdrawn_one_stays(history: History) -> None:
    first = sheet(history, "Slats")
    sheet(history, "Slats", (first,), inputs={**SPACING, "count": "8"})
    history.withdrawal(sheet(history, "Gone"))
    drafted = like(history)
    assert [draft["body"]["inputs"]["count"] for draft in drafted["also"]] == ["8"]
    assert [draft["replaces"] for draft in drafted["also"]] == [[]]


def test_rivals_go_both(history: History) -> None:
    first = sheet(history, "Slats")
    sheet(history, "Slats", (first,), inputs={**SPACING, "count": "8"})
    sheet(history, "Slats", (first,), inputs={**SPACING, "count": "9"})
    assert [draft["body"]["inputs"]["count"] for draft in like(history)["also"]] == ["8", "9"]


def test_a_sheet_that_cannot_be_worked_here_stays_with_its_project(history: History) -> None:
    sheet(history, "Newer", tool="nothing")
    sheet(history, "Slats")
    assert [draft["body"]["called"] for draft in like(history)["also"]] == ["Slats"]


def test_a_name_is_asked_for_and_a_project(history: History) -> None:
    assert list(like(history, " ")["errors"]) == ["name"]
    assert list(entries.draft("like", {"name": "Bed"}, None, TOOLS, FACTORS)["errors"]) == ["name"]


def test_every_entry_of_it_is_one_that_is_kept(history: History) -> None:
    history.add("settings", {"shop": {"turn": {"text": "1/16", "unit": "in", "graduation": "1/16"}}})
    sheet(history, "Slats")
    made = kept(like(history))
    assert [entry["kind"] for entry in made] == ["project", "settings", "sheet"]
    assert [entries.check({k: v for k, v in e.items() if k != "counter"}, TOOLS, FACTORS) for e in made] == [""] * 3


@given(st.randoms(use_true_random=False))
def test_no_state_makes_it_raise_and_what_it_makes_stands(random: Random) -> None:
    begun = History()
    begun.project()
    begun.entries += at_random(random)
    made = kept(like(begun))
    assert len(fold.summary_of(made)["sheets"]) == sum(entry["kind"] == "sheet" for entry in made)
    assert all(entries.check(entry, TOOLS, FACTORS) == "" for entry in made)


@given(st.integers(0, 2**16 - 1))
def test_siblings_are_ids_of_their_own(tail: int) -> None:
    first = f"01900000-0000-7000-8000-00000000{tail:04x}"
    found = [sibling(first, number) for number in range(300)]
    assert found[0] == first
    assert len(set(found)) == 300
    assert all(is_identity(name) for name in found)


def part(history: History, name: str, replaces: tuple[str, ...] = (), **changes: Any) -> str:
    measures = {"width": {"text": "5 1/2", "inches": "11/2", "unit": "in", "graduation": "1/32"}}
    body = {"name": name, "count": 2, "spare": 0, "wood": "ash", "faces": "", "measures": measures, "links": []}
    return history.add("part", {**body, **changes}, replaces)


def link(field: str, entry: str, key: str, inches: str) -> dict[str, str]:
    return {"field": field, "line": "", "entry": entry, "key": key, "inches": inches}


def ids(made: list[dict[str, Any]], kind: str) -> list[str]:
    return [entry["id"] for entry in made if entry["kind"] == kind]


def test_links_among_parts_and_sheets_lead_to_the_copies_and_those_to_readings_fall_away(history: History) -> None:
    reading = history.reading("rail")
    rail = part(history, "rail")
    rail = part(history, "rail", (rail,))
    first = sheet(
        history,
        "Span",
        (),
        inputs={"span": "11/2 in", "slat": "1", "count": "2"},
        links=[link("span", rail, "width", "11/2")],
    )
    text = {"text": "467/8 in", "inches": "467/8", "unit": "in", "graduation": "1/32"}
    linked = [link("shoulder", first, "gap", "1/2"), link("width", reading, "reading", "467/8")]
    part(
        history,
        "slat",
        (),
        measures={"width": text, "shoulder": {**text, "text": "1/2", "inches": "1/2"}},
        links=linked,
    )
    made = kept(like(history))
    (copied,) = ids(made, "sheet")
    bodies = [entry["body"] for entry in made if entry["kind"] in ("part", "sheet")]
    assert [[each["entry"] for each in body["links"]] for body in bodies] == [[], [copied], [ids(made, "part")[0]]]
    assert bodies[1]["measures"]["width"]["text"] == "467/8 in"
    assert bodies[2]["inputs"]["span"] == "11/2 in"


def test_a_link_to_what_was_replaced_leads_to_what_stands_and_one_to_the_wood_as_built_falls_away(
    history: History,
) -> None:
    old = part(history, "rail")
    part(history, "rail", (old,))
    linked = [link("span", old, "width", "11/2"), link("slat", old, "built-width", "5/2")]
    sheet(history, "Span", (), inputs={"span": "11/2 in", "slat": "5/2 in", "count": "2"}, links=linked)
    made = kept(like(history))
    (body,) = [entry["body"] for entry in made if entry["kind"] == "sheet"]
    assert body["links"] == [link("span", ids(made, "part")[0], "width", "11/2")]


def test_joints_go_along_between_the_copies_and_one_of_a_part_that_is_gone_stays(history: History) -> None:
    post, rail, gone = part(history, "post"), part(history, "rail"), part(history, "brace")
    post_now = part(history, "post", (post,))
    history.withdrawal(gone)
    for number, (one, other) in enumerate([(rail, post), (rail, gone), (post_now, rail)]):
        history.add("joint", {"number": str(number), "parts": [one, other], "tenon": "through", "pins": ""})
    summary = fold.summary_of(kept(like(history)))
    names = {head["entry"]: head["name"] for thing in summary["parts"] for head in thing["heads"]}
    joints = [head for thing in summary["joints"] for head in thing["heads"]]
    assert [(j["number"], [names[entry] for entry in j["parts"]]) for j in joints] == [
        ("0", ["rail", "post"]),
        ("2", ["post", "rail"]),
    ]
    assert [(thing["heads"][0]["count"], thing["heads"][0]["wood"]) for thing in summary["parts"]] == [(2, "ash")] * 2
