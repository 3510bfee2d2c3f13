"""A store that is full, cleared or refused is noticed and said, and takes nothing along."""

import re

import pytest
from playwright.sync_api import Page, expect

from tests.hand import ready, started
from tests.serving import Serving
from tests.static.test_local_sync import all_sent, until
from tests.static.versions import offline

pytestmark = pytest.mark.browser

CLEARED = """() => new Promise((resolve, reject) => {
    const request = indexedDB.deleteDatabase("shoulderline");
    request.onsuccess = () => resolve();
    request.onerror = () => reject(request.error);
})"""
FULL = """() => {
    window.full = true;
    const put = IDBObjectStore.prototype.put;
    const error = Object.getOwnPropertyDescriptor(IDBTransaction.prototype, "error");
    const fails = (transaction) => window.full && transaction.objectStoreNames.contains("outbox");
    Object.defineProperty(IDBTransaction.prototype, "error", {
        get() { return fails(this) ? new DOMException("no room", "QuotaExceededError") : error.get.call(this); },
    });
    IDBObjectStore.prototype.put = function (...words) {
        if (!fails(this.transaction)) return put.apply(this, words);
        if (!this.transaction.ending) queueMicrotask(() => this.transaction.abort());
        this.transaction.ending = true;
        return {};
    };
    const commit = IDBTransaction.prototype.commit;
    IDBTransaction.prototype.commit = function () {
        if (!this.ending) commit.call(this);
    };
}"""
NEWER = """() => new Promise((resolve) => {
    indexedDB.open("shoulderline", 99).onsuccess = ({ target }) => { target.result.close(); resolve(); };
})"""
REFUSED = """() => {
    IDBFactory.prototype.open = () => { throw new DOMException("not allowed", "SecurityError"); };
}"""
FAILING = """() => {
    IDBFactory.prototype.open = () => {
        const request = { error: new DOMException("Internal error.", "UnknownError") };
        setTimeout(() => request.onerror());
        return request;
    };
}"""

# A browser that is asked for its promise: it counts that, and answers what it was told to, or never.
PROMISING = """() => {
    navigator.storage.persist = () => {
        sessionStorage.asked = Number(sessionStorage.asked ?? 0) + 1;
        const answer = sessionStorage.answer;
        return answer ? Promise.resolve(answer === "yes") : new Promise(() => {});
    };
}"""
ASKED = "Number(sessionStorage.asked ?? 0)"
ANSWERED = """() => new Promise((resolve) => {
    indexedDB.open("shoulderline").onsuccess = ({ target }) => {
        const kept = target.result.transaction("meta").objectStore("meta").get("stays");
        kept.onsuccess = () => {
            target.result.close();
            resolve(kept.result ?? null);
        };
    };
})"""


def measure(page: Page, place: str) -> None:
    page.locator("#reading-place").fill(place)
    page.locator("#reading-reading").fill("17 11/16")
    page.get_by_role("button", name="Keep the reading").click()


def cleared(page: Page, server: Serving) -> None:
    """Clear the store as a browser does that wants the room: from a page that holds it no longer."""
    page.goto(f"{server.address}/static/none/none.css")
    page.evaluate(CLEARED)


def test_a_full_store_says_so_and_keeps_nothing_by_halves(page: Page, common: Serving) -> None:
    """As a browser says it: the transaction ends with this error. Chromium's own override of the room has no effect."""
    project = started(page, common.address, "Full")
    expect(page.locator("#state")).to_have_text("all sent")
    page.evaluate(FULL)
    measure(page, "Upper rail")
    expect(page.locator("#reading-error")).to_contain_text(
        "could not be kept on this phone: there is no room left on it"
    )
    expect(page.locator("#reading-place")).to_have_value("Upper rail")
    assert page.request.get(f"{project}.json").json()["places"] == []
    page.evaluate("window.full = false")
    page.get_by_role("button", name="Keep the reading").click()
    expect(page.locator("#reading-place")).to_have_value("")
    all_sent(page)
    assert [place["place"] for place in page.request.get(f"{project}.json").json()["places"]] == ["Upper rail"]


