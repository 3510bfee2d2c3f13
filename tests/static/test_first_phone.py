"""A phone's store of the first release opens in this one, and what it had not sent is sent."""

import re
from collections.abc import Iterator
from typing import Any

import pytest
from playwright.sync_api import Page, Route, expect

from tests import first_release
from tests.first_release import ADDRESS, PROJECT
from tests.serving import Quick, Serving
from tests.static.test_local_sync import all_sent

pytestmark = pytest.mark.browser

LAY = """(held) => new Promise((resolve, reject) => {
    const request = indexedDB.open(held.name, held.version);
    request.onupgradeneeded = () => {
        for (const [name, { keyPath, indexes }] of Object.entries(held.stores)) {
            const store = request.result.createObjectStore(name, keyPath === null ? {} : { keyPath });
            for (const [index, path] of indexes) store.createIndex(index, path);
        }
    };
    request.onsuccess = () => {
        const names = Object.keys(held.stores);
        const laying = request.result.transaction(names, "readwrite");
        for (const name of names) {
            const store = laying.objectStore(name);
            for (const [key, value] of held.stores[name].rows) {
                store.keyPath === null ? store.put(value, key) : store.put(value);
            }
        }
        laying.oncomplete = () => { request.result.close(); resolve(); };
        laying.onabort = () => reject(laying.error);
    };
    request.onerror = () => reject(request.error);
})"""

THEN = first_release.read("phone.json")
UNSENT: list[str] = [row["id"] for _, row in THEN["stores"]["outbox"]["rows"]]
OWN: str = dict(THEN["stores"]["meta"]["rows"])["device"]


@pytest.fixture(scope="module")
def updated(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Serving]:
    """Serve the data folder of then with the program of today."""
    server = Quick(first_release.database(tmp_path_factory.mktemp("updated") / "data")).start()
    yield server
    server.stop()


def laid(page: Page, server: Serving) -> Page:
    """Put the store of then in place, on a page of the origin that runs nothing."""
    page.goto(f"{server.address}/static/none/none.css")
    page.evaluate(LAY, THEN)
    return page


def opened(page: Page, address: str) -> Page:
    page.goto(address)
    expect(page.locator("html")).to_have_class(re.compile(r"\bready\b"))
    return page


def entries(page: Page, server: Serving) -> list[dict[str, Any]]:
    found: list[dict[str, Any]] = page.request.get(f"{server.address}{ADDRESS}/file").json()["entries"]
    return found


def test_all_of_it_is_shown_by_the_phone_alone(page: Page, updated: Serving) -> None:
    page.route("**/sync", lambda route: route.abort())
    opened(laid(page, updated), f"{updated.address}{ADDRESS}")
    main = page.locator("main")
    for words in ["Upper rail", "Lower rail", "Left stile", "Right stile", "First spacing", "Kept without a signal"]:
        expect(main).to_contain_text(words)
    expect(main).to_contain_text("rivals: say which one holds")
    expect(page.locator("#state")).to_have_text("cannot reach the server, 3 waiting")
    main.get_by_role("link", name="Right stile").click()
    expect(main).to_contain_text("measured in the yard")
    page.goto(f"{updated.address}{ADDRESS}")
    main.get_by_role("link", name="Kept without a signal").click()
    expect(main.locator(".hero")).to_contain_text("four and fifty-seven sixty-fourths")
    expect(main.locator(".exactly")).to_contain_text("313/64")


def test_what_was_unsent_is_sent_and_all_else_stays_as_it_was(page: Page, updated: Serving) -> None:
    before = entries(page, updated)
    opened(laid(page, updated), f"{updated.address}{ADDRESS}")
    all_sent(page)
    now = entries(page, updated)
    assert [entry["id"] for entry in before] == [entry["id"] for entry in first_release.read("project.json")["entries"]]
    assert now[: len(before)] == before
    assert [entry["id"] for entry in now[len(before) :]] == UNSENT
    drawn = page.locator("main").inner_html()
    assert page.request.get(f"{updated.address}{ADDRESS}").text().find(drawn) > 0  # as the server draws it


def test_another_database_is_given_all_that_the_phone_made(page: Page, common: Serving) -> None:
    """The shop began anew: the phone of then gives it what it made itself, also what it had sent long ago."""
    opened(laid(page, common), common.address)
    all_sent(page)
    made = [row for _, row in THEN["stores"]["entries"]["rows"] if row["by"] == OWN and row["project"] == PROJECT]
    assert {entry["id"] for entry in entries(page, common)} == {row["id"] for row in made}


def test_a_page_of_today_understands_a_server_of_then(page: Page, updated: Serving) -> None:
    """The server was put back to the first release: it is asked what it was always asked, and its answers are taken."""
    exchanges = first_release.read("exchanges.json")
    asked: list[dict[str, Any]] = []

    def then(route: Route) -> None:
        asked.append(route.request.post_data_json)
        first = exchanges[0]["answered"]
        answer = first if len(asked) == 1 else first | {"entries": [], "kept": [e["id"] for e in asked[-1]["entries"]]}
        route.fulfill(json=answer)

    page.route("**/sync", then)
    opened(page, updated.address)
    all_sent(page)
    expect(page.locator("main")).to_contain_text(exchanges[0]["answered"]["entries"][0]["body"]["name"])
    project = exchanges[0]["answered"]["entries"][0]["project"]
    opened(page, f"{updated.address}/projects/{project}")
    page.locator("#reading-place").fill("Back rail")
    page.locator("#reading-reading").fill("17 9/16")
    page.locator("#reading-note").fill("left side")
    with page.expect_response(lambda answer: bool((answer.request.post_data_json or {}).get("entries"))):
        page.get_by_role("button", name="Keep the reading").click()
    all_sent(page)
    sent = next(question for question in asked if question["entries"])
    like = exchanges[1]["asked"]
    assert (sent.keys(), sent["protocol"]) == (like.keys(), like["protocol"])
    assert sent["entries"][0].keys() == like["entries"][0].keys()
    assert like["entries"][0]["body"].keys() <= sent["entries"][0]["body"].keys()
