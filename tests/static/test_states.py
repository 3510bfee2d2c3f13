"""The list of states is held against the URL map, and each state shows what its name says."""

import re

import pytest
from flask import Flask
from playwright.sync_api import Page, expect

from tests.serving import Serving
from tests.static.states import OTHERS, addresses, others, pressed, shown, states
from tests.static.test_screens_same import main_of, read
from webapp.app import create_app
from webapp.phone.shells import kept_pages

WORKER = "block"

# What the state's screen says, as it is drawn by the server.
SAYS = {
    "project, everything": "rivals: say which one holds",
    "project, empty": "Nothing yet",
    "project, put away": "put away",
    "reading, rivals": "This one holds",
    "reading, gone": "was withdrawn",
    "sheet, sheet-stale": "Stale:",
    "sheet, sheet-waits": "It waits:",
    "sheet, sheet-cut": "It is cut",
    "sheet, sheet-rival": "This one holds",
    "part, part-rival": "This one holds",
    "origin, nothing": "Not here",
}


def pages(app: Flask) -> set[str]:
    """Return the endpoints that answer GET with a page: neither data, nor a file, nor a part of another page."""
    rules = {rule.endpoint for rule in app.url_map.iter_rules() if "GET" in (rule.methods or ())}
    files = re.compile(r"_json$|^phone\.|^files\.|^pairing\.part$|^static$")
    return {endpoint for endpoint in rules if not files.search(endpoint)}


@pytest.fixture(scope="module")
def app(tmp_path_factory: pytest.TempPathFactory) -> Flask:
    made = create_app(tmp_path_factory.mktemp("app"))
    made.extensions["shoulderline"].close()
    return made


def test_every_screen_of_the_url_map_has_a_state(app: Flask) -> None:
    kept = {page.endpoint: page.screen for page in kept_pages(app)}
    assert set(kept.values()) == set(addresses())
    alone = {endpoint.split(".")[0] for endpoint in pages(app) - set(kept)}
    # A page for an error has no address of its own; the pairing page is for phones: tests/access has it.
    assert alone == {*OTHERS, "pairing"} - {"failing"}


def test_a_page_that_is_new_is_seen(app: Flask) -> None:
    before = pages(app)
    app.add_url_rule("/new", "projects.new", lambda: "")
    assert pages(app) - before == {"projects.new"}


@pytest.mark.parametrize("name", SAYS)
def test_a_state_shows_what_its_name_says(everything: tuple[Serving, dict[str, str]], name: str) -> None:
    serving, ids = everything
    (state,) = [state for state in states(ids) if str(state) == name]
    assert SAYS[name] in main_of(read(serving.address + state.address))


@pytest.mark.browser
def test_a_press_makes_the_state_that_is_named(page: Page, everything: tuple[Serving, dict[str, str]]) -> None:
    serving, ids = everything
    for state in pressed(ids):
        shown(page, serving, state)
        if "pad" in state.name:
            expect(page.locator("#pad")).to_be_visible()
        elif state.name == "the last answer stands":
            expect(page.locator("#held")).not_to_be_empty()
        else:
            expect(page.locator(".error:not(:empty)").first).to_be_visible()


def test_no_two_states_are_alike(everything: tuple[Serving, dict[str, str]]) -> None:
    _, ids = everything
    listed = [*states(ids), *pressed(ids), *others(ids)]
    assert (
        len({str(state) for state in listed})
        == len({(state.address, state.presses) for state in listed})
        == len(listed)
    )