@pytest.mark.parametrize(
    ("unsent", "words"),
    [
        (0, "Nothing waited to be sent: all that was sent comes back"),
        (1, "One entry was not sent yet and must be made again"),
        (2, "2 entries were not sent yet and must be made again"),
    ],
)
def test_a_store_that_the_browser_cleared_is_noticed(page: Page, common: Serving, unsent: int, words: str) -> None:
    project = started(page, common.address, "Cleared")
    expect(page.locator("#state")).to_have_text("all sent")
    page.context.route("**/sync", lambda route: route.abort())
    for count in range(unsent):
        measure(page, f"Rail {count}")
        expect(page.locator("#state")).to_have_text(f"cannot reach the server, {count + 1} waiting")
    cleared(page, common)
    page.context.unroute("**/sync")
    page.goto(project)
    expect(page.locator("#lost")).to_contain_text(words)
    expect(page.locator("#state")).to_have_text("all sent")
    page.goto(project)
    expect(page.locator("html")).to_have_class(re.compile(r"\bready\b"))
    expect(page.locator("#lost")).to_be_empty()
    expect(page.locator("h1")).to_have_text("Cleared")


def test_a_phone_that_was_never_here_has_lost_nothing(page: Page, common: Serving) -> None:
    page.context.route("**/sync", lambda route: route.abort())
    for _ in range(2):
        page.goto(common.address)
        expect(page.locator("#state")).to_have_text("cannot reach the server, nothing waiting")
        expect(page.locator("#lost")).to_be_empty()


@pytest.mark.parametrize("fault", [REFUSED, FAILING], ids=["refused", "failing"])
def test_without_a_store_a_page_of_the_server_says_so_and_keeps_by_its_forms(
    page: Page, common: Serving, fault: str
) -> None:
    project = started(page, common.address, "No store")
    expect(page.locator("#state")).to_have_text("all sent")
    page.context.add_init_script(f"({fault})()")
    page.evaluate("navigator.serviceWorker.getRegistration().then((found) => found?.unregister())")
    page.goto(project)
    expect(page.locator("#state")).to_have_text("this browser lets nothing be kept here; all goes to the server")
    measure(page, "Upper rail")
    expect(page.locator("main")).to_contain_text("Upper rail")
    assert [place["place"] for place in page.request.get(f"{project}.json").json()["places"]] == ["Upper rail"]


def test_without_a_store_a_kept_page_says_so(page: Page, common: Serving) -> None:
    offline(page, common.address)
    page.context.add_init_script(f"({REFUSED})()")
    page.goto(common.address)
    expect(page.locator("main")).to_contain_text("this browser lets nothing be kept here")
    expect(page.locator("#state")).to_have_text("this browser lets nothing be kept here")


def test_a_page_that_is_older_than_the_store_says_so_and_leaves_it_alone(page: Page, common: Serving) -> None:
    offline(page, common.address)
    page.goto(f"{common.address}/static/none/none.css")
    page.evaluate(NEWER)
    page.goto(common.address)
    expect(page.locator("main")).to_contain_text("this page is older than what is kept here")
    assert page.evaluate("async () => (await indexedDB.databases()).map(({ version }) => version)") == [99]


def promising(page: Page, common: Serving, answer: str) -> None:
    """Open the first page in a browser that gives such an answer when it is asked for its promise."""
    page.context.add_init_script(f"({PROMISING})()")
    page.goto(common.address)
    page.evaluate("(answer) => { sessionStorage.answer = answer; }", answer)


def said(page: Page, common: Serving, words: str) -> None:
    page.goto(common.address)
    page.get_by_text("This phone", exact=True).click()
    expect(page.locator("#stays")).to_contain_text(words)


@pytest.mark.parametrize(("given", "words"), [(True, "This browser promises"), (False, "This browser may clear")])
def test_the_browser_is_asked_to_keep_it_at_the_first_save_and_its_answer_is_said(
    page: Page, common: Serving, given: bool, words: str
) -> None:
    promising(page, common, "yes" if given else "no")
    expect(page.locator("#state")).to_have_text("all sent")
    assert page.evaluate(ASKED) == 0
    started(page, common.address, "Asked")
    measure(page, "Upper rail")  # the page before may have been left before the answer
    until(page, lambda: page.evaluate(ANSWERED) is given)
    said(page, common, words)
    page.goto(f"{common.address}/diagnostics")
    expect(page.locator("#standing")).to_contain_text("yes, the browser promised" if given else "no, the browser may")


def test_a_page_left_while_the_browser_is_asked_has_no_answer_and_the_next_save_asks_again(
    page: Page, common: Serving
) -> None:
    promising(page, common, "")
    project = started(page, common.address, "Left")
    asked = page.evaluate(ASKED)
    measure(page, "Upper rail")
    until(page, lambda: page.evaluate(ASKED) == asked + 1)
    page.evaluate("sessionStorage.answer = 'yes'")
    page.goto(project)
    ready(page)
    assert page.evaluate(ANSWERED) is None
    measure(page, "Lower rail")
    until(page, lambda: page.evaluate(ANSWERED) is True)
    assert page.evaluate(ASKED) == asked + 2
    said(page, common, "This browser promises")
