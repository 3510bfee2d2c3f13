"""What the phone holds and how it is sent: nothing is lost, nothing is there twice, whatever answers."""

import json
import re
import shutil

import pytest
from playwright.sync_api import Page, Route, expect

from tests.cases import case

pytestmark = pytest.mark.browser
WORKER = "block"

SENT, WAITING = "all sent", "cannot reach the server, 1 waiting"


def state(page: Page, words):
    """Wait for the words; they follow the store a moment later, so "all sent" is believed when nothing waits there."""
    if words == SENT:
        until(page, lambda: outbox(page) == [])
    expect(page.locator("#state")).to_have_text(words)


def all_sent(page: Page) -> None:
    """Wait until the server has all that was kept here, and the page says so."""
    state(page, SENT)


def opened(page: Page, address: str) -> Page:
    """Open an address and wait until the phone has taken the page over."""
    page.goto(address)
    expect(page.locator("html")).to_have_class(re.compile(r"\bready\b"))
    return page


def start_project(page: Page, serving, name="Bench in ash") -> str:
    """Start a project and give its address."""
    opened(page, serving.address)
    page.get_by_label("Name").fill(name)
    page.get_by_role("button", name="Start").click()
    page.wait_for_url("**/projects/*")
    expect(page.locator("h1")).to_have_text(name)
    return page.url


def measure(page: Page, place: str, text: str) -> None:
    page.locator("#reading-place").fill(place)
    page.locator("#reading-reading").fill(text)
    page.get_by_role("button", name="Keep the reading").click()


def kept(page: Page, place: str, text: str) -> None:
    """Measure, and wait until it is kept here."""
    measure(page, place, text)
    expect(page.locator("#reading-place")).to_have_value("")


def places(page: Page, address: str) -> list[str]:
    """Ask the server for the places of a project."""
    return [place["place"] for place in page.request.get(f"{address}.json").json()["places"]]


def module(page: Page, name: str, work: str, argument=None):
    """Run work on a module of the page; the policy forbids eval, not an import."""
    script = f"""async (argument) => {{
        const here = document.querySelector('script[type="module"]').src;
        const found = await import(new URL("{name}.js", here).href);
        return ({work})(found, argument);
    }}"""
    return page.evaluate(script, argument)


def until(page: Page, done) -> None:
    """Wait until something is so that no element shows."""
    for _ in range(1200):
        if done():
            return
        page.wait_for_timeout(50)
    raise AssertionError("it did not come to that")


def wake(page: Page) -> None:
    """Give a sign of life, as a phone does that is taken up again."""
    page.evaluate("dispatchEvent(new Event('focus'))")


def outbox(page: Page) -> list[dict]:
    return module(page, "local", "(local) => local.unsent()")


def answering(page: Page, **answer):
    """Answer for the server, as something else on the way would."""
    page.context.route("**/sync", lambda route: route.fulfill(**answer))


def test_what_is_kept_here_is_sent_and_taken_as_it_is(page, common):
    address = start_project(page, common)
    kept(page, "Clear span", "58 3/8 strong")
    state(page, SENT)
    expect(page.locator("main")).to_contain_text("Clear span")
    assert places(page, address) == ["Clear span"]
    assert outbox(page) == []


def test_what_is_kept_while_the_server_is_gone_is_there_once_when_it_is_back(page, serving):
    address = start_project(page, serving)
    state(page, SENT)
    serving.stop()
    kept(page, "Clear span", "58 3/8")
    state(page, WAITING)
    kept(page, "Post", "2 1/4")
    state(page, "cannot reach the server, 2 waiting")
    assert len(outbox(page)) == 2
    serving.start()
    wake(page)
    state(page, SENT)
    assert places(page, address) == ["Clear span", "Post"]


def test_another_phone_is_given_what_this_one_sent(page, common, browser):
    address = start_project(page, common)
    measure(page, "Clear span", "58 3/8")
    state(page, SENT)
    with browser.new_context() as other:
        second = opened(other.new_page(), address)
        expect(second.locator("main")).to_contain_text("Clear span")
        kept(second, "Clear span", "58 1/2")
        state(second, SENT)
    page.reload()
    expect(page.locator("main")).to_contain_text("1 before it")


def test_a_double_press_keeps_one_entry(page, common):
    address = start_project(page, common)
    page.locator("#reading-place").fill("Clear span")
    page.locator("#reading-reading").fill("58 3/8")
    page.get_by_role("button", name="Keep the reading").dblclick()
    expect(page.locator("#reading-place")).to_have_value("")  # it is kept; before that, all is sent as well
    state(page, SENT)
    found = page.request.get(f"{address}.json").json()
    assert [len(place["heads"] + place["past"]) for place in found["places"]] == [1]
    expect(page.locator(".error:not(:empty)")).to_have_count(0)


