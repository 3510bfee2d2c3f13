from random import Random
from typing import Any
from uuid import uuid4

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.core.histories import JUNK, History, at_random
from tests.store.filled import SPACING, entry, fill, keep, plain
from webapp.core.fold import summary_of
from webapp.store import Store
from webapp.store import sync as syncing
from webapp.store.door import OTHER
from webapp.store.sync import Unreadable

ASKED = {"protocol": 1, "epoch": "", "cursor": 0, "entries": []}


class Phone:
    """What a phone does: it keeps an outbox, sends it, and takes what it has not seen."""

    def __init__(self) -> None:
        self.epoch, self.cursor = "", 0
        self.outbox: list[dict[str, Any]] = []
        self.held: dict[str, dict[str, Any]] = {}
        self.worked: dict[str, Any] = {}
        self.refused: list[dict[str, str]] = []

    def exchange(self, store: Store) -> int:
        """Exchange until there is no more; return how often was asked."""
        for turn in range(1, 1000):
            asked = {"protocol": 1, "epoch": self.epoch, "cursor": self.cursor, "entries": self.outbox[:200]}
            answer = store.sync(asked)
            done = {*answer["kept"], *(r["id"] for r in answer["refused"])}
            self.outbox = [e for e in self.outbox if e["id"] not in done]
            self.held |= {e["id"]: e for e in answer["entries"]}
            self.worked |= answer["worked"]
            self.refused += answer["refused"]
            self.epoch, self.cursor = answer["epoch"], answer["cursor"]
            if not answer["more"] and not self.outbox:
                return turn
        raise AssertionError("sync does not end")


def test_a_new_phone_gets_everything_with_the_worked_sheets(store):
    project = fill(store)
    entries = store.entries(project)
    [sheet] = [e["id"] for e in entries if e["kind"] == "sheet"]
    answer = store.sync(ASKED)
    assert list(answer) == ["epoch", "kept", "refused", "worked", "entries", "cursor", "more"]
    outcome = store.worked([sheet])[sheet]
    assert answer == {
        "epoch": store.epoch(),
        "kept": [],
        "refused": [],
        "worked": {sheet: {"sheet": outcome["sheet"], "same": True}},
        "entries": entries,
        "cursor": 5,
        "more": False,
    }


def test_what_a_phone_sends_is_kept_and_comes_back_with_its_seq(store):
    project = keep(store, "project", name="Bed")
    sheet = entry(store, "sheet", project, **SPACING)
    answer = store.sync({**ASKED, "epoch": store.epoch(), "cursor": 1, "entries": [sheet]})
    assert (answer["kept"], answer["entries"], answer["cursor"]) == ([sheet["id"]], [{**sheet, "seq": 2}], 2)
    assert list(answer["worked"]) == [sheet["id"]]


def test_a_repeated_delivery_is_acknowledged_and_its_sheet_given_again(store):
    project = keep(store, "project", name="Bed")
    sheet = entry(store, "sheet", project, **SPACING)
    asked = {**ASKED, "epoch": store.epoch(), "entries": [sheet]}
    first = store.sync(asked)
    again = store.sync({**asked, "cursor": first["cursor"]})
    assert (again["kept"], again["entries"], again["cursor"]) == ([sheet["id"]], [], first["cursor"])
    assert again["worked"] == first["worked"]


def test_what_is_refused_is_named_with_its_reason_and_the_rest_is_kept(store):
    project = entry(store, "project", name="Bed")
    other = {**project, "body": {**project["body"], "name": "Settee"}}
    answer = store.sync({**ASKED, "entries": [project, 7, other]})
    assert answer["kept"] == [project["id"]]
    assert answer["refused"][0]["id"] == ""
    assert answer["refused"][1] == {"id": project["id"], "why": OTHER}


def test_a_cursor_goes_on_where_it_was(store):
    fill(store)
    answer = store.sync({**ASKED, "epoch": store.epoch(), "cursor": 3})
    assert [e["seq"] for e in answer["entries"]] == [4, 5]


def test_another_epoch_starts_from_zero(store):
    fill(store)
    answer = store.sync({**ASKED, "epoch": "of another database", "cursor": 4})
    assert [e["seq"] for e in answer["entries"]] == [1, 2, 3, 4, 5]
    assert answer["epoch"] == store.epoch()


def test_a_cursor_past_the_end_stays(store):
    fill(store)
    answer = store.sync({**ASKED, "epoch": store.epoch(), "cursor": 99})
    assert (answer["entries"], answer["cursor"], answer["more"]) == ([], 99, False)


