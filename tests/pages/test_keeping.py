"""The forms without script: what is typed is kept once, or shown again with what is wrong."""

from io import BytesIO

import pytest
from flask.testing import FlaskClient

from tests.pages.client import OWN, forms, send, start_project
from webapp.pages.keeping import STALE_PAGE

SPACING = {"tool": "spacing", "span": "58 3/8", "slat": "2 3/4", "count": "9"}


def state(client: FlaskClient, project: str) -> dict:
    return client.get(f"{project}.json", headers=OWN).json


def test_a_project_is_started_and_opened(client: FlaskClient) -> None:
    project = start_project(client, name="Settle in oak", unit="mm", graduation="0.5 mm")
    found = state(client, project)
    assert (found["name"], found["unit"], found["graduation"]) == ("Settle in oak", "mm", "0.5 mm")
    page = client.get(project, headers=OWN)
    assert page.status_code == 200
    assert "<h1>Settle in oak</h1>" in page.text


def test_a_project_without_a_name_is_asked_for_one_and_keeps_the_rest(client: FlaskClient) -> None:
    response = send(client, "/", "project", name="", unit="mm", graduation="1 mm")
    assert response.status_code == 400
    assert '<option value="mm" selected>' in response.text
    assert 'aria-invalid="true"' in response.text
    assert client.get("/projects.json", headers=OWN).json == {"projects": []}


def test_a_reading_is_kept_as_it_was_said_and_a_second_look_replaces_it(client: FlaskClient) -> None:
    project = start_project(client)
    assert send(client, project, "reading", place="Upper rail", reading="17 11/16 strong").status_code == 303
    assert send(client, project, "reading", place="upper  RAIL", reading="17 5/8").status_code == 303
    (place,) = state(client, project)["places"]
    assert [r["text"] for r in place["heads"]] == ["17 5/8"]
    assert [(r["text"], r["inches"]) for r in place["past"]] == [("17 11/16 strong", "2265/128")]


@pytest.mark.parametrize("text", ["17 11/0", "nonsense", "", "-3", "1" * 121, "5' 200 mm"])
def test_a_bad_reading_is_an_error_at_its_place_and_what_was_typed_stays(client: FlaskClient, text: str) -> None:
    project = start_project(client)
    response = send(client, project, "reading", place="Upper rail", reading=text, note="by the window")
    assert response.status_code == 400
    fields = forms(response)["reading"]["fields"]
    assert (fields["place"], fields["reading"], fields["note"]) == ("Upper rail", text, "by the window")
    after = response.text.split('id="reading-reading-error">')[1]
    assert not after.startswith("<"), "the error's place is empty"
    assert state(client, project)["places"] == []


def test_a_form_sent_twice_adds_nothing(client: FlaskClient) -> None:
    project = start_project(client)
    form = forms(client.get(project, headers=OWN))["reading"]
    typed = form["fields"] | {"place": "Upper rail", "reading": "17 5/8"}
    for _ in range(2):
        assert client.post(form["action"], data=typed, headers=OWN).status_code == 303
    (place,) = state(client, project)["places"]
    assert (len(place["heads"]), len(place["past"])) == (1, 0)


def test_a_page_gone_back_to_and_changed_is_a_second_look(client: FlaskClient) -> None:
    project = start_project(client)
    form = forms(client.get(project, headers=OWN))["reading"]
    for reading in ("17 5/8", "17 1/2"):
        typed = form["fields"] | {"place": "Upper rail", "reading": reading}
        assert client.post(form["action"], data=typed, headers=OWN).status_code == 303
    (place,) = state(client, project)["places"]
    assert [r["text"] for r in place["heads"]] == ["17 1/2"]
    assert [r["text"] for r in place["past"]] == ["17 5/8"]


def test_a_form_without_its_token_keeps_nothing_and_loses_nothing(client: FlaskClient) -> None:
    project = start_project(client)
    response = send(client, project, "reading", csrf_token="stale", place="Upper rail", reading="17 5/8")
    assert response.status_code == 400
    assert STALE_PAGE in response.text
    assert forms(response)["reading"]["fields"]["reading"] == "17 5/8"
    assert state(client, project)["places"] == []


