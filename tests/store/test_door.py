import sqlite3
from random import Random
from typing import Any
from uuid import uuid4

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.core.histories import JUNK, History, at_random, uid
from tests.store.filled import SPACING, entry, fill, keep, plain
from webapp.core.entries import check
from webapp.core.fold import summary_of
from webapp.core.sheet import to_json
from webapp.core.working import work
from webapp.store import Store
from webapp.store.door import OTHER
from webapp.store.works import digest
from webapp.tools import TOOLS
from webapp.units import FACTORS


def test_what_is_kept_comes_back_as_it_was_with_its_seq(store):
    project = entry(store, "project", name="Bed in ash")
    assert store.add([project]) == {"kept": [project["id"]], "refused": []}
    reading = entry(store, "reading", project["id"], place="rail", reading="1 ¾ “𝔘”"[:3])
    store.add([reading])
    assert store.entries(project["id"]) == [{**project, "seq": 1}, {**reading, "seq": 2}]
    assert store.entry(reading["id"]) == {**reading, "seq": 2}
    assert store.entry(uid(9)) is None
    assert store.entries(uid(9)) == []


def test_what_is_kept_is_on_the_disk_for_any_other_reader(store, tmp_path):
    project = fill(store)
    other = sqlite3.connect(f"file:{tmp_path / 'data' / 'shoulderline.db'}?mode=ro", uri=True)
    with other:
        [[count]] = other.execute("SELECT count(*) FROM entries WHERE project = ?", [project])
    other.close()
    assert count == 5


def test_the_same_entry_again_changes_nothing_and_is_acknowledged(store):
    project = fill(store)
    before = store.entries(project)
    assert store.add(plain(before)) == {"kept": [e["id"] for e in before], "refused": []}
    assert store.entries(project) == before


def test_an_entry_twice_in_one_batch_is_kept_once(store):
    project = entry(store, "project", name="Bed")
    assert store.add([project, project]) == {"kept": [project["id"]], "refused": []}
    assert len(store.entries(project["id"])) == 1


def test_a_form_pressed_twice_differs_only_in_its_time_and_what_it_replaces(store):
    project = keep(store, "project", name="Bed")
    reading = entry(store, "reading", project, place="rail", reading="1")
    again = {**reading, "made_at": "2031-01-01T00:00:00.000Z", "replaces": [project]}
    assert store.add([reading, again]) == {"kept": [reading["id"]], "refused": []}
    assert store.entry(reading["id"]) == {**reading, "seq": 2}


@pytest.mark.parametrize("change", [{"body": {"name": "Settee", "unit": "in", "graduation": "1/32"}}])
def test_the_same_id_with_another_body_is_refused_and_shown(store, change):
    project = entry(store, "project", name="Bed")
    store.add([project])
    refused = {"kept": [], "refused": [{"id": project["id"], "why": OTHER}]}
    assert store.add([{**project, **change}]) == refused
    assert store.entries(project["id"]) == [{**project, "seq": 1}]


def test_one_id_with_two_bodies_in_one_batch_keeps_the_first(store):
    project = entry(store, "project", name="Bed")
    other = {**project, "body": {**project["body"], "name": "Settee"}}
    assert store.add([project, other]) == {
        "kept": [project["id"]],
        "refused": [{"id": project["id"], "why": OTHER}],
    }


def test_true_and_one_are_two_bodies(store):
    later = {**entry(store, "project", name="Bed"), "kind": "later", "project": uid(1), "body": {"x": True}}
    assert store.add([later, {**later, "body": {"x": 1}}])["refused"] == [{"id": later["id"], "why": OTHER}]


def test_the_order_of_names_in_a_body_makes_no_other_body(store):
    project = entry(store, "project", name="Bed")
    turned = {**project, "body": dict(reversed(project["body"].items()))}
    assert store.add([project, turned]) == {"kept": [project["id"]], "refused": []}


@pytest.mark.parametrize("junk", [*JUNK, {"id": "x" * 70}, {"id": "\ud800"}, {"id": uid(5)}], ids=repr)
def test_one_bad_entry_does_not_sink_the_batch(store, junk):
    one, other = entry(store, "project", name="One"), entry(store, "project", name="Other")
    outcome = store.add([one, junk, other])
    assert outcome["kept"] == [one["id"], other["id"]]
    [refused] = outcome["refused"]
    assert set(refused) == {"id", "why"}
    assert refused["why"] == check(junk, TOOLS, FACTORS)
    assert len(refused["id"]) <= 64


