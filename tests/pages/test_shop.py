"""The shop's settings without script: typed once in a project, and in the sheets that are worked with them."""

from urllib.parse import urlencode

import pytest
from flask.testing import FlaskClient

from tests.pages.client import OWN, forms, send, start_project
from tests.trial import TOOL
from webapp.tools import TOOLS


@pytest.fixture(autouse=True)
def trial(client: FlaskClient, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(TOOLS, TOOL.name, TOOL)


def placeholder(html: str, name: str) -> str:
    tag = html.split(f'id="{name}"')[1].split(">")[0]
    return tag.split('placeholder="')[1].split('"')[0].replace("&#39;", "'") if "placeholder" in tag else ""


def test_the_settings_form_has_each_of_the_shops_fields_once(client: FlaskClient) -> None:
    page = client.get(start_project(client), headers=OWN)
    names = [name for name in forms(page)["settings"]["fields"] if name.startswith("shop-")]
    assert {"shop-least", "shop-turn"} <= set(names)
    assert page.text.count('id="settings-shop-least"') == 1


def test_it_is_remembered_shown_and_worked_with(client: FlaskClient) -> None:
    project = start_project(client)
    assert send(client, project, "settings", **{"shop-least": "2 1/2"}).status_code == 303
    assert client.get(f"{project}.json", headers=OWN).json["shop"]["least"]["text"] == "2 1/2"
    assert placeholder(client.get(project, headers=OWN).text, "settings-shop-least") == "2 1/2"
    asked = urlencode({"planks": "5", "project": project.split("/")[-1]})
    page = client.get(f"/work/trial?{asked}", headers=OWN).text
    assert placeholder(page, "least") == "2 1/2, your shop's"
    kept = send(client, f"/work/trial?{asked}", "sheet", called="Top")
    found = client.get(f"{kept.headers['Location']}.json", headers=OWN).json
    assert found["heads"][0]["inputs"] == {"planks": "5", "least": "2 1/2"}
    assert found["worked"]["same"] is True


def test_a_bad_one_is_an_error_at_its_field_and_the_form_stands_open(client: FlaskClient) -> None:
    project = start_project(client)
    response = send(client, project, "settings", **{"shop-least": "2 1/0", "shop-turn": "1/16"})
    assert response.status_code == 400
    assert not response.text.split('id="settings-shop-least-error">')[1].startswith("<")
    assert forms(response)["settings"]["fields"]["shop-turn"] == "1/16"
    assert '<details class="more" open>' in response.text
    assert client.get(f"{project}.json", headers=OWN).json["shop"] == {}


def test_without_a_project_the_usual_one_stands(client: FlaskClient) -> None:
    assert placeholder(client.get("/work/trial", headers=OWN).text, "least") == "usually 1 in"
    assert placeholder(client.get("/work/trial?unit=mm", headers=OWN).text, "least") == "usually 25 mm"
