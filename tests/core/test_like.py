"""A project like another one: its settings and its sheets as they stand, none of its readings."""

from random import Random
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.core.histories import History, at_random, uid
from webapp.core import entries, fold
from webapp.core.entries_like import sibling
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
    for number, draft in enumerate([drafted, *drafted["also"]]):
        body = draft["body"] | (seen if draft["kind"] == "sheet" else {})
        parts = {"kind": draft["kind"], "body": body, "replaces": draft["replaces"], **frame}
        made.append({"id": sibling(NEW, number), **parts, "counter": number + 1})
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
