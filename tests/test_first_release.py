"""What the first release left behind opens in this one: project files, the data folder, and what a phone of it asks."""

from pathlib import Path
from typing import Any

import pytest
from flask.testing import FlaskClient

from tests import first_release
from tests.first_release import ADDRESS
from tests.pages.client import OWN, forms
from webapp.app import create_app
from webapp.store import Store

SYNC = {"Sec-Fetch-Site": "same-origin", "Shoulderline-Sync": "1"}


@pytest.fixture(scope="module")
def updated(tmp_path_factory: pytest.TempPathFactory) -> Any:
    """The program of today over the data folder of then."""
    app = create_app(first_release.database(tmp_path_factory.mktemp("updated") / "data"))
    yield app.test_client()
    app.extensions["shoulderline"].close()


def still_says(now: Any, then: Any) -> bool:
    """Say whether all that was said then is said now; a dict may say more."""
    if isinstance(then, dict):
        return isinstance(now, dict) and all(key in now and still_says(now[key], then[key]) for key in then)
    if isinstance(then, list):
        return len(now) == len(then) and all(still_says(*pair) for pair in zip(now, then, strict=True))
    return bool(now == then)


def entries_of(kind: str) -> list[dict[str, Any]]:
    return [entry for entry in first_release.read("project.json")["entries"] if entry["kind"] == kind]


@pytest.mark.parametrize("name", ["project.json", "demo.json"])
def test_a_project_file_comes_in_whole_and_goes_out_as_it_came(tmp_path: Path, name: str) -> None:
    there = first_release.read(name)
    with Store(tmp_path / "data") as store:
        outcome = store.import_(first_release.file(name))
        ids = [entry["id"] for entry in there["entries"]]
        assert outcome == {"kept": ids, "refused": [], "project": there["project"]}
        assert store.export(there["project"]) == first_release.file(name)


def test_the_data_folder_of_then_opens_with_all_that_was_in_it(updated: FlaskClient) -> None:
    assert updated.get(f"{ADDRESS}/file", headers=OWN).data == first_release.file("project.json")
    assert {project["name"] for project in updated.get("/projects.json", headers=OWN).json["projects"]} == {
        "Blanket rack",
        first_release.read("demo.json")["entries"][0]["body"]["name"],
    }


def test_a_project_means_what_it_meant(updated: FlaskClient) -> None:
    then = first_release.read("summary.json")
    now = updated.get(f"{ADDRESS}.json", headers=OWN).json
    assert still_says(now, then)
    assert not still_says(now, {**then, "name": "Another"})  # the comparison can fail


def test_its_pages_open(updated: FlaskClient) -> None:
    page = updated.get(ADDRESS, headers=OWN)
    assert page.status_code == 200
    for place in ["Upper rail", "Lower rail", "Uper rail", "Left stile"]:
        assert place in page.text
    assert "rivals: say which one holds" in page.text


@pytest.mark.parametrize("reading", entries_of("reading"), ids=lambda entry: entry["body"]["text"])
def test_its_readings_open(updated: FlaskClient, reading: dict[str, Any]) -> None:
    page = updated.get(f"{ADDRESS}/readings/{reading['id']}", headers=OWN)
    assert page.status_code == 200
    assert f"<h1>{reading['body']['place']}</h1>" in page.text


@pytest.mark.parametrize("sheet", entries_of("sheet"), ids=lambda entry: entry["body"]["inputs"]["count"])
def test_its_sheets_open_with_the_answer_of_then(updated: FlaskClient, sheet: dict[str, Any]) -> None:
    page = updated.get(f"{ADDRESS}/sheets/{sheet['id']}", headers=OWN)
    worked = first_release.read("project.json")["worked"][sheet["id"]]["sheet"]
    assert page.status_code == 200
    assert f"<h1>{sheet['body']['called']}</h1>" in page.text
    assert worked["answer"]["label"] in page.text
    assert "Not worked yet" not in page.text


def test_a_sheet_of_then_is_worked_again_alike(updated: FlaskClient) -> None:
    """What was typed then gives today the figures that it gave then."""
    for sheet in entries_of("sheet"):
        body = sheet["body"]
        asked = {**body["inputs"], "unit": body["unit"], "graduation": body["graduation"]}
        now = updated.get(f"/work/{body['tool']}.json", query_string=asked, headers=OWN).json
        then = first_release.read("project.json")["worked"][sheet["id"]]["sheet"]
        assert [still_says(now[part], then[part]) for part in ("inputs", "answer", "figures", "marks", "sums")] == [
            True for _ in range(5)
        ]


@pytest.mark.parametrize("at", range(len(first_release.read("exchanges.json"))))
def test_a_phone_that_still_runs_the_first_release_is_answered(updated: FlaskClient, at: int) -> None:
    """A page of then lies open while the server is today's: its question, as it put it, and each part it reads."""
    exchange = first_release.read("exchanges.json")[at]
    asked, then = exchange["asked"], exchange["answered"]
    now = updated.post("/sync", json=asked, headers=SYNC)
    assert now.status_code == 200, now.text
    assert now.json["epoch"] == then["epoch"]
    assert now.json["kept"] == then["kept"]
    assert now.json["refused"] == []
    assert set(then) <= set(now.json)
    assert [still_says(*pair) for pair in zip(now.json["entries"], then["entries"], strict=False)] == [
        True for _ in then["entries"]
    ]


TYPED = {
    "project": {"name": "Towel rail", "unit": "in", "graduation": "1/32"},
    "reading": {"place": "Back rail", "reading": "17 9/16"},
    "settings": {"name": "Blanket rack, oak"},
    "pick of a reading": {"entry": next(e["id"] for e in entries_of("reading") if e["body"]["place"] == "Left stile")},
    "note": {"text": "planed since"},
    "withdrawal of a reading": {"why": "measured anew"},
    "sheet": {"called": "Third spacing"},
    "withdrawal of a sheet": {"why": "another count"},
}


def test_a_page_of_then_that_is_still_open_can_send_its_forms(tmp_path: Path) -> None:
    """Without script, each form posts the names of then to the addresses of then."""
    app = create_app(first_release.database(tmp_path / "data"))
    client = app.test_client()
    for name, typed in TYPED.items():
        form = first_release.read("forms.json")[name]
        token = forms(client.get("/", headers=OWN))["project"]["fields"]["csrf_token"]
        answer = client.post(form["action"], data=form["fields"] | typed | {"csrf_token": token}, headers=OWN)
        assert answer.status_code == 303, (name, answer.text)
        kept = app.extensions["shoulderline"].entry(form["fields"]["entry_id"])
        assert kept["kind"] == name.split(" of ")[0], name
    app.extensions["shoulderline"].close()