def test_errors_stand_at_their_fields_and_what_was_typed_stays(page, common):
    start_project(page, common)
    measure(page, "Clear span", "58 3/0")
    expect(page.locator("#reading-reading-error")).not_to_be_empty()
    expect(page.locator("#reading-reading")).to_have_value("58 3/0")
    expect(page.locator("#reading-place")).to_have_value("Clear span")
    assert outbox(page) == []
    measure(page, "Clear span", "58 3/8")
    expect(page.locator("main")).to_contain_text("Clear span")
    expect(page.locator("#reading-reading-error")).to_be_empty()


NO_ANSWERS = {
    "a hotel's page": {"status": 200, "content_type": "text/html", "body": "<h1>Welcome</h1>"},
    "JSON of another kind": {"status": 200, "content_type": "application/json", "body": "{}"},
    "null": {"status": 200, "content_type": "application/json", "body": "null"},
    "401": {"status": 401, "body": "{}"},
    "403": {"status": 403, "body": "{}"},
    "404": {"status": 404, "body": "{}"},
    "500": {"status": 500, "body": "{}"},
    "503": {"status": 503, "body": ""},
    "sent elsewhere": {"status": 302, "headers": {"Location": "/"}},
}


def test_whatever_else_answers_takes_nothing_from_the_outbox(page, common):
    """One after the other, in one project."""
    address = start_project(page, common)
    state(page, SENT)
    for name, answer in NO_ANSWERS.items():
        with case(name):
            answering(page, **answer)
            kept(page, name, "58 3/8")
            state(page, WAITING)
            assert [each["why"] for each in outbox(page)] == [""]
            assert name not in places(page, address)
            page.context.unroute("**/sync")
            wake(page)
            state(page, SENT)
            assert outbox(page) == []
    assert sorted(places(page, address)) == sorted(NO_ANSWERS)


def test_only_what_is_echoed_leaves_the_outbox(page, common):
    start_project(page, common)
    state(page, SENT)

    def of_two_one(route: Route):
        asked = json.loads(route.request.post_data)
        ids = [entry["id"] for entry in asked["entries"]]
        answer = {"epoch": asked["epoch"], "kept": ids[:1], "refused": [], "worked": {}, "entries": []}
        route.fulfill(json={**answer, "cursor": asked["cursor"], "more": False})

    answering(page, status=503)
    kept(page, "Clear span", "58 3/8")
    state(page, WAITING)
    kept(page, "Post", "2 1/4")
    state(page, "cannot reach the server, 2 waiting")
    first, left = [each["id"] for each in outbox(page)]
    page.context.unroute("**/sync")
    asked = []

    def count(route: Route):
        asked.append([entry["id"] for entry in json.loads(route.request.post_data)["entries"]])
        of_two_one(route) if len(asked) == 1 else route.abort()

    page.context.route("**/sync", count)
    wake(page)
    state(page, WAITING)
    assert [each["id"] for each in outbox(page)] == [left]
    assert asked[0] == [first, left]


@pytest.mark.parametrize("status", [400, 409, 413])
def test_a_batch_that_is_refused_is_halved_until_one_entry_stands_out(page, serving, status):
    address = start_project(page, serving)
    state(page, SENT)
    serving.stop()
    for count in range(5):
        kept(page, f"Place {count}", str(count + 1))
        state(page, re.compile(f"{count + 1} waiting"))
    bad = outbox(page)[3]["id"]

    def refuse(route: Route):
        sent = [entry["id"] for entry in json.loads(route.request.post_data)["entries"]]
        refused = {"status": status, "json": {"errors": {"": "That is not for me."}}}
        route.fulfill(**refused) if bad in sent else route.continue_()

    page.context.route("**/sync", refuse)
    serving.start()
    wake(page)
    state(page, "all else sent, 1 refused")
    assert places(page, address) == ["Place 0", "Place 1", "Place 2", "Place 4"]
    assert [(each["id"], each["why"]) for each in outbox(page)] == [(bad, "That is not for me.")]
    expect(page.locator("main")).to_contain_text("Place 3")


def test_what_the_door_refuses_is_listed_and_goes_out_as_a_file(page, common, tmp_path):
    address = start_project(page, common)
    state(page, SENT)
    project = address.rsplit("/", 1)[1]
    made = """async (local, project) => {
        const entry = {id: "01900000-0000-7000-8000-000000000001", project, kind: "note", body: {},
            made_at: "2026-01-01T00:00:00.000Z", by: "phone", replaces: []};
        await local.save(entry);
    }"""
    module(page, "local", made, project)
    opened(page, common.address)
    state(page, "all else sent, 1 refused")
    expect(page.locator("#refused")).to_contain_text("note")
    page.locator("summary", has_text="This phone").click()
    with page.expect_download() as download:
        page.locator("[data-export-unsent]").click()
    found = json.loads(download.value.path().read_text())
    assert found["shoulderline"] == 1
    assert found["project"] == project
    assert [entry["kind"] for entry in found["entries"]] == ["note"]


