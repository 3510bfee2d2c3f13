"""Hosts, origins and headers: who may ask what."""

import pytest
from flask.testing import FlaskClient

from tests.pages.client import OWN, forms
from webapp.access.origin import POLICY

FOREIGN = (
    {"Sec-Fetch-Site": "cross-site"},
    {"Sec-Fetch-Site": "same-site"},
    {"Sec-Fetch-Site": "none"},
    {"Origin": "http://elsewhere.example"},
    {"Origin": "null"},
    {"Origin": "http://localhost:1"},
    {},
)


@pytest.mark.parametrize("headers", FOREIGN)
@pytest.mark.parametrize("address", ["/projects", "/sync", "/import"])
def test_what_another_page_sends_is_refused(client: FlaskClient, address: str, headers: dict[str, str]) -> None:
    form = forms(client.get("/", headers=OWN))["project"]
    typed = form["fields"] | {"name": "Not ours", "unit": "in", "graduation": "1/32"}
    assert client.post(address, data=typed, headers=headers).status_code == 403
    assert client.get("/projects.json", headers=OWN).json == {"projects": []}


def test_a_browser_that_says_no_site_is_trusted_by_its_origin(client: FlaskClient) -> None:
    form = forms(client.get("/", headers=OWN))["project"]
    typed = form["fields"] | {"name": "Ours", "unit": "in", "graduation": "1/32"}
    assert client.post("/projects", data=typed, headers={"Origin": "http://localhost"}).status_code == 303


@pytest.mark.parametrize("host", ["elsewhere.example", "127.0.0.1.example", "192.168.1.9", "localhost.example:80"])
def test_another_host_is_refused(client: FlaskClient, host: str) -> None:
    assert client.get("/", headers=OWN | {"Host": host}).status_code == 400


@pytest.mark.parametrize("host", ["127.0.0.1:8470", "localhost:8470"])
def test_this_machine_is_answered(client: FlaskClient, host: str) -> None:
    assert client.get("/", headers=OWN | {"Host": host}).status_code == 200


def test_another_site_may_open_a_page_by_a_link_and_nothing_else(client: FlaskClient) -> None:
    link = {"Sec-Fetch-Site": "cross-site", "Sec-Fetch-Mode": "navigate", "Sec-Fetch-Dest": "document"}
    assert client.get("/", headers=link).status_code == 200
    assert client.get("/", headers=link | {"Sec-Fetch-Dest": "iframe"}).status_code == 403
    assert client.get("/projects.json", headers=link | {"Sec-Fetch-Mode": "cors"}).status_code == 403


@pytest.mark.parametrize("address", ["/", "/nothing", "/work/spacing", "/work/nothing", "/work/spacing.json", "/sw.js"])
def test_every_answer_has_the_strict_headers(client: FlaskClient, address: str) -> None:
    headers = client.get(address, headers=OWN).headers
    assert headers["Content-Security-Policy"] == POLICY
    assert headers["X-Content-Type-Options"] == "nosniff"
    assert headers["Referrer-Policy"] == "same-origin"
    assert headers["Content-Type"].partition(";")[0] in ("text/html", "application/json", "text/javascript")
    assert "Cache-Control" in headers


def test_what_was_typed_is_shown_as_text_on_every_page(client: FlaskClient) -> None:
    form = forms(client.get("/", headers=OWN))["project"]
    typed = form["fields"] | {"name": "<script>x</script>", "unit": "in", "graduation": "1/32"}
    project = client.post("/projects", data=typed, headers=OWN).headers["Location"]
    for address in ("/", project, "/work/spacing?span=<script>x</script>"):
        html = client.get(address, headers=OWN).text
        assert "&lt;script&gt;x" in html
        assert "<script>x" not in html


def test_no_page_has_an_inline_script_or_style(demo: FlaskClient) -> None:
    for address in ("/", "/work/spacing?span=30&slat=2&count=7", "/shell/project", "/nothing"):
        html = demo.get(address, headers=OWN).text
        assert "<style" not in html
        assert " style=" not in html
        assert " onclick" not in html
        assert all("src=" in tag.split(">")[0] for tag in html.split("<script")[1:])


@pytest.mark.parametrize("address", ["/", "/work/spacing.json?span=30&slat=2&count=7"])
@pytest.mark.parametrize("coding", ["br", "gzip"])
def test_text_is_compressed(demo: FlaskClient, address: str, coding: str) -> None:
    response = demo.get(address, headers=OWN | {"Accept-Encoding": coding})
    assert response.headers["Content-Encoding"] == coding
