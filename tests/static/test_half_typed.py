"""What is half typed comes back after a reload and a killed browser, at its own project and form, and nowhere else."""

from contextlib import suppress
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Error, Page, expect

from tests.hand import ready, started
from tests.serving import Serving
from tests.static.test_bench_day import kill, on_the_phone
from tests.static.test_local_sync import until

pytestmark = pytest.mark.browser

HALVES = """() => new Promise((resolve) => {
    indexedDB.open("shoulderline").onsuccess = ({ target }) => {
        const asked = target.result.transaction("meta").objectStore("meta").getAllKeys();
        asked.onsuccess = () => resolve(asked.result.filter((key) => key.startsWith("half ")));
    };
})"""

HELD = """() => new Promise((resolve) => {
    indexedDB.open("shoulderline").onsuccess = ({ target }) => {
        const asked = target.result.transaction("meta").objectStore("meta").getAll();
        asked.onsuccess = () => resolve(JSON.stringify(asked.result));
    };
})"""


def written(page: Page, count: int) -> None:
    """Wait until so many half typed forms are on the disk."""
    until(page, lambda: len(page.evaluate(HALVES)) == count)


def test_what_is_half_typed_survives_a_reload_at_its_own_project_alone(page: Page, common: Serving) -> None:
    one = started(page, common.address, "One")
    two = started(page, common.address, "Two")
    page.locator("#reading-place").fill("Upper rail")
    page.locator("#reading-reading").fill("17 11/")
    page.keyboard.press("Escape")
    page.get_by_text("Name, unit, graduation and shop").click()
    page.locator("#settings-unit").select_option("mm")
    page.reload()
    expect(page.locator("#reading-place")).to_have_value("Upper rail")
    expect(page.locator("#reading-reading")).to_have_value("17 11/")
    expect(page.locator("#settings-unit")).to_have_value("mm")
    expect(page.locator("#settings-unit")).to_be_visible()
    page.goto(one)
    ready(page)
    written(page, 2)
    expect(page.locator("#reading-place")).to_have_value("")
    page.goto(two)
    expect(page.locator("#reading-place")).to_have_value("Upper rail")


def test_what_is_kept_is_half_typed_no_longer(page: Page, common: Serving) -> None:
    started(page, common.address, "Kept")
    expect(page.locator("#state")).to_have_text("all sent")
    page.locator("#reading-place").fill("Upper rail")
    page.locator("#reading-reading").fill("17 11/16")
    written(page, 1)
    page.get_by_role("button", name="Keep the reading").click()
    expect(page.locator("#main")).to_contain_text("Upper rail")
    written(page, 0)
    page.reload()
    ready(page)
    expect(page.locator("#reading-place")).to_have_value("")


def test_what_is_emptied_again_is_not_held(page: Page, common: Serving) -> None:
    started(page, common.address, "Emptied")
    page.locator("#reading-place").fill("Upper rail")
    written(page, 1)
    page.locator("#reading-place").fill("")
    written(page, 0)


def test_a_name_half_changed_goes_over_the_address_it_was_typed_at_alone(page: Page, common: Serving) -> None:
    project = started(page, common.address, "Called").rsplit("/", 1)[1]
    tool = f"{common.address}/work/spacing?span=58&slat=2&count=9&project={project}"
    page.goto(f"{tool}&called=First")
    ready(page)
    expect(page.locator("#sheet-called")).to_have_value("First")
    page.locator("#sheet-called").fill("First, wi")
    written(page, 1)
    page.reload()
    expect(page.locator("#sheet-called")).to_have_value("First, wi")
    page.goto(f"{tool}&called=Second")
    ready(page)
    expect(page.locator("#sheet-called")).to_have_value("Second")


def test_old_and_too_many_halves_go(page: Page, common: Serving) -> None:
    project = started(page, common.address, "Old")
    page.evaluate("""() => new Promise((resolve) => {
        indexedDB.open("shoulderline").onsuccess = ({ target }) => {
            const writing = target.result.transaction("meta", "readwrite");
            const meta = writing.objectStore("meta");
            meta.put({ at: 0, fields: { place: ["", "Old"] } }, `half ${location.pathname}   reading`);
            for (let at = 0; at < 60; at++) meta.put({ at: Date.now() - at, fields: {} }, `half other ${at}`);
            writing.oncomplete = resolve;
        };
    })""")
    page.goto(project)
    ready(page)
    written(page, 40)
    expect(page.locator("#reading-place")).to_have_value("")
    assert "half other 0" in page.evaluate(HALVES)
    assert "half other 59" not in page.evaluate(HALVES)


