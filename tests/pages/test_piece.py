"""Parts, joints, ticks and the list before the glue, without script."""

from typing import Any

from flask.testing import FlaskClient

from tests.pages.client import OWN, forms, send, start_project


def state(client: FlaskClient, project: str) -> dict[str, Any]:
    found: dict[str, Any] = client.get(f"{project}.json", headers=OWN).json
    return found


def part(client: FlaskClient, project: str, **typed: str) -> str:
    """Name a part and return its page."""
    answer = send(client, project, "part", **typed)
    assert answer.status_code == 303, answer.text
    return answer.headers["Location"]


def tick(client: FlaskClient, page: str, step: str) -> str:
    answer = send(client, page, "done", step=step)
    assert answer.status_code == 303, answer.text
    return answer.headers["Location"]


def undo(client: FlaskClient, page: str, project: str) -> str:
    """Take back what was ticked last."""
    entry = state(client, project)["done"][-1]["heads"][0]["entry"]
    return send(client, page, "withdrawal", entry=entry).headers["Location"]


def test_a_part_is_named_changed_and_withdrawn_on_its_page(client: FlaskClient) -> None:
    project = start_project(client)
    page = part(client, project, name="Upper rail", wood="ash", width="5 1/2", faces="lower")
    shown = client.get(page, headers=OWN).text
    assert "1 piece, ash; its lower edge faces the opening" in shown
    assert 'placeholder="5 1/2"' in shown
    changed = send(client, page, "part", count="2", width="5 1/4")
    assert changed.status_code == 303
    head = state(client, project)["parts"][0]["heads"][0]
    assert (head["name"], head["count"], head["measures"]["width"]["inches"]) == ("Upper rail", 2, "21/4")
    assert "Before it" in client.get(changed.headers["Location"], headers=OWN).text
    gone = send(client, page, "withdrawal", entry=head["entry"], why="split")
    assert gone.headers["Location"].startswith(f"{project}/parts/")
    assert "This part was withdrawn." in client.get(gone.headers["Location"], headers=OWN).text


def test_what_is_wrong_with_a_part_stands_at_its_field_and_the_form_stays_open(client: FlaskClient) -> None:
    project = start_project(client)
    refused = send(client, project, "part", name="Rail", width="5 1/0")
    assert refused.status_code == 400
    assert forms(refused)["part"]["fields"]["width"] == "5 1/0"
    assert refused.text.count('class="more" open') == 1
    page = part(client, project, name="Rail")
    assert send(client, page, "part", count="x").status_code == 400


def test_a_way_to_measure_fills_the_place_and_the_part_shows_both(client: FlaskClient) -> None:
    project = start_project(client)
    page = part(client, project, name="Upper rail", width="5 1/2")
    way = f"{project}?place=Upper%20rail%2C%20width"
    assert f'href="{way}#reading"' in client.get(page, headers=OWN).text
    assert forms(client.get(way, headers=OWN))["reading"]["fields"]["place"] == "Upper rail, width"
    assert send(client, way, "reading", reading="5 7/16").status_code == 303
    assert "1/16 (0.063 in) under" in client.get(page, headers=OWN).text


def test_a_measure_takes_its_value_from_a_sheet_and_says_what_became_of_it(client: FlaskClient) -> None:
    project = start_project(client)
    name = project.split("/")[-1]
    kept = send(client, f"/work/overall?overall=72&post=3+7/16&tenon=2+1/2&project={name}", "sheet", called="Bay")
    sheet = kept.headers["Location"].split("/")[-1]
    page = part(client, project, name="Rail")
    assert f'value="{sheet} rail 561/8"' in client.get(page, headers=OWN).text
    assert send(client, page, "part", measure="overall", number=f"{sheet} rail 561/8").status_code == 303
    head = state(client, project)["parts"][0]["heads"][0]
    assert head["measures"]["overall"]["text"] == "561/8 in"
    assert [(link["field"], link["entry"], link["key"]) for link in head["links"]] == [("overall", sheet, "rail")]
    assert "from Bay, Rail, over all" in client.get(page, headers=OWN).text
    query = f"overall=73&post=3+7/16&tenon=2+1/2&project={name}&replaces={sheet}"
    send(client, f"/work/overall?{query}", "sheet", called="Bay")
    assert "from Bay, Rail, over all; it is now 71 1/8" in client.get(page, headers=OWN).text
    assert "1 part no longer holds" in client.get(project, headers=OWN).text
    assert send(client, project, "again").status_code == 303
    assert state(client, project)["parts"][0]["heads"][0]["measures"]["overall"]["text"] == "569/8 in"
    assert send(client, page, "part", overall="71").status_code == 303
    assert state(client, project)["parts"][0]["heads"][0]["links"] == []


