"""A project started from another one, without script."""

from typing import Any

from flask.testing import FlaskClient

from tests.pages.client import OWN, forms, send, start_project


def state(client: FlaskClient, project: str) -> dict[str, Any]:
    found: dict[str, Any] = client.get(f"{project}.json", headers=OWN).json
    return found


def begun(client: FlaskClient) -> str:
    """Start a project with a reading and two sheets."""
    project = start_project(client, graduation="1/16")
    send(client, project, "reading", place="Upper rail", reading="17 5/8")
    for called in ("Upper", "Lower"):
        query = f"span=58+3/8&slat=2+3/4&count=9&project={project.split('/')[-1]}"
        assert send(client, f"/work/spacing?{query}", "sheet", called=called).status_code == 303
    return project


def test_it_has_the_sheets_worked_anew_and_no_readings(client: FlaskClient) -> None:
    project = begun(client)
    started = send(client, project, "like", name="Bench in oak")
    assert started.status_code == 303, started.text
    other = started.headers["Location"]
    assert other != project
    found = state(client, other)
    assert (found["name"], found["graduation"], found["places"]) == ("Bench in oak", "1/16", [])
    assert [[head["called"] for head in thing["heads"]] for thing in found["sheets"]] == [["Upper"], ["Lower"]]
    for thing in found["sheets"]:
        worked = client.get(f"{other}/sheets/{thing['thing']}.json", headers=OWN).json["worked"]
        assert worked["same"] is True
        assert worked["sheet"]["answer"]["value"]["inches"] == "269/80"
    assert len(state(client, project)["places"]) == 1


def test_a_double_press_starts_one(client: FlaskClient) -> None:
    project = begun(client)
    form = forms(client.get(project, headers=OWN))["like"]
    sent = [client.post(form["action"], data=form["fields"] | {"name": "Oak"}, headers=OWN) for _ in range(2)]
    assert [answer.status_code for answer in sent] == [303, 303]
    assert sent[0].headers["Location"] == sent[1].headers["Location"]
    found = client.get("/projects.json", headers=OWN).json["projects"]
    assert [each["name"] for each in found] == ["Bench in ash", "Oak"]
    assert [len(each["sheets"]) for each in found] == [2, 2]


def test_the_page_gone_back_to_starts_another_under_another_name(client: FlaskClient) -> None:
    project = begun(client)
    form = forms(client.get(project, headers=OWN))["like"]
    for name in ("Oak", "Elm"):
        assert client.post(form["action"], data=form["fields"] | {"name": name}, headers=OWN).status_code == 303
    found = client.get("/projects.json", headers=OWN).json["projects"]
    assert [(each["name"], len(each["sheets"])) for each in found] == [("Bench in ash", 2), ("Oak", 2), ("Elm", 2)]


def test_a_name_is_asked_for_in_a_form_that_stands_open(client: FlaskClient) -> None:
    project = begun(client)
    response = send(client, project, "like", name="")
    assert response.status_code == 400
    assert not response.text.split('id="like-name-error">')[1].startswith("<")
    assert response.text.count('<details class="more" open>') == 1


def test_of_a_project_that_is_not_here_none_is_started(client: FlaskClient) -> None:
    project = begun(client)
    form = forms(client.get(project, headers=OWN))["like"]
    nothing = form["action"].replace(project.split("/")[-1], "019abc00-5a5b-7000-8000-000000000009")
    answer = client.post(nothing, data=form["fields"] | {"name": "Oak"}, headers=OWN)
    assert answer.status_code in (400, 404)
    assert len(client.get("/projects.json", headers=OWN).json["projects"]) == 1
