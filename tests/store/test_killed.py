"""`kill -9` of the server under a stream of batches: what it said it kept is there, once and whole."""

import os
import random
import sqlite3
import time
from collections import Counter
from contextlib import closing
from pathlib import Path
from typing import Any

import pytest

from tests.bare import Bare
from tests.serving import Quick, Serving
from tests.store.filled import plain
from tests.store.streaming import Batch, Draft, Phone, folded, stream_until
from webapp.store import Store

KILLS = int(os.environ.get("SHOULDERLINE_KILLS", "10"))  # 1000 in the slow setting
SEED = int(os.environ.get("SHOULDERLINE_SEED", "1909"))
LONGEST = 0.25  # seconds that a stream runs at most
ON_THE_WAY = 0.002  # seconds that a batch has been out at most: it is anywhere from the socket to the disk
WHOLE = 3 + KILLS // 50  # rounds with the whole program, which takes its time to start


@pytest.fixture(scope="module")
def draft(tmp_path_factory: pytest.TempPathFactory) -> Draft:
    with Store(tmp_path_factory.mktemp("pattern"), version="engine 1") as store:
        return Draft(store)


def killed_once(server: Bare | Serving, phones: list[Phone], draw: random.Random) -> list[Batch]:
    """Stream, kill in the midst of it, start again; return the batches that were in the air."""
    server.start()
    for phone in phones:
        phone.port = server.port

    def kill() -> float:
        time.sleep(draw.uniform(0.02, LONGEST))
        wait_for_one_in_the_air(phones)
        time.sleep(draw.uniform(0, ON_THE_WAY))
        moment = time.monotonic()
        server.kill()
        return moment

    moment = stream_until(phones, kill)
    server.start()
    return [batch for phone in phones for batch in phone.batches if batch.was_in_the_air(moment)]


def wait_for_one_in_the_air(phones: list[Phone]) -> None:
    """Wait until a batch is out and not answered: left to chance, half of the rounds kill a server that is idle."""
    until = time.monotonic() + LONGEST
    while time.monotonic() < until and not any(phone.is_waiting for phone in phones):
        time.sleep(0.0002)


def sound(folder: Path) -> None:
    with closing(sqlite3.connect(folder / "shoulderline.db")) as database:
        assert database.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
        assert database.execute("PRAGMA foreign_key_check").fetchall() == []


def what_was_kept(phone: Phone, there: set[str]) -> list[Batch]:
    """Return the batches that must be there: those acknowledged, and the one in the air where it came through."""
    kept = []
    for batch in phone.batches:
        found = there.intersection(batch.ids)
        assert not batch.told or len(found) == len(batch.ids), "an acknowledged entry is lost"
        assert len(found) in (0, len(batch.ids)), "a batch was kept in part"
        kept += [batch] if found else []
    return kept


def compare(phone: Phone) -> None:
    """Hold what the server gives against what it acknowledged, entry by entry and folded."""
    mine = phone.mine()
    assert len(mine) == len({each["id"] for each in mine}), "an entry is there twice"
    kept = what_was_kept(phone, {each["id"] for each in mine})
    sent = [each for batch in kept for each in batch.entries]
    assert plain(mine) == sent
    assert folded(mine) == folded(sent)


def again(phone: Phone, draw: random.Random, counts: Counter[str]) -> None:
    """Send half of the batches again: what is known is named as kept, and nothing is added."""
    chosen = sorted(draw.sample(range(len(phone.batches)), (len(phone.batches) + 1) // 2))
    phone.send_again([phone.batches[at] for at in chosen])
    counts["batches"] += len(phone.batches)
    counts["sent again"] += len(chosen)


def rounds(server: Bare | Serving, draft: Draft, many: int) -> Counter[str]:
    """Kill so many times; two phones stream in each round."""
    counts: Counter[str] = Counter()
    all_kept: list[dict[str, Any]] = []
    for number in range(many):
        draw = random.Random(f"{SEED} {number}")
        phones = [Phone(server.port, draft, draw) for _ in range(2)]
        for phone in phones:
            phone.cursor, phone.epoch = counts["cursor"], str(all_kept[0]["epoch"]) if all_kept else ""
        flying = killed_once(server, phones, draw)
        for phone in phones:
            phone.take()
        count(flying, phones, counts)
        look_twice(phones, draw, counts)
        server.kill()
        sound(server.folder)
        counts["cursor"] = max(phone.cursor for phone in phones)
        all_kept += [{"epoch": phone.epoch, "entries": phone.mine()} for phone in phones]
    whole(server.folder, all_kept)
    counts["entries"] = sum(len(each["entries"]) for each in all_kept)
    return counts


def count(flying: list[Batch], phones: list[Phone], counts: Counter[str]) -> None:
    there = {each["id"] for phone in phones for each in phone.came}
    counts["rounds"] += 1
    counts["rounds with a batch in the air"] += bool(flying)
    counts["batches in the air"] += len(flying)
    counts["of these kept"] += sum(batch.ids[0] in there for batch in flying)


def look_twice(phones: list[Phone], draw: random.Random, counts: Counter[str]) -> None:
    """Compare, send half of it again, compare."""
    for phone in phones:
        compare(phone)
        again(phone, draw, counts)
    for phone in phones:
        phone.take()
        compare(phone)


def whole(folder: Path, kept: list[dict[str, Any]]) -> None:
    """Hold the whole database against all that the rounds saw: no more, no less, each sheet worked once."""
    with Store(folder, version="engine 1") as store:
        there = {each["id"]: each for project in store.projects() for each in store.entries(project)}
        assert there == {each["id"]: each for one in kept for each in one["entries"]}
        sheets = [each["id"] for each in there.values() if each["kind"] == "sheet"]
        assert set(store.worked(sheets)) == set(sheets)


def told(counts: Counter[str]) -> None:
    print("\n" + ", ".join(f"{name} {count}" for name, count in counts.items() if name != "cursor"))
    assert counts["rounds with a batch in the air"] * 2 >= counts["rounds"]
    assert counts["sent again"] * 2 >= counts["batches"]


def test_a_killed_server_has_all_that_it_acknowledged(draft: Draft, tmp_path: Path) -> None:
    server = Bare(tmp_path / "data")
    try:
        told(rounds(server, draft, KILLS))
    finally:
        server.kill()


def test_the_whole_program_killed_has_all_that_it_acknowledged(draft: Draft, tmp_path: Path) -> None:
    server = Quick(tmp_path / "data")
    try:
        told(rounds(server, draft, WHOLE))
    finally:
        server.kill()


@pytest.mark.parametrize("number", range(max(4, KILLS // 20)))
def test_a_server_killed_while_it_makes_its_database_starts_the_next_time(
    draft: Draft, tmp_path: Path, number: int
) -> None:
    draw = random.Random(f"{SEED} first {number}")
    server = Bare(tmp_path / "data")
    server.begin()
    time.sleep(draw.uniform(0, 0.15))
    server.kill()
    phone = Phone(server.port, draft, draw)
    server.start()
    phone.send_again([phone.batch()])
    phone.take()
    server.kill()
    compare(phone)
    sound(server.folder)
