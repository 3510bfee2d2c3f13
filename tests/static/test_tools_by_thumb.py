"""Every tool on a phone: its example typed into fields and rows, with the server, then with the server stopped."""

import re
from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.hand import THUMB
from tests.serving import Quick, Serving
from webapp.core.mark import spoken
from webapp.core.reading_lines import read_lines
from webapp.core.tool import Tool
from webapp.core.working import work
from webapp.tools import TOOLS
from webapp.units import FACTORS

pytestmark = pytest.mark.browser


@pytest.fixture(scope="module")
def bench(browser: Browser, tmp_path_factory: pytest.TempPathFactory) -> Iterator[tuple[Page, Serving]]:
    """A phone that has been here once, and the server that it was with."""
    serving = Quick(tmp_path_factory.mktemp("bench")).start()
    context = browser.new_context(**THUMB)
    page = context.new_page()
    page.goto(serving.address)
    expect(page.locator("html[data-offline]")).to_be_attached()
    yield page, serving
    context.close()
    serving.stop()


def said(tool: Tool) -> str:
    """What the answer to a tool's example says, as it is read aloud."""
    answer = work(tool, dict(tool.example), FACTORS)["sheet"]["answer"]
    value = answer["value"]
    return spoken(value["mark"]) if isinstance(value, dict) else str(value)


def type_in(page: Page, tool: Tool) -> None:
    """Tap each field of the example and type into it; a list row by row."""
    for field in tool.fields:
        text = dict(tool.example).get(field.name)
        if text is None:
            continue
        if field.kind == "lines":
            type_rows(page, field.name, text)
        elif field.kind == "choice":
            page.locator(f"#{field.name}").select_option(text)
        else:
            tap_and_type(page, page.locator(f"#{field.name}"), text)


def type_rows(page: Page, name: str, text: str) -> None:
    rows = page.locator(f'.rows[data-rows="{name}"] .entry:not(.gone)')
    for number, line in enumerate(read_lines(text)):
        if number >= rows.count():
            page.keyboard.press("Escape")
            page.get_by_role("button", name="Add a row").tap()
        rows.nth(number).locator(".entry-name").fill(line.name)
        tap_and_type(page, rows.nth(number).locator(".entry-reading"), line.text.strip())


def tap_and_type(page: Page, field, text: str) -> None:
    field.tap()
    expect(page.locator("#pad")).to_be_visible()
    page.keyboard.type(text)


def worked(page: Page, serving: Serving, tool: Tool) -> None:
    page.goto(f"{serving.address}/work/{tool.name}")
    expect(page.locator("html")).to_have_class(re.compile(r"\bready\b"))
    expect(page.locator("#pad[data-ready]")).to_be_attached()
    type_in(page, tool)
    expect(page.locator(".hero")).to_contain_text(said(tool))
    page.keyboard.press("Escape")
    expect(page.locator("#main .details section").first).to_be_attached()


@pytest.mark.parametrize("name", TOOLS)
def test_a_tool_is_worked_with_the_server(bench: tuple[Page, Serving], name: str) -> None:
    worked(*bench, TOOLS[name])


def test_every_tool_is_worked_with_the_server_stopped(bench: tuple[Page, Serving]) -> None:
    page, serving = bench
    serving.stop()
    for tool in TOOLS.values():
        worked(page, serving, tool)
    page.goto(f"{serving.address}/help/{next(iter(TOOLS))}")
    expect(page.locator("h1")).to_contain_text("help")