def test_a_dead_handle_is_opened_anew_and_the_work_done_again(page, common):
    address = start_project(page, common)
    state(page, SENT)
    page.evaluate("""() => {
        const sound = IDBDatabase.prototype.transaction;
        const dead = new WeakSet();
        IDBDatabase.prototype.transaction = function (...words) {
            if (!window.killed) { window.killed = 1; dead.add(this); }
            if (dead.has(this)) { window.killed++; throw new DOMException("gone", "InvalidStateError"); }
            return sound.apply(this, words);
        };
    }""")
    measure(page, "Clear span", "58 3/8")
    expect(page.locator("main")).to_contain_text("Clear span")
    state(page, SENT)
    assert page.evaluate("window.killed") == 2  # once, and never again on that handle
    assert places(page, address) == ["Clear span"]


LEFT = """async ({ run }) => {
    const leave = () => dispatchEvent(new PageTransitionEvent("pagehide", { persisted: true }));
    const asked = (name) => new Promise((resolve) => {
        const opening = indexedDB.open("shoulderline");
        opening.onsuccess = () => {
            const found = opening.result.transaction(["meta"], "readwrite").objectStore("meta").get(name);
            found.onsuccess = () => (opening.result.close(), resolve(found.result));
        };
    });
    let begun = 0;
    const done = run(["meta"], "readwrite", (transaction) => {
        transaction.objectStore("meta").put("written", "probe");
        if (!begun++) queueMicrotask(leave);
        return () => "done";
    });
    const away = [await asked("probe"), begun];
    dispatchEvent(new PageTransitionEvent("pageshow", { persisted: true }));
    return [...away, await done, await asked("probe"), begun];
}"""


def test_a_page_that_is_left_holds_up_no_other_and_goes_on_when_it_is_shown_again(page, common):
    start_project(page, common)
    state(page, SENT)
    assert module(page, "database", LEFT) == [None, 1, "done", "written", 2]


def test_what_is_being_kept_when_its_page_is_left_is_kept(page, common):
    address = start_project(page, common)
    state(page, SENT)
    page.evaluate("""() => {
        const sound = IDBTransaction.prototype.commit;
        IDBTransaction.prototype.commit = function () {
            sound.call(this);
            if (!this.objectStoreNames.contains("outbox")) return;
            window.left = 1;
            dispatchEvent(new PageTransitionEvent("pagehide", { persisted: true }));
        };
    }""")
    measure(page, "Clear span", "58 3/8")
    until(page, lambda: page.evaluate("window.left"))  # and it is not shown again
    state(opened(page, address), SENT)
    assert places(page, address) == ["Clear span"]


def test_the_browser_is_asked_for_its_promise_once_a_day(page, common):
    page.add_init_script("""
        const sound = navigator.storage.persist.bind(navigator.storage);
        navigator.storage.persist = () => {
            localStorage.setItem("asked", Number(localStorage.getItem("asked")) + 1);
            return sound();
        };
    """)
    address = start_project(page, common)
    kept(page, "Clear span", "58 3/8")
    answered = "({ read }) => read('meta', (store) => store.get('asked'))"
    until(page, lambda: module(page, "database", answered) is not None)
    asked = "() => Number(localStorage.getItem('asked'))"
    before = page.evaluate(asked)  # the page that started the project may have been left before its answer
    assert before in (1, 2)
    opened(page, address)
    kept(page, "Rail", "17")
    state(page, SENT)
    assert page.evaluate(asked) == before
    yesterday = "({ run }) => run(['meta'], 'readwrite', (t) => (t.objectStore('meta').put(1, 'asked'), () => true))"
    assert module(page, "database", yesterday)
    opened(page, address)
    kept(page, "Post", "31")
    until(page, lambda: page.evaluate(asked) == before + 1)


def test_what_the_store_will_not_take_is_kept_in_no_part_and_stays_in_the_form(page, common):
    start_project(page, common)
    state(page, SENT)
    before = module(page, "local", "async (local) => (await local.entries()).length")
    page.evaluate("""() => {
        const sound = IDBObjectStore.prototype.put;
        IDBObjectStore.prototype.put = function (value, ...key) {
            if (this.name === "outbox") this.add(value);
            return this.name === "outbox" ? this.add(value) : sound.call(this, value, ...key);
        };
    }""")
    measure(page, "Clear span", "58 3/8")
    expect(page.locator("#reading-error")).to_contain_text("This could not be kept on this phone: ")
    expect(page.locator("#reading-place")).to_have_value("Clear span")
    assert module(page, "local", "async (local) => (await local.entries()).length") == before
    state(page, SENT)


