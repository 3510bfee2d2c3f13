"""Picking without script: the tool's form leads to what a field can take, and a press leads back with it."""

import re
from typing import Any

from flask.testing import FlaskClient

from tests.pages.client import OWN, forms, send, start_project

WAY = re.compile(r'<button class="quiet take" name="into" value="(\w+)" formaction="([^"]+)"[^>]*?( hidden)?>')
TAKE = re.compile(r'<button [^>]*name="(take\.[^"]+)" value="yes"')


def ways(html: str) -> dict[str, tuple[str, bool]]:
    return {name: (address, bool(hidden)) for name, address, hidden in WAY.findall(html)}


def press(client: FlaskClient, page: str, form: str, address: str, **pressed: str) -> Any:
    """Send a form of a page by one of its buttons, as a browser does: all its fields, blank ones too."""
    held = forms(client.get(page, headers=OWN))[form]["fields"]
    return client.get(address, query_string=held | pressed, headers=OWN)


def test_a_number_is_picked_and_the_sheet_kept_without_script(client: FlaskClient) -> None:
    project = start_project(client)
    send(client, project, "reading", place="Lower rail, left", reading="17 11/16 strong")
    page = f"/work/spacing?project={project.rsplit('/', 1)[1]}&count=3&slat=2"
    found = ways(client.get(page, headers=OWN).text)
    assert found["span"] == ("/from/spacing", False)
    assert "ends" not in found
    picking = press(client, page, "fields", found["span"][0], into="span")
    assert picking.status_code == 200
    held = forms(picking)["picking"]
    assert {"slat": "2", "count": "3", "into": "span"}.items() <= held["fields"].items()
    assert not {"span", "gap", "links"} & set(held["fields"])
    (take,) = TAKE.findall(picking.text)
    back = client.get(held["action"], query_string=held["fields"] | {take: "yes"}, headers=OWN)
    assert back.status_code == 303
    address = back.headers["Location"]
    assert "span=2265%2F128%20in" in address
    shown = client.get(address.split("#")[0], headers=OWN)
    assert 'id="span-source"><a href=' in shown.text
    assert "from Lower rail, left: 17 11/16 strong</a>" in shown.text
    kept = send(client, address.split("#")[0], "sheet", called="Rail")
    assert kept.status_code == 303, kept.text
    (thing,) = client.get(f"{project}.json", headers=OWN).json["sheets"]
    (link,) = thing["heads"][0]["links"]
    assert (link["field"], link["key"], link["inches"]) == ("span", "reading", "2265/128")
    origin = client.get(f"{project}/origin/{thing['heads'][0]['entry']}/gap", headers=OWN)
    assert "17 11/16 strong, said at 1/32" in origin.text


def test_outside_a_project_nothing_is_offered(client: FlaskClient) -> None:
    shown = client.get("/work/spacing", headers=OWN).text
    assert {hidden for _address, hidden in ways(shown).values()} == {True}
    assert client.get("/from/spacing?into=span", headers=OWN).status_code == 404
    assert client.get("/from/nothing?into=span", headers=OWN).status_code == 404


def test_a_pick_that_is_there_no_more_leads_back_to_picking(client: FlaskClient) -> None:
    project = start_project(client).rsplit("/", 1)[1]
    gone = "take.01900000-0000-7000-8000-000000000001.reading"
    answer = client.get(f"/work/spacing?project={project}&into=span&count=3&{gone}=yes", headers=OWN)
    assert (answer.status_code, answer.headers["Location"]) == (
        303,
        f"/from/spacing?count=3&project={project}&into=span",
    )


def test_the_first_button_of_a_tools_form_works_it(client: FlaskClient) -> None:
    page = client.get("/work/spacing", headers=OWN).text
    assert re.search(r"<form id=\"fields\".*?<button([^>]*)>", page, re.DOTALL)[1] == " hidden"