def test_a_reading_is_withdrawn_and_noted_and_stays_in_the_record(client: FlaskClient) -> None:
    project = start_project(client)
    send(client, project, "reading", place="Upper rail", reading="17 5/8")
    entry = state(client, project)["places"][0]["heads"][0]["entry"]
    page = f"{project}/readings/{entry}"
    assert send(client, page, "note", text="with the old tape").status_code == 303
    assert send(client, page, "withdrawal", why="wrong rail").status_code == 303
    (place,) = state(client, project)["places"]
    assert place["heads"] == []
    assert [(r["withdrawn"], r["why"]) for r in place["past"]] == [(True, "wrong rail")]
    shown = client.get(page, headers=OWN).text
    assert "with the old tape" in shown
    assert "wrong rail" in shown


def test_a_project_is_renamed_put_away_and_taken_out_again(client: FlaskClient) -> None:
    project = start_project(client)
    assert send(client, project, "settings", name="Bench in oak", graduation="1/64").status_code == 303
    assert send(client, project, "settings", archived="yes").status_code == 303
    found = state(client, project)
    assert (found["name"], found["graduation"], found["archived"]) == ("Bench in oak", "1/64", True)
    assert "Put away" in client.get("/", headers=OWN).text
    send(client, project, "settings", archived="no")
    assert state(client, project)["archived"] is False


def test_a_sheet_is_kept_reopened_changed_and_kept_again(client: FlaskClient) -> None:
    project = start_project(client)
    name = project.split("/")[-1]
    worked = f"/work/spacing?span=58+3/8&slat=2+3/4&count=9&project={name}"
    kept = send(client, worked, "sheet", called="Upper rail")
    assert kept.status_code == 303, kept.text
    page = client.get(kept.headers["Location"], headers=OWN)
    assert "exactly 269/80 in" in page.text
    change = page.text.split('class="button" href="')[1].split('"')[0].replace("&amp;", "&")
    again = send(client, change.replace("count=9", "count=8"), "sheet")
    assert again.status_code == 303, again.text
    (thing,) = state(client, project)["sheets"]
    assert [s["inputs"]["count"] for s in thing["heads"]] == ["8"]
    assert [s["inputs"]["count"] for s in thing["past"]] == ["9"]
    assert thing["heads"][0]["called"] == "Upper rail"


def test_a_kept_sheet_speaks_as_its_project_does(client: FlaskClient) -> None:
    project = start_project(client, unit="mm", graduation="0.5 mm")
    name = project.split("/")[-1]
    kept = send(client, f"/work/spacing?span=1500&slat=70&count=9&project={name}", "sheet", called="Rail")
    found = client.get(f"{kept.headers['Location']}.json", headers=OWN).json
    assert found["worked"]["sheet"]["unit"] == "mm"
    assert found["worked"]["sheet"]["answer"]["value"]["mark"] == "87.0"
    assert found["worked"]["same"] is True


def test_a_project_goes_out_as_a_file_and_comes_in_again(client: FlaskClient) -> None:
    project = start_project(client)
    send(client, project, "reading", place="Upper rail", reading="17 5/8")
    file = client.get(f"{project}/file", headers=OWN)
    form = forms(client.get("/", headers=OWN))["bring"]
    sent = client.post(
        form["action"], data=form["fields"] | {"file": (BytesIO(file.data), "project.json")}, headers=OWN
    )
    assert sent.status_code == 303, sent.text
    assert client.get(f"{project}/file", headers=OWN).data == file.data


def test_a_project_file_may_be_larger_than_what_is_sent_at_once(client: FlaskClient) -> None:
    form = forms(client.get("/", headers=OWN))["bring"]
    data = b'{"format":1}' + b" " * (2 * 1024 * 1024)
    sent = client.post(form["action"], data=form["fields"] | {"file": (BytesIO(data), "x.json")}, headers=OWN)
    sent.request.environ["wsgi.input"].close()  # the test client spools what is large, and leaves it open
    assert sent.status_code == 400
    assert "1 MiB" not in sent.text
    assert not sent.text.split('id="bring-file-error">')[1].startswith("<")


@pytest.mark.parametrize("data", [b"", b"{", b"[]", b'{"format": 99}', b"\xff\xfe", b'{"a":' * 5000])
def test_what_is_no_project_file_is_refused_in_words(client: FlaskClient, data: bytes) -> None:
    form = forms(client.get("/", headers=OWN))["bring"]
    sent = client.post(form["action"], data=form["fields"] | {"file": (BytesIO(data), "x.json")}, headers=OWN)
    assert sent.status_code == 400
    assert not sent.text.split('id="bring-file-error">')[1].startswith("<")