def test_another_database_is_given_what_this_phone_made_and_nothing_of_others(page, serving, browser):
    address = start_project(page, serving)
    measure(page, "Clear span", "58 3/8")
    state(page, SENT)
    with browser.new_context() as other:
        start_project(other.new_page(), serving, "Of another phone")
        state(other.pages[0], SENT)
    opened(page, serving.address)
    expect(page.locator("main")).to_contain_text("Of another phone")
    serving.stop()
    shutil.rmtree(serving.folder)
    serving.start()
    wake(page)
    expect(page.locator("main")).not_to_contain_text("Of another phone")
    state(page, SENT)
    assert places(page, address) == ["Clear span"]
    assert [project["name"] for project in page.request.get(f"{serving.address}/projects.json").json()["projects"]] == [
        "Bench in ash"
    ]


def test_one_tab_sends_at_a_time(page, common, phone):
    start_project(page, common)
    state(page, SENT)
    second = opened(phone.new_page(), common.address)
    state(second, SENT)
    second.evaluate("""() => new Promise((held) => {
        const holding = new Promise((release) => { window.release = release; });
        navigator.locks.request("shoulderline-sync", () => { held(); return holding; });
    })""")
    asked = []
    page.on("request", lambda request: asked.append(request.url) if request.url.endswith("/sync") else None)
    measure(page, "Clear span", "58 3/8")
    state(page, "saved here, 1 to send")
    page.wait_for_timeout(1500)
    assert asked == []
    second.evaluate("window.release()")
    wake(page)
    state(page, SENT)
    assert asked


def test_a_tab_shows_what_another_tab_of_the_phone_kept(page, serving, phone):
    address = start_project(page, serving)
    second = opened(phone.new_page(), address)
    serving.stop()
    measure(page, "Clear span", "58 3/8")
    expect(second.locator("main")).to_contain_text("Clear span")
    state(second, re.compile("1 waiting|1 to send"))


def test_the_order_is_the_servers_then_the_phones_own(page, serving):
    start_project(page, serving)
    state(page, SENT)
    serving.stop()
    for text in ["1", "2", "3"]:
        kept(page, "Post", text)
    held = module(page, "local", "(local) => local.entries()")
    assert [("seq" in entry, entry.get("counter")) for entry in sorted(held, key=lambda each: each["made_at"])] == [
        (True, None),
        (False, 2),
        (False, 3),
        (False, 4),
    ]
    expect(page.locator("main")).to_contain_text("2 before it")


def test_ids_are_uuid7_in_lower_case_and_in_the_order_of_their_milliseconds(page, demo_serving):
    opened(page, demo_serving.address)
    script = "({uuid7}) => [uuid7(0), uuid7(1), uuid7(1764000000000), ...Array.from({length: 500}, () => uuid7())]"
    ids = module(page, "ids", script)
    shape = re.compile(r"[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}")
    assert all(shape.fullmatch(each) for each in ids)
    assert ids[0].startswith("00000000-0000-7")
    assert ids[2].replace("-", "").startswith(f"{1764000000000:012x}7")
    assert sorted(ids[:3]) == ids[:3]
    assert len(set(ids)) == len(ids)


WORDS = {
    ("", 0, 0): "",
    ("", 2, 0): "saved here, 2 to send",
    ("busy", 1, 0): "saved here, 1 to send",
    ("through", 0, 0): "all sent",
    ("through", 2, 1): "saved here, 2 to send, 1 refused",
    ("through", 0, 1): "all else sent, 1 refused",
    ("away", 0, 0): "cannot reach the server, nothing waiting",
    ("away", 2, 0): "cannot reach the server, 2 waiting",
    ("away", 2, 3): "cannot reach the server, 2 waiting, 3 refused",
    ("unpaired", 0, 0): "not paired with the shop's server, nothing waiting",
    ("unpaired", 2, 1): "not paired with the shop's server, 2 waiting, 1 refused",
}


def test_the_state_is_said_in_words(page, demo_serving):
    opened(page, demo_serving.address)
    for given, said in WORDS.items():
        assert module(page, "pace", "({words}, given) => words(...given)", list(given)) == said


def test_a_clock_that_is_far_off_is_said(page, common):
    page.clock.install(time="2031-01-01T00:00:00Z")
    opened(page, common.address)
    state(page, re.compile(r"all sent; this clock is \d+ minutes ahead"))
