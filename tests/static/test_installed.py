"""The program is put on a home screen: Chromium's own check, shortcuts, pictures; and it can be taken off again."""

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.serving import Serving
from tests.static.test_bench_day import on_the_phone
from tests.static.test_local_sync import until
from tests.static.versions import Bench, caches, installed, offline
from webapp.phone.build import PLACE, start, withdraw
from webapp.phone.manifest import size
from webapp.tools import TOOLS

pytestmark = pytest.mark.browser

PICTURE = re.compile(r"/screens/")
UNSENT = """() => new Promise((resolve) => {
    indexedDB.open("shoulderline").onsuccess = ({ target }) => {
        const asked = target.result.transaction("outbox").objectStore("outbox").getAll();
        asked.onsuccess = () => { target.result.close(); resolve(asked.result.map(({ entry }) => entry.body.place)); };
    };
})"""


@pytest.fixture
def installing(browser: Browser, demo_serving: Serving, tmp_path: Path) -> Iterator[Page]:
    """A page of a browser with a profile: without one nothing can be installed."""
    phone = on_the_phone(browser, tmp_path / "phone")
    page = phone.pages[0]
    offline(page, demo_serving.address)
    yield page
    phone.close()


def against(page: Page) -> list[str]:
    """Ask Chromium what stands against installing."""
    found = page.context.new_cdp_session(page).send("Page.getInstallabilityErrors")
    return [each["errorId"] for each in found["installabilityErrors"]]


def manifest(page: Page, server: Serving) -> dict[str, Any]:
    found: dict[str, Any] = page.request.get(f"{server.address}/manifest.webmanifest").json()
    return found


def test_chromium_finds_nothing_against_installing_it(installing: Page) -> None:
    assert against(installing) == []
    session = installing.context.new_cdp_session(installing)
    found = session.send("Page.getAppManifest")
    assert found["errors"] == []
    assert len(found["manifest"]["shortcuts"]) == len(TOOLS)
    assert {each["formFactor"] for each in found["manifest"]["screenshots"]} == {"kNarrow", "kWide"}
    assert session.send("Page.getAppId")["appId"] == found["manifest"]["id"]


def test_the_check_can_fail(installing: Page, demo_serving: Serving) -> None:
    plain = manifest(installing, demo_serving) | {"icons": []}
    other = installing.context.new_page()
    other.route("**/plain", lambda route: route.fulfill(json=plain, content_type="application/manifest+json"))
    other.goto(f"{demo_serving.address}/none")
    other.evaluate("""() => {
        document.querySelector('link[rel="manifest"]')?.remove();
        const link = document.createElement("link");
        [link.rel, link.href] = ["manifest", "/plain"];
        document.head.append(link);
    }""")
    assert against(other) != []


def test_shortcuts_lead_to_tools_that_open(page: Page, demo_serving: Serving) -> None:
    for shortcut in manifest(page, demo_serving)["shortcuts"]:
        page.goto(demo_serving.address + shortcut["url"])
        expect(page.locator("h1")).to_have_text(shortcut["name"])


def test_pictures_are_what_the_manifest_says_and_as_browsers_want_them(page: Page, demo_serving: Serving) -> None:
    found = manifest(page, demo_serving)
    ratios = {"narrow": set(), "wide": set()}
    for picture in [*found["icons"], *found["screenshots"]]:
        answer = page.request.get(demo_serving.address + picture["src"])
        assert (answer.status, answer.headers["content-type"].split(";")[0]) == (200, picture["type"])
        if picture["sizes"] != "any":
            assert "x".join(map(str, size(answer.body()))) == picture["sizes"]
    for picture in found["screenshots"]:
        short, long = sorted(map(int, picture["sizes"].split("x")))
        assert 320 <= short <= long <= min(3840, 2.3 * short)  # Chromium's own limits
        ratios[picture["form_factor"]].add(long / short)
    assert {form: len(there) for form, there in ratios.items()} == {"narrow": 1, "wide": 1}
    assert {size for icon in found["icons"] for size in icon["sizes"].split()} >= {"192x192", "512x512", "any"}
    assert all("maskable" in icon["purpose"].split() for icon in found["icons"])


def test_no_visit_asks_for_the_screenshots(page: Page, bench: Bench) -> None:
    asked: list[str] = []
    page.context.on("request", lambda request: asked.append(request.url))
    offline(page, bench.address)
    assert [url for url in asked if PICTURE.search(url)] == []
    assert [file for files in caches(page).values() for file in files if PICTURE.search(file)] == []
    assert bench.build.shown


def test_a_worker_that_was_withdrawn_takes_itself_and_its_files_away_and_nothing_that_was_kept(
    page: Page, bench: Bench
) -> None:
    offline(page, bench.address)
    page.goto(f"{bench.address}/projects/{bench.project}")
    expect(page.locator("html")).to_have_class(re.compile(r"\bready\b"))
    page.context.route("**/sync", lambda route: route.abort())
    page.locator("#reading-place").fill("Kept before")
    page.locator("#reading-reading").fill("17 11/16")
    page.get_by_role("button", name="Keep the reading").click()
    expect(page.locator("#state")).to_have_text("cannot reach the server, 1 waiting")
    page.locator("#reading-place").fill("Half ty")
    withdraw(bench.app)
    installed(page)
    gone(page)
    assert caches(page) == {}
    expect(page.locator("#reading-place")).to_have_value("Half ty")  # the open page is left alone
    assert page.evaluate(UNSENT) == ["Kept before"]
    page.reload()
    assert "csrf_token" in page.content()  # from the server, not from a shell
    expect(page.locator("#reading-place")).to_have_value("Half ty")
    page.context.unroute("**/sync")
    page.reload()
    expect(page.locator("#state")).to_have_text("all sent")
    assert "Kept before" in page.request.get(f"{bench.address}/projects/{bench.project}.json").text()
    start(bench.app)
    offline(page, bench.address)
    assert list(caches(page)) == [f"shoulderline-{bench.app.extensions[PLACE].stamp}"]


def gone(page: Page) -> None:
    """Wait until no worker is registered."""
    until(page, lambda: page.evaluate("async () => (await navigator.serviceWorker.getRegistrations()).length") == 0)
