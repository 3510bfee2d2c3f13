"""Shells: the same frame with nothing in it, and patterns that know which address has one."""

import json
import re

import pytest
from flask import Blueprint, Flask, Response

from webapp.app import create_app
from webapp.demo import fill
from webapp.phone.build import PLACE
from webapp.phone.shells import kept, kept_pages, routes, shells
from webapp.tools import TOOLS

NOTHING_KEPT = ("/shell/home", "/shell/help/", "/shell/source/", "/shell/origin", "/shell/diagnostics")
ID = "01900000-0000-7000-8000-000000000001"


@pytest.fixture
def small():
    """Give an application of three kept pages and one that is not."""
    pages = Blueprint("pages", __name__)
    empty = lambda **given: Response(f"shell {given}")  # noqa: E731

    @kept(pages, "/", "home", empty)
    def home():
        return "live"

    @kept(pages, "/projects/<project>/sheets/<entry>", "sheet", empty)
    def sheet(project, entry):
        return f"live {project} {entry}"

    @kept(pages, "/work/<tool>", "tool", empty)
    def tool(tool):
        return f"live {tool}"

    @pages.get("/projects/<project>.json")
    def bare(project):
        return project

    app = Flask(__name__)
    app.register_blueprint(pages)
    return app


def test_a_kept_page_answers_with_its_data(small):
    client = small.test_client()
    assert client.get("/").text == "live"
    assert client.get("/work/spacing").text == "live spacing"
    assert client.post("/").status_code == 405


def test_shells_have_addresses_of_their_own_one_for_each_tool(small):
    assert shells(small, ["a", "b"]) == {
        "/shell/home": b"shell {}",
        "/shell/sheet": b"shell {}",
        "/shell/tool/a": b"shell {'tool': 'a'}",
        "/shell/tool/b": b"shell {'tool': 'b'}",
    }


def test_patterns_come_from_the_url_map(small):
    assert [(route.pattern, route.shell, route.screen) for route in routes(small, ["a.b"])] == [
        ("^/$", "/shell/home", "home"),
        ("^/projects/(?<project>[^/.]+)/sheets/(?<entry>[^/.]+)$", "/shell/sheet", "sheet"),
        (r"^/work/a\.b$", "/shell/tool/a.b", "tool"),
    ]


def test_a_page_marked_twice_on_two_applications_is_kept_on_each(small):
    assert len(kept_pages(small)) == 3
    assert kept_pages(Flask("other")) == []


@pytest.fixture(scope="module")
def app(tmp_path_factory):
    """Give the whole program, with the demo."""
    made = create_app(tmp_path_factory.mktemp("shells"))
    fill(made.extensions["shoulderline"])
    yield made
    made.extensions["shoulderline"].close()


def patterns(app):
    """Give the compiled patterns; Python writes a named group in another way."""
    found = routes(app, TOOLS)
    return [(re.compile(route.pattern.replace("(?<", "(?P<")), route) for route in found]


ADDRESSES = {
    "/": "/shell/home",
    f"/projects/{ID}": "/shell/project",
    f"/projects/{ID}/readings/{ID}": "/shell/reading",
    f"/projects/{ID}/sheets/{ID}": "/shell/sheet",
    "/work/spacing": "/shell/tool/spacing",
    "/help/spacing": "/shell/help/spacing",
    "/diagnostics": "/shell/diagnostics",
    "/help/none": None,
    "/work/none": None,
    "/work/spacing.json": None,
    f"/projects/{ID}.json": None,
    f"/projects/{ID}/file": None,
    f"/projects/{ID}/sheets/{ID}.json": None,
    "/projects": None,
    "/projects.json": None,
    "/sync": None,
    "/sw.js": None,
    "/import": None,
    "/shell/home": None,
    "/static/x/y": None,
}


@pytest.mark.parametrize("address", ADDRESSES)
def test_each_address_has_its_shell_or_none(app, address):
    assert [route.shell for pattern, route in patterns(app) if pattern.search(address)] == (
        [ADDRESSES[address]] if ADDRESSES[address] else []
    )


def test_no_other_page_of_the_url_map_is_taken_for_a_kept_one(app):
    kept_endpoints = {page.endpoint for page in kept_pages(app)}
    others = [
        rule for rule in app.url_map.iter_rules() if rule.endpoint not in kept_endpoints and "GET" in rule.methods
    ]
    assert len(others) > 5
    for rule in others:
        address = re.sub(r"<[^>]+>", ID, rule.rule)
        assert not any(pattern.search(address) for pattern, _ in patterns(app)), rule


def test_every_kept_page_has_its_shell_in_the_worker(app):
    build = app.extensions[PLACE]
    named = json.loads(build.worker.split(b"\n")[0].removeprefix(b"self.kept = ").removesuffix(b";"))
    assert {shell for _, shell in named["patterns"]} == {f for f in build.files if f.startswith("/shell/")}
    assert {route.screen for _, route in patterns(app)} == {page.screen for page in kept_pages(app)}
    assert {"home", "project", "reading", "sheet", "tool"} <= {page.screen for page in kept_pages(app)}


def words_of_the_demo(app):
    """Give the words that only the demo's data has."""
    store = app.extensions["shoulderline"]
    bodies = [entry["body"] for project in store.projects() for entry in store.entries(project)]
    texts = {text for body in bodies for key in ("name", "place", "called") if (text := body.get(key))}
    return texts | set(store.projects())


def test_a_shell_holds_no_token_no_action_and_no_word_of_the_demo(app):
    words = words_of_the_demo(app)
    assert len(words) > 3
    for address, body in shells(app, TOOLS).items():
        text = body.decode()
        assert "csrf_token" not in text, address
        assert "entry_id" not in text, address
        assert '<main id="main"></main>' in text, address
        assert [word for word in words if word in text] == [], address
        keeping = re.findall(r"<form[^>]*data-keeps[^>]*>", text)
        assert keeping or address.startswith(NOTHING_KEPT)  # nothing to keep
        assert not any("action=" in form for form in keeping), address


def test_what_keeps_in_a_shell_waits_for_its_script(app):
    for address, body in shells(app, TOOLS).items():
        for form in re.findall(r"<form[^>]*data-keeps.*?</form>", body.decode(), re.DOTALL):
            sending = [b for b in re.findall(r"<button[^>]*>", form) if 'type="button"' not in b]
            assert all(" disabled" in button for button in sending), address


def test_a_live_page_is_never_stored(app):
    client = app.test_client()
    for address in ["/", "/work/spacing", f"/projects/{ID}"]:
        answer = client.get(address, headers={"Sec-Fetch-Site": "none"})
        assert answer.headers["Cache-Control"] == "no-store"
        assert "Shoulderline-Stamp" not in answer.headers
