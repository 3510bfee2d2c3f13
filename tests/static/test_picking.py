"""Numbers that follow the wood, by thumb at 360 x 740: picked for a field, kept, opened down to what was read."""

import re
from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.hand import THUMB, ready
from tests.serving import Quick, Serving
from tests.static.test_bench_day import measure, thumb
from tests.static.test_local_sync import all_sent

pytestmark = pytest.mark.browser


@pytest.fixture(scope="module")
def bench(browser: Browser, tmp_path_factory: pytest.TempPathFactory) -> Iterator[tuple[Page, Serving]]:
    """A phone in a project with two readings, all of it kept there for when the signal goes."""
    serving = Quick(tmp_path_factory.mktemp("picking")).start()
    context = browser.new_context(**THUMB)
    raised: list[str] = []
    context.on("weberror", lambda found: raised.append(str(found.error)))
    page = context.new_page()
    page.goto(serving.address)
    expect(page.locator("html[data-offline]")).to_be_attached()
    page.locator("#project-name").fill("Headboard")
    page.get_by_role("button", name="Start").tap()
    page.wait_for_url("**/projects/*")
    ready(page)
    measure(page, "Lower rail, left", "17", "11/16", "strong")
    measure(page, "Slat stock", "2", "3/4")
    yield page, serving
    context.close()
    serving.stop()
    assert raised == []


def open_tool(page: Page, project: str, name: str) -> None:
    page.goto(project)
    ready(page)
    page.get_by_role("link", name=name).tap()
    ready(page)


def take(page: Page, field: str, number: str) -> None:
    """Press the way beside a field, then a number."""
    page.get_by_role("button", name=f"{field}, from…").tap()
    page.wait_for_url("**/from/**")
    ready(page)
    page.get_by_role("button", name=re.compile(number)).tap()
    page.wait_for_url("**/work/**")
    ready(page)


def keep(page: Page, called: str) -> None:
    page.keyboard.press("Escape")
    page.locator("#sheet-called").fill(called)
    page.locator("#sheet button").tap()
    page.wait_for_url("**/sheets/*")
    ready(page)


def spaced(page: Page, project: str, called: str) -> None:
    """Space slats in a span that is taken from a reading, and keep the sheet."""
    open_tool(page, project, "Slats and gaps")
    take(page, "Clear span", "Lower rail, left")
    expect(page.locator("#span")).to_have_value("2265/128 in")
    expect(page.locator("#span-source")).to_have_text("from Lower rail, left: 17 11/16 strong")
    take(page, "Slat width", "Slat stock")
    expect(page.locator("#slat")).to_have_value("11/4 in")
    thumb(page, "#count", "3")
    keep(page, called)


def test_a_number_is_picked_kept_and_opened_down_to_the_reading(bench: tuple[Page, Serving]) -> None:
    page, serving = bench
    page.goto(serving.address)
    ready(page)
    project = str(page.get_by_role("link", name="Headboard").evaluate("link => link.href"))
    spaced(page, project, "Spacing")
    open_tool(page, project, "Story stick")
    take(page, "Marks", "Spacing: Take all 6 marks")
    expect(page.locator("#marks-source")).to_have_text("from Spacing: Slat 1, left to Slat 3, right, 6 in all")
    take(page, "Length of the stick", "Lower rail, left")
    keep(page, "Stick")
    all_sent(page)
    kept = {sheet["called"]: sheet for sheet in sheets(page, project)}
    assert [(k["field"], k["key"], k["line"]) for k in kept["Spacing"]["links"]] == [
        ("span", "reading", ""),
        ("slat", "reading", ""),
    ]
    marks = [link for link in kept["Stick"]["links"] if link["field"] == "marks"]
    assert [link["line"] for link in marks] == [f"Slat {n}, {side}" for n in (1, 2, 3) for side in ("left", "right")]
    assert {link["entry"] for link in marks} == {kept["Spacing"]["entry"]}
    page.locator("#part-marks .line", has_text="Slat 2, left").get_by_role("link").tap()
    page.wait_for_url("**/origin/**")
    ready(page)
    page.get_by_text("from Spacing").tap()
    page.get_by_text("from Lower rail, left").tap()
    told = page.locator("#main .from .from", has_text="from Lower rail, left")
    expect(told).to_contain_text("17 11/16 strong, said at 1/32")
    expect(page.locator("#main .from").first).to_contain_text("17 89/128 - 3 x 2 3/4 = 9 57/128")
    told.get_by_role("link").tap()
    expect(page.locator("#main .hero")).to_contain_text("Lower rail, left")


def sheets(page: Page, project: str) -> list[dict[str, object]]:
    return [head for thing in page.request.get(f"{project}.json").json()["sheets"] for head in thing["heads"]]


def test_typed_over_it_is_linked_no_more_and_what_changed_is_said(bench: tuple[Page, Serving]) -> None:
    page, serving = bench
    page.goto(serving.address)
    ready(page)
    project = str(page.get_by_role("link", name="Headboard").evaluate("link => link.href"))
    page.goto(project)
    ready(page)
    measure(page, "Stile", "30")
    open_tool(page, project, "Slats and gaps")
    take(page, "Clear span", "Stile")
    linked = page.url
    page.goto(project)
    ready(page)
    measure(page, "Stile", "30", "1/8")
    page.goto(linked)
    ready(page)
    expect(page.locator("#span-source")).to_have_text("from Stile: 30; it is now 30 1/8")
    thumb(page, "#span", "1")
    expect(page.locator("#span-source")).to_have_text("")
    page.keyboard.press("Escape")
    page.locator("#span").press("Enter")  # the form's first button: it leads nowhere
    assert "/work/spacing" in page.url


def test_with_the_server_stopped_the_same_is_picked_and_kept(bench: tuple[Page, Serving]) -> None:
    page, serving = bench
    page.goto(serving.address)
    ready(page)
    project = str(page.get_by_role("link", name="Headboard").evaluate("link => link.href"))
    serving.stop()
    spaced(page, project, "Spacing without a signal")
    page.get_by_role("link", name="how it came about").tap()
    page.wait_for_url("**/origin/**")
    ready(page)
    page.get_by_text("from Lower rail, left").tap()
    expect(page.locator("#main .from").first).to_contain_text("17 11/16 strong, said at 1/32")