def test_a_novel_is_not_held(page: Page, common: Serving) -> None:
    started(page, common.address, "Novel")
    page.locator("#reading-note").fill("x" * 100)
    written(page, 1)
    page.locator("#reading-note").fill("x" * 30_000)
    written(page, 0)


def test_what_is_half_typed_survives_a_killed_browser_with_no_server(
    browser: Browser, serving: Serving, tmp_path: Path
) -> None:
    profile = tmp_path / "phone"
    phone = on_the_phone(browser, profile)
    page = phone.pages[0]
    project = started(page, serving.address, "Headboard")
    expect(page.locator("html[data-offline]")).to_be_attached()
    serving.stop()
    page.goto(project)
    ready(page)
    for _ in range(2):
        page.locator("#reading-place").fill("Upper rail, half")
        page.locator("#reading-reading").fill("17 11/")
        until(page, lambda at=page: '"17 11/"' in at.evaluate(HELD))  # a browser takes longer to write localStorage
        kill(profile)
        with suppress(Error):
            phone.close()
        phone = on_the_phone(browser, profile)
        page = phone.pages[0]
        page.goto(project)
        expect(page.locator("#reading-place")).to_have_value("Upper rail, half")
        expect(page.locator("#reading-reading")).to_have_value("17 11/")
    phone.close()


def typed_in(page: Page, tool: str, **texts: str) -> None:
    page.goto(tool)
    ready(page)
    for field, text in texts.items():
        page.locator(f"#{field}").fill(text)


def test_a_tool_that_is_opened_anew_offers_what_was_half_typed_at_its_own_project_alone(
    page: Page, common: Serving
) -> None:
    one, two = [started(page, common.address, name).rsplit("/", 1)[1] for name in ("One", "Two")]
    tool = f"{common.address}/work/spacing"
    typed_in(page, f"{tool}?project={one}", span="58 3/8", slat="2 3/")
    written(page, 1)
    again = page.locator("#put-back")
    for other in [tool, f"{tool}?project={two}", f"{common.address}/work/stick?project={one}", f"{tool}?span=9"]:
        page.goto(other)
        ready(page)
        page.wait_for_timeout(200)
        expect(again).to_be_hidden()
    page.goto(f"{tool}?project={one}")
    again.click()
    ready(page)
    expect(page.locator("#span")).to_have_value("58 3/8")
    expect(page.locator("#slat")).to_have_value("2 3/")
    expect(page.locator("h1")).to_have_text("Slats and gaps")
    expect(page.locator(".way")).to_contain_text("One")
    expect(again).to_be_hidden()


def test_a_list_that_was_half_typed_comes_back_in_its_rows(page: Page, common: Serving) -> None:
    tool = f"{common.address}/work/stick"
    page.goto(tool)
    ready(page)
    page.locator(".entry-name").first.fill("Upper rail")
    page.locator(".entry-reading").first.fill("17 11/16 strong")
    written(page, 1)
    page.goto(tool)
    page.locator("#put-back").click()
    ready(page)
    expect(page.locator(".entry-name").first).to_have_value("Upper rail")
    expect(page.locator(".entry-reading").first).to_have_value("17 11/16 strong")


def test_a_sheet_that_was_kept_or_a_form_that_was_emptied_is_offered_no_more(page: Page, common: Serving) -> None:
    project = started(page, common.address, "Kept sheet").rsplit("/", 1)[1]
    tool = f"{common.address}/work/spacing?project={project}"
    typed_in(page, tool, span="58 3/8", slat="2 3/4", count="9")
    written(page, 1)
    page.keyboard.press("Escape")
    page.locator("#sheet-called").fill("First")
    page.locator("#sheet button").click()
    page.wait_for_url("**/sheets/*")
    written(page, 0)
    typed_in(page, tool, span="58")
    written(page, 1)
    page.locator("#span").fill("")
    written(page, 0)
