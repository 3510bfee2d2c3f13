import json
from pathlib import Path
from typing import Any
from uuid import uuid4

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.core.histories import JUNK, at_random
from tests.store.filled import entry, fill, plain
from webapp.core.fold import summary_of
from webapp.store import Store, Unreadable
from webapp.store.sheet_shape import LISTS, NEEDED, sheet_error

Document = dict[str, Any]


@pytest.fixture(scope="module")
def exported(tmp_path_factory) -> bytes:
    with Store(tmp_path_factory.mktemp("exported"), version="engine 1") as made:
        return made.export(fill(made))


@pytest.fixture
def document(exported) -> Document:
    """A project's file as it was exported, for a test to change."""
    return dict(json.loads(exported))


def written(document: object) -> bytes:
    return json.dumps(document).encode()


def the_worked(document: Document) -> dict[str, Any]:
    [outcome] = document["worked"].values()
    return dict(outcome)


def test_export_wipe_import_export_gives_equal_bytes(store, tmp_path):
    project = fill(store)
    fill(store, "Another")
    file = store.export(project)
    with Store(tmp_path / "wiped") as other:
        outcome = other.import_(file)
        assert outcome == {"kept": [e["id"] for e in store.entries(project)], "refused": [], "project": project}
        assert other.export(project) == file
        assert summary_of(other.entries(project)) == summary_of(store.entries(project))


def test_a_file_is_one_line_of_json_with_nothing_of_one_server(store):
    project = fill(store)
    document = json.loads(store.export(project))
    assert list(document) == ["shoulderline", "project", "entries", "worked"]
    assert document["entries"] == plain(store.entries(project))
    assert store.export(project).count(b"\n") == 1
    assert "“again”" in store.export(project).decode()


def test_worked_sheets_travel_and_are_not_worked_by_another_engine(document, tmp_path):
    [[name, outcome]] = document["worked"].items()
    outcome["sheet"]["notes"] = ["as engine 0 had it"]
    outcome["engine"], outcome["same"] = "engine 0", False
    with Store(tmp_path / "other", version="engine 9", tools={}) as other:
        assert other.import_(written(document))["refused"] == []
        assert other.worked([name]) == {name: outcome}
        assert json.loads(other.export(document["project"])) == document


def test_a_sheet_without_its_answer_is_worked_on_the_way_in(document, tmp_path):
    [name] = document["worked"]
    with Store(tmp_path / "other") as other:
        other.import_(written({**document, "worked": {}}))
        assert other.worked([name])[name]["sheet"] == document["worked"][name]["sheet"]


def test_what_is_known_already_changes_nothing(store):
    project = fill(store)
    file = store.export(project)
    assert len(store.import_(file)["kept"]) == 5
    assert store.export(project) == file


def test_an_entry_of_a_file_that_differs_from_what_is_kept_is_refused(store):
    document = json.loads(store.export(fill(store)))
    document["entries"][1]["body"]["place"] = "post"
    [refused] = store.import_(written(document))["refused"]
    assert refused["id"] == document["entries"][1]["id"]


def test_a_bad_entry_in_a_file_is_refused_and_the_others_are_kept(document, tmp_path):
    document["entries"][1]["body"]["inches"] = "1"
    with Store(tmp_path / "other") as other:
        outcome = other.import_(written(document))
    assert [len(outcome["kept"]), len(outcome["refused"])] == [4, 1]


@pytest.mark.parametrize(
    "change",
    [
        {"shoulderline": 2},
        {"shoulderline": None},
        {"project": "x"},
        {"project": 3},
        {"entries": {}},
        {"entries": [3]},
        {"entries": [{"project": "x"}]},
        {"worked": []},
        {"worked": {"x": None}},
        {"worked": {"x": {}}},
        {"worked": {"x": {"sheet": {}, "engine": "1", "same": True}}},
    ],
    ids=repr,
)
def test_what_is_no_project_file_is_refused_whole(document, tmp_path, change):
    with Store(tmp_path / "other") as other:
        with pytest.raises(Unreadable):
            other.import_(written({**document, **change}))
        assert other.projects() == []


@pytest.mark.parametrize("data", [b"", b"dear", b"[]", b"{}", b"\xff", b'{"shoulderline": 1.0}'])
def test_other_files_are_refused_with_a_sentence(store, data):
    with pytest.raises(Unreadable):
        store.import_(data)


@pytest.mark.parametrize("key", ["format", *NEEDED, *LISTS])
@pytest.mark.parametrize("junk", [*JUNK, [{}], [None], [3], {"x": 3}], ids=repr)
def test_a_worked_sheet_of_another_shape_is_refused(document, key, junk):
    sheet = the_worked(document)["sheet"]
    empty = (key in LISTS and junk == []) or (key == "inputs" and junk == {})
    text = key in ("tool", "unit", "graduation") and isinstance(junk, str)
    texts = key in ("sums", "cautions", "notes") and junk == ["a"]
    assert (sheet_error({**sheet, key: junk}) == "") == (empty or text or texts)


@pytest.mark.parametrize("inches", ["0", "-1", "x"])
def test_a_strip_has_a_length_to_be_drawn_along(document, inches):
    sheet = the_worked(document)["sheet"]
    assert sheet["strips"]
    sheet["strips"][0]["length"]["inches"] = inches
    assert sheet_error(sheet) != ""


@pytest.mark.parametrize("value", [True, {}, [], {"mark": "1"}])
def test_a_step_has_a_value_that_can_be_shown_or_none(document, value):
    sheet = the_worked(document)["sheet"]
    step = {"key": "first", "label": "First"}
    assert sheet_error({**sheet, "steps": [step, {**step, "value": 3}]}) == ""
    assert sheet_error({**sheet, "steps": [{**step, "value": value}]}) != ""


def leaves(value: Any, path: tuple[Any, ...] = ()) -> list[tuple[Any, ...]]:
    inner = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else []
    return [path, *(found for key, part in inner for found in leaves(part, (*path, key)))]


def without(value: Any, path: tuple[Any, ...]) -> Any:
    if isinstance(value, list):
        return [without(part, path[1:]) if at == path[0] else part for at, part in enumerate(value)]
    if len(path) == 1:
        return {key: part for key, part in value.items() if key != path[0]}
    return {key: without(part, path[1:]) if key == path[0] else part for key, part in value.items()}


def test_no_part_that_a_screen_leans_on_may_be_missing(document):
    sheet = the_worked(document)["sheet"]
    leaned_on = (
        "inches",
        "mark",
        "mm",
        "label",
        "key",
        "value",
        "at",
        "from",
        "to",
        "kind",
        "spans",
        "ticks",
        "length",
    )
    paths = [p for p in leaves(sheet) if p and p[-1] in leaned_on and not {"slats", "gaps", "alternatives"} & set(p)]
    assert len(paths) > 50
    assert sheet_error(sheet) == ""
    assert [path for path in paths if not sheet_error(without(sheet, path))] == []


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], max_examples=15)
@given(st.randoms(use_true_random=False))
def test_any_project_that_is_kept_travels_without_a_change(tmp_path: Path, random):
    name = uuid4().hex
    with Store(tmp_path / name) as store, Store(tmp_path / f"{name} wiped") as other:
        project = entry(store, "project", name="Bed")
        made = [{**e, "project": project["id"]} for e in at_random(random)]
        store.add([project, *({k: v for k, v in e.items() if k not in ("seq", "counter")} for e in made)])
        file = store.export(project["id"])
        assert other.import_(file)["refused"] == []
        assert other.export(project["id"]) == file