def test_a_part_cannot_stand_on_itself(client: FlaskClient) -> None:
    project = start_project(client)
    page = part(client, project, name="Rail", shoulder="30")
    entry = page.split("/")[-1]
    query = f"span=30+in&slat=2+1/2&count=7&project={project.split('/')[-1]}&links=span+{entry}+shoulder+30"
    typed = {"called": "Slats", "links": f"span {entry} shoulder 30"}
    sheet = send(client, f"/work/spacing?{query}", "sheet", **typed).headers["Location"].split("/")[-1]
    assert sheet not in client.get(page, headers=OWN).text.split('id="sources"')[-1]
    refused = send(client, page, "part", measure="width", number=f"{sheet} gap 25/16")
    assert refused.status_code == 400
    assert "stands on this sheet itself" in refused.text


def test_joints_are_numbered_listed_by_number_and_taken_out(client: FlaskClient) -> None:
    project = start_project(client)
    part(client, project, name="Post")
    part(client, project, name="Rail")
    for number, tenon in (("10", "blind"), ("2", "through")):
        typed = {"number": number, "one": "rail", "other": "post", "tenon": tenon}
        assert send(client, project, "joint", **typed).headers["Location"] == project
    shown = client.get(project, headers=OWN).text
    assert shown.index("Joint 2, the rail and the post") < shown.index("Joint 10, the rail and the post")
    refused = send(client, project, "joint", number="3", one="rail", other="slat")
    assert refused.status_code == 400
    assert "Name two parts" in refused.text
    entry = state(client, project)["joints"][0]["heads"][0]["entry"]
    assert send(client, project, "withdrawal", entry=entry).headers["Location"] == project
    assert "Joint 10" not in client.get(project, headers=OWN).text


def test_a_stage_is_ticked_and_taken_back_in_its_place(client: FlaskClient) -> None:
    project = start_project(client)
    part(client, project, name="Post", width="3 1/2")
    assert tick(client, project, "stage stock") == project
    assert "Rough mill the post" in client.get(project, headers=OWN).text
    assert undo(client, project, project) == project
    assert "Get out the stock for the post" in client.get(project, headers=OWN).text


def test_the_list_before_the_glue_is_ticked_and_the_stage_says_what_is_open(client: FlaskClient) -> None:
    project = start_project(client)
    thing = part(client, project, name="Post").split("/")[-1]
    glue = f"{project}/glue"
    assert "2 of 2 open before the glue" in client.get(project, headers=OWN).text
    assert tick(client, glue, f"glue eased {thing}") == glue
    assert "1 of 2 are open" in client.get(glue, headers=OWN).text
    assert send(client, glue, "done", step=f"glue eased {thing}").status_code == 400
    assert [bool(each["done"]) for each in client.get(f"{glue}.json", headers=OWN).json] == [True, False]
    assert undo(client, glue, project) == glue
    assert "2 of 2 are open" in client.get(glue, headers=OWN).text


def test_what_is_not_here_is_said(client: FlaskClient) -> None:
    project = start_project(client)
    for address in (f"{project}/parts/nothing", "/projects/nothing/glue"):
        answer = client.get(address, headers=OWN)
        assert answer.status_code == 404
        assert "Not here" in answer.text
    assert client.get(f"{project}/parts/nothing.json", headers=OWN).status_code == 404
