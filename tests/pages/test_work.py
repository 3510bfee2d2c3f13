"""The tools over HTTP: the same answer as the core's, and bad input at every field."""

import json

import pytest
from flask import Flask
from flask.testing import FlaskClient

from tests.pages.client import OWN, Forms
from webapp.core.sheet import to_json
from webapp.core.tool import Field, Tool
from webapp.core.working import work
from webapp.tools import TOOLS
from webapp.units import FACTORS

FIELDS = [(tool, field) for tool in TOOLS.values() for field in tool.fields]
IDS = [f"{tool.name}-{field.name}" for tool, field in FIELDS]

JUNK = (
    "17 11/0",
    "<script>alert(1)</script>",
    "1e3000000",
    "٣",
    "1_000",
    "\x00",
    "\u202e17",
    "'; drop table entries; --",
    "{{ 7 * 7 }}",
    "9" * 121,
    "((((((1))))))",
    "-1/0 strong strong",
    "\N{BED}",
)


@pytest.fixture(scope="module")
def asked(tmp_path_factory: pytest.TempPathFactory):
    from webapp.app import create_app

    app: Flask = create_app(tmp_path_factory.mktemp("work"))
    yield app.test_client()
    app.extensions["shoulderline"].close()


def example(tool: Tool) -> dict[str, str]:
    return dict(tool.example)


@pytest.mark.parametrize("tool", TOOLS.values(), ids=list(TOOLS))
def test_every_tool_has_a_worked_example_that_works(asked: FlaskClient, tool: Tool) -> None:
    response = asked.get(f"/work/{tool.name}.json", query_string=example(tool), headers=OWN)
    assert response.status_code == 200, response.text
    assert response.text == to_json(work(tool, example(tool), FACTORS)["sheet"])


@pytest.mark.parametrize("tool", TOOLS.values(), ids=list(TOOLS))
def test_the_empty_form_is_shown_where_no_field_is_in_the_address(asked: FlaskClient, tool: Tool) -> None:
    response = asked.get(f"/work/{tool.name}?unit=mm&called=x", headers=OWN)
    assert response.status_code == 200
    assert "hero" not in response.text
    assert tool.about in response.text


@pytest.mark.parametrize("junk", JUNK)
@pytest.mark.parametrize(("tool", "field"), FIELDS, ids=IDS)
def test_bad_input_is_an_error_at_its_field_and_stays(asked: FlaskClient, tool: Tool, field: Field, junk: str) -> None:
    typed = example(tool) | {field.name: junk}
    outcome = work(tool, typed, FACTORS)
    answer = asked.get(f"/work/{tool.name}.json", query_string=typed, headers=OWN)
    page = asked.get(f"/work/{tool.name}", query_string=typed, headers=OWN)
    assert answer.json == {"errors": outcome["errors"]}
    assert (answer.status_code, page.status_code) == (400, 400)
    for name, sentence in outcome["errors"].items():
        assert sentence
        assert name in [f.name for f in tool.fields]
    assert field.name in outcome["errors"]
    if field.kind != "choice":
        assert shown(page.text, field.name) == junk.replace("\x00", "\ufffd") or junk in page.text


def shown(html: str, name: str) -> str:
    return Forms(html).found["fields"]["fields"][name]


@pytest.mark.parametrize("name", ["unit", "graduation"])
@pytest.mark.parametrize("junk", ["furlong", "1/7", "0", "\N{BED}"])
def test_a_bad_unit_or_graduation_is_an_error_at_its_place(asked: FlaskClient, name: str, junk: str) -> None:
    typed = example(TOOLS["spacing"]) | {name: junk}
    answer = asked.get("/work/spacing.json", query_string=typed, headers=OWN)
    assert answer.status_code == 400
    assert list(answer.json["errors"]) == [name]
    assert asked.get("/work/spacing", query_string=typed, headers=OWN).status_code == 400


def test_an_unknown_field_is_an_error_in_json_and_passed_over_by_the_page(asked: FlaskClient) -> None:
    typed = example(TOOLS["spacing"]) | {"colour": "red"}
    answer = asked.get("/work/spacing.json", query_string=typed, headers=OWN)
    assert (answer.status_code, list(answer.json["errors"])) == (400, ["colour"])
    assert asked.get("/work/spacing", query_string=typed, headers=OWN).status_code == 200


@pytest.mark.parametrize(
    "address", ["/work/nothing", "/work/nothing.json", "/projects/x", "/nothing", "/projects/x.json"]
)
def test_what_is_not_here_is_said_so(asked: FlaskClient, address: str) -> None:
    response = asked.get(address, headers=OWN)
    assert response.status_code == 404
    assert "here" in response.text or "nothing" in response.text


def test_an_address_longer_than_any_form_is_no_failure(asked: FlaskClient) -> None:
    assert asked.get("/work/spacing?span=" + "9" * 60000, headers=OWN).status_code == 400


@pytest.mark.parametrize("query", ["span=%ff%fe", "span=%00", "span=%ed%a0%80", "%ff=1", "span=1&span=2", "&&&=;"])
def test_bytes_that_are_no_text_are_no_failure(asked: FlaskClient, query: str) -> None:
    for address in ("/work/spacing", "/work/spacing.json"):
        assert asked.get(f"{address}?{query}", headers=OWN).status_code in (200, 400)


def test_the_page_says_the_mark_and_the_json_the_exact_value(asked: FlaskClient) -> None:
    typed = {"span": "58 3/8", "slat": "2 3/4", "count": "9"}
    answer = asked.get("/work/spacing.json", query_string=typed, headers=OWN)
    assert json.loads(answer.text)["answer"]["value"] == {"inches": "269/80", "mark": "3 3/8 scant", "mm": "85.41"}
    page = asked.get("/work/spacing", query_string=typed, headers=OWN).text
    assert '<span class="whole">3</span>' in page
    assert '<span class="lean">scant</span>' in page
