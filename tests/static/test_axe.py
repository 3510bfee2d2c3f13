"""axe finds nothing on any screen, state and theme, with enhanced contrast and target size asked for.

Each state is opened once: in daylight, then in the other lights, then narrow and with large text (test_reflow.py).
"""

from collections.abc import Iterable
from importlib.resources import files
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.serving import Quick, Serving
from tests.static.states import State, brief, others, pressed, shown, states
from tests.static.test_reflow import cut_small_and_large

pytestmark = pytest.mark.browser
WORKER = "block"

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
    if not page.evaluate("!!window.axe"):
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


def in_another_light(page: Page) -> list[str]:
    """Run axe in the other themes: only colours differ, so only their rules; test_contrast.py computes all pairs."""
    seen = []
    for theme in ("dark", "sun"):
        page.evaluate("(theme) => { document.documentElement.dataset.theme = theme; }", theme)
        seen += [f"{theme}, {each}" for each in found(page, RUN_COLOURS)]
    page.evaluate("delete document.documentElement.dataset.theme")
    return seen


def test_axe_finds_nothing_and_nothing_is_cut(browser: Browser, everything: tuple[Serving, dict[str, str]]) -> None:
    """In every state of every screen, as the server draws it and the phone takes it over; the richest in all lights."""
    serving, ids = everything
    context = browser.new_context(viewport=HIGH, reduced_motion="reduce", service_workers="block")  # type: ignore[arg-type]
    page, rich = context.new_page(), brief(states(ids))
    wrong = {}
    for state in [*states(ids), *pressed(ids), *others(ids)]:
        page.set_viewport_size(HIGH)  # type: ignore[arg-type]
        shown(page, serving, state)
        seen = found(page) + (in_another_light(page) if state in rich else [])
        if not state.presses:  # what is pressed is pressed on a small screen: test_reflow.py
            seen += cut_small_and_large(page)
        if seen:
            wrong[str(state)] = seen
    context.close()
    assert wrong == {}


def test_a_poor_contrast_in_another_light_would_be_found(
    page: Page, everything: tuple[Serving, dict[str, str]]
) -> None:
    serving, ids = everything
    shown(page, serving, states(ids)[0])
    assert in_another_light(page) == []
    page.evaluate("document.querySelector('h1').style.cssText = 'color: #777; background: #888'")
    seen = [line for line in in_another_light(page) if "color-contrast" in line]
    assert {line.partition(",")[0] for line in seen} == {"dark", "sun"}


def test_axe_finds_nothing_with_the_server_stopped(
    browser: Browser, everything: tuple[Serving, dict[str, str]]
) -> None:
    """In a page that the worker opens, which never had the server."""
    serving, ids = everything
    context = browser.new_context(viewport=HIGH, reduced_motion="reduce")  # type: ignore[arg-type]
    page = context.new_page()
    page.goto(serving.address)
    expect(page.locator("html[data-offline]")).to_be_attached()
    expect(page.locator("#state")).to_have_text("all sent")
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
    expect(page.locator("html.ready")).to_be_attached()
    page.evaluate(
        "document.querySelector('header').insertAdjacentHTML('beforeend', '<img src=\"data:,\"><button></button>')"
    )
    assert {each.split(":")[0] for each in found(page)} >= {"image-alt", "button-name"}