def test_at_most_five_hundred_come_at_once_and_more_says_so(store):
    batch = many(1203)
    store.add(batch)
    sizes, cursor = [], 0
    while True:
        answer = store.sync({**ASKED, "epoch": store.epoch(), "cursor": cursor})
        sizes.append((len(answer["entries"]), answer["more"]))
        cursor = answer["cursor"]
        if not answer["more"]:
            break
    assert sizes == [(500, True), (500, True), (203, False)]
    phone = Phone()
    assert phone.exchange(store) == 3
    assert plain(list(phone.held.values())) == batch


def many(count: int) -> list[dict[str, Any]]:
    history = History()
    history.project()
    for number in range(count - 1):
        history.add("later", {"n": number})
    return plain(history.entries)


def test_exactly_five_hundred_leave_no_more(store):
    store.add(many(500))
    assert store.sync(ASKED)["more"] is False


def test_heavy_entries_go_in_several_answers_one_at_least(store, monkeypatch):
    fill(store)
    monkeypatch.setattr(syncing, "MOST_LETTERS", 10)
    answer = store.sync(ASKED)
    assert (len(answer["entries"]), answer["cursor"], answer["more"]) == (1, 1, True)
    phone = Phone()
    assert phone.exchange(store) == 5
    assert len(phone.held) == 5


@pytest.mark.parametrize("key", ["protocol", "epoch", "cursor", "entries"])
@pytest.mark.parametrize("junk", [*JUNK, 2, 1.5, 2**60, "1", [[]] * 201], ids=lambda junk: repr(junk)[:20])
def test_junk_gets_a_plain_refusal_or_an_answer(store, key, junk):
    fits = {"protocol": 1, "epoch": str, "cursor": int, "entries": list}[key]
    sound = (
        (isinstance(fits, type) and type(junk) is fits)
        and (key != "cursor" or 0 <= junk <= 2**53)
        and (key != "entries" or len(junk) <= 200)
    )
    if sound:
        assert "kept" in store.sync({**ASKED, key: junk})
    else:
        with pytest.raises(Unreadable, match=key if key != "protocol" else "protocol 1"):
            store.sync({**ASKED, key: junk})


@pytest.mark.parametrize("key", ["protocol", "epoch", "cursor", "entries"])
def test_a_request_must_be_whole(store, key):
    with pytest.raises(Unreadable):
        store.sync({name: part for name, part in ASKED.items() if name != key})


@pytest.mark.parametrize("body", [None, [], "x", 3, True])
def test_a_request_is_an_object(store, body):
    with pytest.raises(Unreadable):
        store.sync(body)


values = st.recursive(
    st.sampled_from([*JUNK, 2**53, 10**15, "58 3/8", "in", "1/0", "x" * 50_000, "\x00", "é"]),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=3), inner, max_size=3),
    max_leaves=6,
)


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], max_examples=300)
@given(st.data())
def test_entries_spoilt_anywhere_are_kept_or_refused_and_never_raise(store, data):
    project = entry(store, "project", name="Bed")
    made = [entry(store, "sheet", **SPACING), entry(store, "project", name="Bed")]
    spoilt = spoil(data, data.draw(st.sampled_from(made)))
    answer = store.sync({**ASKED, "cursor": 2**40, "epoch": store.epoch(), "entries": [spoilt, project]})
    assert project["id"] in answer["kept"]
    assert len(answer["kept"]) + len(answer["refused"]) == 2


def spoil(data: st.DataObject, value: Any) -> Any:
    """Put anything at all in the place of a part of a value."""
    if isinstance(value, dict) and value and data.draw(st.booleans()):
        key = data.draw(st.sampled_from(list(value)))
        return {**value, key: spoil(data, value[key])}
    return data.draw(values)


def test_nothing_is_kept_of_a_request_that_is_refused(store):
    project = entry(store, "project", name="Bed")
    with pytest.raises(Unreadable):
        store.sync({**ASKED, "entries": [project], "cursor": -1})
    assert store.projects() == []


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], max_examples=15)
@given(st.randoms(use_true_random=False))
def test_phones_that_exchange_in_any_order_come_to_the_servers_state(tmp_path, random: Random):
    with Store(tmp_path / uuid4().hex) as store:
        phones = [Phone() for _ in range(3)]
        for made in at_random(random):
            phone = random.choice(phones)
            phone.outbox.append({k: v for k, v in made.items() if k not in ("seq", "counter")})
            if random.random() < 0.3:
                random.choice(phones).outbox.append(phone.outbox[-1])
            if random.random() < 0.4:
                random.choice(phones).exchange(store)
        for phone in [*phones, *phones]:
            phone.exchange(store)
        for project in store.projects():
            there = summary_of(store.entries(project))
            for phone in phones:
                assert summary_of([e for e in phone.held.values() if e["project"] == project]) == there
