"""axe finds nothing on any kept screen, in any theme, with enhanced contrast and target size asked for."""

from importlib.resources import files
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.serving import Serving
from tests.static.test_screens_same import addresses
from webapp.tools import TOOLS

pytestmark = pytest.mark.browser

AXE = files("axe_playwright_python").joinpath("axe.min.js").read_text(encoding="utf-8")
RULES = {"color-contrast-enhanced": {"enabled": True}, "target-size": {"enabled": True}}
# Every rule is run; what passed is not written out, which takes longer than to find it.
RUN = "async (rules) => (await axe.run(document, {rules, resultTypes: ['violations']})).violations"
SCHEMES = ("light", "dark", "sun")


def found(page: Page) -> list[str]:
    """Run axe in the page and return what it finds, with the element."""
    page.evaluate(AXE)
    violations: list[dict[str, Any]] = page.evaluate(RUN, RULES)
    return [f"{v['id']}: {node['html'][:120]}" for v in violations for node in v["nodes"]]


def walked(screens: dict[str, list[str]], theme: str) -> list[str]:
    """Every state of every screen in light; elsewhere only colours differ: one state of each, and of each tool."""
    if theme == "light":
        return [address for some in screens.values() for address in some]
    tools = [address for name in TOOLS for address in screens["tool"] if address.startswith(f"/work/{name}?")][::4]
    return [some[0] for some in screens.values()] + tools


@pytest.mark.parametrize("theme", SCHEMES)
def test_axe_finds_nothing(browser: Browser, demo_serving: Serving, theme: str) -> None:
    # As high as any screen: where a page scrolls, what keeps to an edge covers whichever field is under it.
    context = browser.new_context(viewport={"width": 360, "height": 4000}, reduced_motion="reduce")
    page = context.new_page()
    page.goto(demo_serving.address)
    page.evaluate("theme => localStorage.setItem('shoulderline-theme', theme)", theme)
    wrong: dict[str, list[str]] = {}
    for address in walked(addresses(demo_serving), theme):
        page.goto(demo_serving.address + address)
        expect(page.locator("html.ready")).to_be_attached(timeout=20_000)
        if seen := found(page):
            wrong[address] = seen
    context.close()
    assert wrong == {}


def test_axe_finds_nothing_while_typing(page: Page, demo_serving: Serving) -> None:
    page.goto(f"{demo_serving.address}/work/spacing")
    expect(page.locator("html.ready")).to_be_attached(timeout=20_000)
    page.locator("#span").click()
    expect(page.locator("#pad")).to_be_visible()
    assert found(page) == []


def test_axe_would_find_something(page: Page, demo_serving: Serving) -> None:
    page.goto(demo_serving.address)
    expect(page.locator("html.ready")).to_be_attached(timeout=20_000)
    page.evaluate(
        "document.querySelector('header').insertAdjacentHTML('beforeend', '<img src=\"data:,\"><button></button>')"
    )
    assert {each.split(":")[0] for each in found(page)} >= {"image-alt", "button-name"}
