"""The whole job by keyboard alone: no click and no tap, and the focus is always in sight.

WCAG 2.2: 2.1.1 Keyboard, 2.1.2 No Keyboard Trap, 2.4.7 Focus Visible, 2.4.11 Focus Not Obscured.
"""

import re

import pytest
from playwright.sync_api import Page, expect

from tests.hand import ready
from tests.serving import Serving

pytestmark = pytest.mark.browser

MOST = 150  # presses of Tab until something is reached: more would be a trap
HERE = """() => {
    const e = document.activeElement, box = e.getBoundingClientRect(), style = getComputedStyle(e);
    const field = e.closest(".field, .entry");
    const ringed = style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2;
    const [x, y] = [box.left + Math.min(box.width / 2, 20), box.top + Math.min(box.height / 2, 20)];
    const top = document.elementFromPoint(x, y);
    return {
        id: e.id, tag: e.tagName.toLowerCase(),
        text: (e.getAttribute("aria-label") ?? e.textContent).trim(),
        seen: e === document.body || (ringed && Boolean(top) && (e.contains(top) || top.contains(e))),
        accent: field ? getComputedStyle(field).borderBottomColor : "",
    };
}"""


def here(page: Page) -> dict[str, str]:
    """Return what has the focus; it has to be ringed and nothing may cover it."""
    found: dict[str, str] = page.evaluate(HERE)
    assert found["seen"], found
    return found


def go_to(page: Page, what: str, back: bool = False) -> None:
    """Press Tab until the focus is on this id, or on what reads so."""
    for _ in range(MOST):
        page.keyboard.press("Shift+Tab" if back else "Tab")
        at = here(page)
        if what in (f"#{at['id']}", at["text"]):
            return
    raise AssertionError(f"Tab does not lead to {what}")


def type_at(page: Page, what: str, text: str) -> None:
    go_to(page, what)
    page.keyboard.type(text)


def test_the_whole_job_by_keyboard_alone(page: Page, common: Serving) -> None:
    page.goto(common.address)
    ready(page)
    begin(page)
    measure(page)
    space(page)
    round_of_fit(page)


def begin(page: Page) -> None:
    """Start a project; a choice is changed by an arrow."""
    type_at(page, "#project-name", "Headboard")
    go_to(page, "#project-graduation")
    page.keyboard.press("ArrowDown")
    go_to(page, "Start")
    page.keyboard.press("Enter")
    page.wait_for_url("**/projects/*")
    ready(page)
    expect(page.locator("h1")).to_have_text("Headboard")


def measure(page: Page) -> None:
    """Keep a reading: typed, then by the pad's own keys; Enter keeps it."""
    type_at(page, "#reading-place", "Upper rail")
    type_at(page, "#reading-reading", "58 3/8")
    expect(page.locator("#pad")).to_be_visible()
    page.keyboard.press("Enter")
    expect(page.locator("#main")).to_contain_text("Upper rail")
    expect(page.locator("#reading-place")).to_have_value("")


def space(page: Page) -> None:
    """Work the slats, correct an error where it is said, keep the sheet, cut a line of it."""
    page.keyboard.press("Escape")
    go_to(page, "Slats and gaps")
    page.keyboard.press("Enter")
    page.wait_for_url("**/work/spacing*")
    ready(page)
    type_at(page, "#span", "58 3/0")
    type_at(page, "#slat", "2 3/4")
    expect(page.locator("#span-error")).not_to_be_empty()
    go_to(page, "#span", back=True)
    page.keyboard.press("ControlOrMeta+A")
    page.keyboard.type("58 3/8")
    type_at(page, "#count", "9")
    expect(page.locator(".hero")).to_contain_text("Gap")
    page.keyboard.press("Escape")
    type_at(page, "#sheet-called", "Slats")
    page.keyboard.press("Enter")
    page.wait_for_url("**/sheets/*")
    ready(page)
    expect(page.locator("h1")).to_have_text("Slats")
    go_to(page, "All of it is cut")
    page.keyboard.press("Enter")
    expect(page.locator("#main")).to_contain_text("all of it: cut")


def round_of_fit(page: Page) -> None:
    """Back to the project by its link; lay a dry fit out and measure its one place."""
    go_to(page, "Headboard", back=True)
    page.keyboard.press("Enter")
    page.wait_for_url(re.compile(r"/projects/[^/]*$"))
    ready(page)
    go_to(page, "Lay out a dry fit")
    page.keyboard.press("Enter")
    type_at(page, "#round-places", "Rail, left")
    page.keyboard.press("Tab")
    go_to(page, "Lay it out")
    page.keyboard.press("Enter")
    page.wait_for_url("**/rounds/*")
    ready(page)
    type_at(page, "#reading-reading", "14 1/16 strong")
    page.keyboard.press("Enter")
    expect(page.locator("#after")).to_be_visible()
