"""A tool's help over HTTP: one screen a tool, and a worked example that fills the form."""

import pytest
from flask.testing import FlaskClient

from tests.pages.client import OWN, start_project
from webapp.tools import TOOLS


def href(html: str, words: str) -> str:
    """Return the address behind a link's words."""
    before = html.split(f">{words}</a>")[0]
    return before.rpartition('href="')[2].split('"')[0].replace("&amp;", "&")


@pytest.mark.parametrize("name", TOOLS)
def test_the_example_of_the_help_fills_the_form_and_works(client: FlaskClient, name: str) -> None:
    page = client.get(href(client.get(f"/work/{name}", headers=OWN).text, "Help, with a worked example"), headers=OWN)
    assert page.status_code == 200
    worked = client.get(href(page.text, "Fill the form with it"), headers=OWN)
    assert worked.status_code == 200
    assert 'class="hero"' in worked.text
    assert href(page.text, "To the empty form") == f"/work/{name}"


def test_help_leads_back_into_the_project_that_it_was_asked_from(client: FlaskClient) -> None:
    project = start_project(client)
    tool = href(client.get(project, headers=OWN).text, TOOLS["spacing"].title)
    page = client.get(href(client.get(tool, headers=OWN).text, "Help, with a worked example"), headers=OWN).text
    assert href(page, "Bench in ash") == project
    assert href(page, "To the empty form") == tool
    assert 'data-keeps="sheet" action' in client.get(href(page, "Fill the form with it"), headers=OWN).text


def test_help_says_the_tools_cautions(client: FlaskClient) -> None:
    page = client.get("/help/spacing", headers=OWN).text
    assert page.count("<h1>") == 1
    for caution in TOOLS["spacing"].cautions:
        assert caution.replace("'", "&#39;") in page


def test_help_of_a_tool_that_there_is_none_of_is_not_here(client: FlaskClient) -> None:
    assert client.get("/help/none", headers=OWN).status_code == 404
    assert client.get("/help/spacing?project=none", headers=OWN).status_code == 200
