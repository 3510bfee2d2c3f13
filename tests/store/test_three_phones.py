"""Three phones and a server, in any order of presses and exchanges: once all have exchanged, all hold the same."""

import os
import tempfile
from pathlib import Path
from typing import Any

from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, rule, run_state_machine_as_test

from tests.core.pieces import worked
from webapp.core import fold
from webapp.core.entries import draft
from webapp.core.entries_numbered import sibling
from webapp.core.sheet import to_json
from webapp.store import Store
from webapp.store.ids import now, uuid7
from webapp.tools import TOOLS
from webapp.units import FACTORS

MANY = int(os.environ.get("SHOULDERLINE_THREE", "10"))  # 300 in the slow setting
SPACING = {"tool": "spacing", "slat": "2 3/4", "count": "3"}
PHONES = st.integers(0, 2)
PLACES = st.sampled_from(["opening", "Opening", "upper rail, width"])
READINGS = st.sampled_from(["58 3/8", "57", "60 strong"])


SEEN: set[str] = set()  # the kinds of all entries that were compared


class Phone:
    """What static/local.js and static/sync.js do, without a disk."""

    def __init__(self, name: str, store: Store) -> None:
        self.name, self.store = name, store
        self.held: dict[str, dict[str, Any]] = {}
        self.outbox: dict[str, dict[str, Any]] = {}
        self.counter, self.cursor, self.epoch = 0, 0, ""

    def summary(self) -> dict[str, Any]:
        return fold.summary_of(list(self.held.values()))

    def press(self, kind: str, **typed: str) -> None:
        summary = self.summary() if self.held else None
        made = draft(kind, typed, summary, TOOLS, FACTORS, worked(summary) if summary else {})
        if "errors" in made:
            return
        name = uuid7()
        for number, each in enumerate([made, *made.pop("also", [])]):
            self.keep({"id": sibling(name, number) if number else name, **self.store.signed(each)})

    def keep(self, drafted: dict[str, Any]) -> None:
        self.counter += 1
        own = self.summary()["id"] or drafted["id"]
        entry = {**drafted, "project": own, "made_at": now(), "by": self.name}
        self.outbox[entry["id"]] = entry
        self.held[entry["id"]] = {**entry, "counter": self.counter}

    def exchange(self, *, heard: bool = True) -> bool:
        """Send and take; an answer that is not heard changes nothing here. Say whether there is more."""
        question = {"protocol": 1, "epoch": self.epoch, "cursor": self.cursor, "entries": list(self.outbox.values())}
        answer = self.store.sync(question)
        assert answer["refused"] == []
        if heard:
            for name in answer["kept"]:
                self.outbox.pop(name, None)
            self.held.update({entry["id"]: entry for entry in answer["entries"]})
            self.cursor, self.epoch = answer["cursor"], answer["epoch"]
        return bool(answer["more"]) and heard


class Shop(RuleBasedStateMachine):
    def __init__(self) -> None:
        super().__init__()
        self.folder = tempfile.TemporaryDirectory()
        self.store = Store(Path(self.folder.name))
        self.phones = [Phone(f"phone {number}", self.store) for number in range(3)]
        self.phones[0].press("project", name="Bed in ash")
        self.exchange_all()

    def exchange_all(self) -> None:
        for phone in self.phones * 2:
            while phone.exchange():
                pass

    def chosen(self, data: st.DataObject, phone: int, names: tuple[str, ...]) -> str:
        summary = self.phones[phone].summary()
        items = [i["entry"] for name in names for thing in summary[name] for i in thing["heads"] + thing["past"]]
        return data.draw(st.sampled_from(items)) if items else ""

    @rule(phone=PHONES, place=PLACES, reading=READINGS)
    def measure(self, phone: int, place: str, reading: str) -> None:
        self.phones[phone].press("reading", place=place, reading=reading)

    @rule(phone=PHONES, data=st.data())
    def take_back(self, phone: int, data: st.DataObject) -> None:
        entry = self.chosen(data, phone, ("places", "sheets", "cuts", "done", "parts"))
        self.phones[phone].press("withdrawal", entry=entry)

    @rule(phone=PHONES, data=st.data())
    def pick(self, phone: int, data: st.DataObject) -> None:
        self.phones[phone].press("pick", entry=self.chosen(data, phone, ("places", "sheets")))

    @rule(phone=PHONES, data=st.data())
    def keep_a_sheet(self, phone: int, data: st.DataObject) -> None:
        """Keep a spacing, on a reading where one stands, now and then in the place of another."""
        summary = self.phones[phone].summary()
        heads = [place["heads"][0] for place in summary["places"] if len(place["heads"]) == 1]
        typed = {**SPACING, "span": "58 3/8"}
        if heads:
            inches = heads[0]["inches"]
            typed |= {"span": f"{inches} in", "links": f"span {heads[0]['entry']} reading {inches}"}
        replaces = self.chosen(data, phone, ("sheets",)) if data.draw(st.booleans()) else ""
        self.phones[phone].press("sheet", **typed, replaces=replaces)

    @rule(phone=PHONES, data=st.data(), measured=st.sampled_from(["", "13 1/16 scant"]))
    def cut(self, phone: int, data: st.DataObject, measured: str) -> None:
        if not self.phones[phone].summary()["sheets"]:
            self.phones[phone].press("sheet", **SPACING, span="58 3/8")
        self.phones[phone].press("cut", entry=self.chosen(data, phone, ("sheets",)), measured=measured)

    @rule(phone=PHONES)
    def work_again(self, phone: int) -> None:
        self.phones[phone].press("again")

    @rule(phone=PHONES, width=READINGS)
    def change_the_piece(self, phone: int, width: str) -> None:
        summary = self.phones[phone].summary()
        rails = [head["entry"] for thing in summary["parts"] for head in thing["heads"]]
        self.phones[phone].press("part", name="upper rail", width=width, entry=rails[0] if rails else "")
        self.phones[phone].press("joint", number="1", one="upper rail", other="upper rail", tenon="blind")
        self.phones[phone].press("done", step="stage trim")

    @rule(phone=PHONES, heard=st.booleans())
    def exchange(self, phone: int, heard: bool) -> None:
        self.phones[phone].exchange(heard=heard)

    def teardown(self) -> None:
        try:
            self.exchange_all()
            entries = self.store.entries(self.phones[0].summary()["id"])
            there = fold.summary_of(entries)
            SEEN.update(entry["kind"] for entry in entries)
            for phone in self.phones:
                assert phone.outbox == {}
                assert to_json(phone.summary()) == to_json(there)
            self.shuffled(entries, to_json(there))
        finally:
            self.store.close()
            self.folder.cleanup()

    def shuffled(self, entries: list[dict[str, Any]], said: str) -> None:
        """Fold in the other order of arrival: nothing depends on it."""
        assert to_json(fold.summary_of(entries[::-1])) == said


Shop.TestCase.settings = settings(max_examples=MANY, stateful_step_count=25, deadline=None)
TestShop: Any = Shop.TestCase


def test_every_kind_that_a_press_makes_was_met() -> None:
    if not SEEN:
        run_state_machine_as_test(Shop)
    assert {"reading", "withdrawal", "sheet", "cut", "part", "joint", "done"} <= SEEN
