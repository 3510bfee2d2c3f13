"""At 320 px wide, and with text twice as large on a phone, nothing is cut and nothing scrolls sideways.

WCAG 2.2, 1.4.10 Reflow (320 CSS px) and 1.4.4 Resize Text (200 %).
"""

import pytest
from playwright.sync_api import Page, ViewportSize, expect

from tests.serving import Serving
from tests.static.states import pressed, shown

pytestmark = pytest.mark.browser
WORKER = "block"

# What is wider than the page; what reaches over an edge of it; what is cut by the box that holds it, or would have to
# be scrolled sideways; words in a field or a choice that are wider than it. What is only read aloud is clipped.
CUT = """() => {
    const wide = document.documentElement.scrollWidth - innerWidth;
    const found = wide > 0 ? [`page: ${wide} px too wide`] : [];
    const pen = document.createElement("canvas").getContext("2d");
    const name = (e) => `${e.tagName.toLowerCase()}.${e.getAttribute("class") ?? ""}#${e.id}`;
    const tell = (e, why) => found.push(`${why}: ${name(e)} ${e.textContent.trim().slice(0, 40)}`);
    const empty = (e) => e.matches("input") && !e.value;
    for (const e of document.body.querySelectorAll("*")) {
        const box = e.getBoundingClientRect(), style = getComputedStyle(e);
        if (!e.checkVisibility() || box.width * box.height === 0 || style.clipPath !== "none") continue;
        if (e.closest(".aloud, .slash, .patterns, template")) continue;
        if (box.right > innerWidth + 1 || box.left < -1) tell(e, "over the edge");
        const [across, down] = [e.scrollWidth > e.clientWidth + 1, e.scrollHeight > e.clientHeight + 1];
        if (style.overflowX !== "visible" && e.clientWidth && across && !e.matches("input")) tell(e, "sideways");
        if (style.overflowY === "hidden" && e.clientHeight && down) tell(e, "cut");
        const words = e.matches("select") ? e.selectedOptions[0]?.text : empty(e) ? e.placeholder : "";
        const font = e.matches("input") ? getComputedStyle(e, "::placeholder") : style;
        pen.font = `${font.fontWeight} ${font.fontSize} ${font.fontFamily}`;
        if (words && pen.measureText(words).width > box.width) tell(e, `"${words}" wider than its field`);
    }
    return found;
}"""
SPOIL = """([name, style, words]) => {
    const box = Object.assign(document.createElement(name), { id: "spoilt", textContent: words, placeholder: words });
    box.style.cssText = style; // the content policy allows no style in HTML
    document.querySelector("h1").after(box);
}"""
SPOILT = {
    "over the edge": ("p", "position: fixed; left: 350px; width: 90px", "over"),
    "cut": ("p", "height: 1rem; overflow: hidden", "one line, and another that is not to be seen in so low a box"),
    "sideways": ("p", "width: 2rem; overflow-x: auto; white-space: nowrap", "a long word"),
    "wider than its field": ("input", "width: 3rem", "wider than its field"),
    "page": ("p", "width: 400px", "wide"),
}
TWICE = "document.documentElement.style.fontSize = '200%'"


NARROW: ViewportSize = {"width": 320, "height": 640}


def cut_small_and_large(page: Page) -> list[str]:
    """Say what is cut on a narrow screen at the usual size, then on a phone with text twice as large."""
    page.set_viewport_size(NARROW)
    narrow = page.evaluate(CUT)
    page.set_viewport_size({"width": 360, "height": 740})
    page.evaluate(TWICE)
    return narrow + [f"200 %, {each}" for each in page.evaluate(CUT)]


def test_nothing_is_cut_when_something_is_pressed(page: Page, everything: tuple[Serving, dict[str, str]]) -> None:
    """All other states are looked at in test_axe.py, which opens them."""
    serving, ids = everything
    wrong: dict[str, list[str]] = {}
    for state in pressed(ids):
        page.set_viewport_size(NARROW)
        shown(page, serving, state)
        if found := cut_small_and_large(page):
            wrong[str(state)] = found
    assert wrong == {}


def test_what_is_cut_would_be_found(page: Page, everything: tuple[Serving, dict[str, str]]) -> None:
    serving, _ = everything
    page.goto(serving.address)
    expect(page.locator("html.ready")).to_be_attached()
    assert page.evaluate(CUT) == []
    for why, (name, style, words) in SPOILT.items():
        page.evaluate(SPOIL, [name, style, words])
        assert any(why in found for found in page.evaluate(CUT)), why
        page.locator("#spoilt").evaluate("(box) => box.remove()")
    assert page.evaluate(CUT) == []