def test_unknown_kinds_are_kept(store):
    project = keep(store, "project", name="Bed")
    later = {**entry(store, "project", name="x"), "kind": "later", "project": project, "body": {"a": [1, None]}}
    store.add([later])
    assert plain(store.entries(project))[1] == later


def test_the_server_works_a_sheet_and_says_whether_the_phone_saw_the_same(store):
    project = keep(store, "project", name="Bed")
    seen = entry(store, "sheet", project, **SPACING)
    expected = work(TOOLS["spacing"], {**SPACING, "unit": "in", "graduation": "1/32"}, FACTORS)["sheet"]
    assert seen["body"]["digest"] == digest(expected)
    other = {**entry(store, "sheet", project, **SPACING), "body": {**seen["body"], "digest": "0" * 64}}
    store.add([seen, other])
    found = store.worked([seen["id"], other["id"], project])
    assert [w["same"] for w in found.values()] == [True, False]
    assert to_json(found[seen["id"]]["sheet"]) == to_json(expected)
    assert found[seen["id"]]["engine"] == "engine 1"


def test_a_newer_engine_works_no_old_sheet_again(store, tmp_path):
    project = fill(store)
    names = [e["id"] for e in store.entries(project)]
    before = store.worked(names)
    with Store(tmp_path / "data", version="engine 2", tools={}) as newer:
        assert newer.add(plain(newer.entries(project)))["refused"] == []
        assert newer.worked(names) == before


def test_a_sheet_that_cannot_be_worked_is_refused(store):
    project = keep(store, "project", name="Bed")
    sheet = entry(store, "sheet", project, **SPACING)
    bad = {**sheet, "body": {**sheet["body"], "inputs": {"span": "x"}}}
    assert [r["id"] for r in store.add([bad])["refused"]] == [sheet["id"]]
    assert store.worked([sheet["id"]]) == {}


def test_projects_stand_in_the_order_they_were_started(store):
    names = [fill(store, name) for name in ("One", "Two", "Three")]
    keep(store, "reading", names[0], place="post", reading="3 7/16")
    assert store.projects() == names


def test_entries_since_a_seq_are_those_that_follow(store):
    fill(store)
    assert [e["seq"] for e in store.since(2, 2)] == [3, 4]
    assert [e["seq"] for e in store.since(4, 100)] == [5]


def test_all_stays_when_the_store_is_opened_again(store, tmp_path):
    project = fill(store)
    before, epoch = store.entries(project), store.epoch()
    with Store(tmp_path / "data") as again:
        assert (again.entries(project), again.epoch()) == (before, epoch)


def test_many_entries_are_kept_and_found_over_more_than_one_query(store):
    history = History()
    history.project()
    for number in range(1200):
        history.add("later", {"n": number}, [uid(1 + number), uid(5000)])
    batch = plain([{k: v for k, v in e.items() if k != "counter"} for e in history.entries])
    assert len(store.add(batch)["kept"]) == 1201
    assert plain(store.entries(history.id)) == batch
    assert store.add(batch)["refused"] == []


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], max_examples=25)
@given(st.randoms(use_true_random=False))
def test_the_fold_of_what_is_kept_does_not_depend_on_batches_or_repeats(tmp_path, random: Random):
    history = sent(at_random(random))
    folded = []
    for _ in range(2):
        with Store(tmp_path / uuid4().hex) as store:
            for batch in batches(random, history):
                store.add(batch)
                if random.random() < 0.3:
                    store.add(batch)
            folded.append(summary_of(store.entries(uid(1))))
    assert folded[0] == folded[1]


def sent(entries: list[dict[str, Any]]) -> list[dict[str, Any]]:
    return [{k: v for k, v in e.items() if k not in ("seq", "counter")} for e in entries]


def batches(random: Random, entries: list[dict[str, Any]]) -> list[list[dict[str, Any]]]:
    cuts = sorted(random.choices(range(len(entries) + 1), k=3))
    return [entries[a:b] for a, b in zip([0, *cuts], [*cuts, len(entries)], strict=True)]
