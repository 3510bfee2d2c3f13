"""A tool's lists, sizes and words without script: the text of the lines is the field."""

from urllib.parse import urlencode

import pytest
from flask.testing import FlaskClient

from tests.pages.client import OWN, forms, send, start_project
from tests.trial import TOOL
from webapp.tools import TOOLS

PLANKS = "left: 5 1/2\r\nright: 5 1/4 strong"  # as a browser sends a textarea's lines


@pytest.fixture(autouse=True)
def trial(client: FlaskClient, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(TOOLS, TOOL.name, TOOL)


def page(client: FlaskClient, **typed: str) -> str:
    return client.get(f"/work/trial?{urlencode(typed)}", headers=OWN).text


def held(html: str, name: str = "planks") -> str:
    found: str = forms_of(html)["fields"]["fields"][name]
    return found


def forms_of(html: str) -> dict:
    return forms(type("Answer", (), {"text": html}))


def test_lines_from_the_address_are_worked_and_stand_in_the_textarea(client: FlaskClient) -> None:
    html = page(client, planks=PLANKS)
    assert "2 planks together" in html
    assert held(html) == PLANKS


@pytest.mark.parametrize("text", ["\nleft: 5", "\n\n5", "</textarea><b>", "a & b: 5 &amp; 1", " 5 ", "5\n\n6\n"])
def test_a_textarea_gives_back_what_it_was_given(client: FlaskClient, text: str) -> None:
    html = page(client, planks=text)
    assert held(html) == text
    assert "<b>" not in html


def test_an_error_of_a_list_names_the_line_and_stands_under_the_rows(client: FlaskClient) -> None:
    html = page(client, planks="left: 5 1/2\nright: 5 1/0")
    before, after = html.split('<p class="error" id="planks-error">')
    assert after.startswith("right: ")
    assert "(At " not in after.split("</p>")[0]
    assert 'data-rows="planks"' in before
    assert 'aria-invalid="true"' in before


def test_the_rows_are_clones_of_a_template_in_the_form(client: FlaskClient) -> None:
    html = page(client)
    (template,) = [part.split("</template>")[0] for part in html.split("<template>")[1:]]
    assert template.count('data-kind="length"') == 1
    assert ' name="' not in template, "a row would be sent beside its list"
    assert html.count('data-rows="planks"></div>') == 1


def test_words_for_a_field_are_buttons_and_a_choice_stays_a_select(client: FlaskClient) -> None:
    html = page(client)
    assert '<button type="button" class="quiet" data-put="widest">the widest</button>' in html
    assert '<select id="faces"' in html
    assert 'data-put="both"' not in html


def test_a_sheet_of_lines_is_kept_with_one_kind_of_line_end_and_opened_again(client: FlaskClient) -> None:
    project = start_project(client)
    asked = urlencode({"planks": PLANKS, "project": project.split("/")[-1]})
    kept = send(client, f"/work/trial?{asked}", "sheet", called="Top")
    assert kept.status_code == 303, kept.text
    found = client.get(f"{kept.headers['Location']}.json", headers=OWN).json
    assert found["heads"][0]["inputs"] == {"planks": PLANKS.replace("\r\n", "\n")}
    assert found["worked"]["same"] is True
    sheet = client.get(kept.headers["Location"], headers=OWN).text
    change = sheet.split('href="/work/trial?')[1].split('"')[0].replace("&amp;", "&")
    assert held(client.get(f"/work/trial?{change}", headers=OWN).text) == PLANKS.replace("\r\n", "\n")


def test_leans_typed_as_signs_are_words_in_links_on_every_line(client: FlaskClient) -> None:
    start_project(client)
    html = page(client, planks="left: 5+\nright: 6-\n7")
    assert "planks=left%3A%205%20strong%0Aright%3A%206%20scant%0A7" in html
