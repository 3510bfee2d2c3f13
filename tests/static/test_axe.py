"""axe finds nothing on any screen, state and theme, with enhanced contrast and target size asked for."""

from collections.abc import Iterable
from importlib.resources import files
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.serving import Quick, Serving
from tests.static.states import PATIENCE, State, brief, others, pressed, shown, states

pytestmark = pytest.mark.browser

AXE = files("axe_playwright_python").joinpath("axe.min.js").read_text(encoding="utf-8")
RULES = {"color-contrast-enhanced": {"enabled": True}, "target-size": {"enabled": True}}
# Every rule is run; what passed is not written out, which takes longer than to find it.
COLOURS = "{runOnly: {type: 'tag', values: ['cat.color']}, rules, resultTypes: ['violations']}"
RUN_COLOURS = f"async (rules) => (await axe.run(document, {COLOURS})).violations"
RUN = "async (rules) => (await axe.run(document, {rules, resultTypes: ['violations']})).violations"
# As high as any screen: where a page scrolls, what keeps to an edge covers whichever field is under it.
HIGH = {"width": 360, "height": 8000}
UNREACHED = "cannot reach the server, nothing waiting"


def found(page: Page, run: str = RUN) -> list[str]:
    """Run axe in the page and return what it finds, with the element."""
    page.evaluate(AXE)
    rules = RULES if run == RUN else {"color-contrast-enhanced": {"enabled": True}}
    violations: list[dict[str, Any]] = page.evaluate(run, rules)
    return [f"{v['id']}: {node['html'][:120]}" for v in violations for node in v["nodes"]]


def found_in(page: Page, serving: Serving, walk: Iterable[State], run: str = RUN) -> dict[str, list[str]]:
    """Walk states, and return what axe finds in which."""
    wrong = {}
    for state in walk:
        shown(page, serving, state)
        if seen := found(page, run):
            wrong[str(state)] = seen
    return wrong


def test_axe_finds_nothing(browser: Browser, everything: tuple[Serving, dict[str, str]]) -> None:
    """In every state of every screen, as the server draws it and the phone takes it over."""
    serving, ids = everything
    context = browser.new_context(viewport=HIGH, reduced_motion="reduce", service_workers="block")  # type: ignore[arg-type]
    wrong = found_in(context.new_page(), serving, [*states(ids), *pressed(ids), *others(ids)])
    context.close()
    assert wrong == {}


@pytest.mark.parametrize("theme", ["dark", "sun"])
def test_axe_finds_nothing_in_another_light(
    browser: Browser, everything: tuple[Serving, dict[str, str]], theme: str
) -> None:
    """Only colours differ, so only their rules are run, in the richest states; test_contrast.py computes all pairs."""
    serving, ids = everything
    context = browser.new_context(viewport=HIGH, reduced_motion="reduce", service_workers="block")  # type: ignore[arg-type]
    context.add_init_script(f"localStorage.setItem('shoulderline-theme', '{theme}')")
    page = context.new_page()
    wrong = found_in(page, serving, brief(states(ids)), RUN_COLOURS)
    assert page.locator("html").get_attribute("data-theme") == theme
    page.evaluate("document.querySelector('h1').style.cssText = 'color: #777; background: #888'")
    assert any(line.startswith("color-contrast") for line in found(page, RUN_COLOURS))
    context.close()
    assert wrong == {}


def test_axe_finds_nothing_with_the_server_stopped(
    browser: Browser, everything: tuple[Serving, dict[str, str]]
) -> None:
    """In a page that the worker opens, which never had the server."""
    serving, ids = everything
    context = browser.new_context(viewport=HIGH, reduced_motion="reduce")  # type: ignore[arg-type]
    page = context.new_page()
    page.goto(serving.address)
    expect(page.locator("html[data-offline]")).to_be_attached(timeout=PATIENCE)
    expect(page.locator("#state")).to_have_text("all sent", timeout=PATIENCE)
    page.close()
    serving.stop()
    try:
        page = context.new_page()
        wrong = found_in(page, serving, [state for state in brief(states(ids)) if not state.name.endswith("answer")])
        expect(page.locator("#state")).to_have_text(UNREACHED)
    finally:
        serving.start()
    context.close()
    assert wrong == {}


def test_axe_finds_nothing_where_there_is_no_project_yet(page: Page, serving: Quick) -> None:
    assert found_in(page, serving, [State("home", "empty", "/")]) == {}


def test_axe_would_find_something(page: Page, everything: tuple[Serving, dict[str, str]]) -> None:
    serving, _ = everything
    page.goto(serving.address)
    expect(page.locator("html.ready")).to_be_attached(timeout=PATIENCE)
    page.evaluate(
        "document.querySelector('header').insertAdjacentHTML('beforeend', '<img src=\"data:,\"><button></button>')"
    )
    assert {each.split(":")[0] for each in found(page)} >= {"image-alt", "button-name"}
