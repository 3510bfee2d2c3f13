"""The pad under a real finger: what it closes for is not moved from under the press."""

import re

import pytest
from playwright.sync_api import Page, expect

from tests.hand import in_hand
from tests.serving import Serving, common

__all__ = ["common"]

pytestmark = pytest.mark.browser
WORKER = "block"


page = pytest.fixture(in_hand, name="page")


def project(page: Page, serving: Serving) -> None:
    page.goto(serving.address)
    expect(page.locator("html")).to_have_class(re.compile("ready"))
    page.locator("#project-name").fill("Bed in ash")
    page.get_by_role("button", name="Start", exact=True).tap()
    expect(page.locator("h1")).to_have_text("Bed in ash")
    expect(page.locator("html")).to_have_class(re.compile("ready"))


def test_one_press_keeps_a_reading_while_the_pad_is_open(page: Page, common: Serving) -> None:
    project(page, common)
    page.locator("#reading-place").fill("rail")
    page.locator("#reading-reading").tap()
    page.locator("#pad").get_by_role("button", name="7", exact=True).tap()
    page.get_by_role("button", name="Keep the reading").tap()
    expect(page.get_by_role("link", name="rail", exact=True)).to_be_visible()
    expect(page.locator("#pad")).to_be_hidden()


def test_the_pad_goes_when_a_press_ends_elsewhere(page: Page, common: Serving) -> None:
    project(page, common)
    page.locator("#reading-reading").tap()
    expect(page.locator("#pad")).to_be_visible()
    page.locator("#reading-note").tap()
    expect(page.locator("#pad")).to_be_hidden()
    expect(page.locator("#reading-note")).to_be_focused()


def test_quick_presses_all_count(page: Page, common: Serving) -> None:
    project(page, common)
    page.locator("#reading-reading").tap()
    key = page.locator("#pad").get_by_role("button", name="7", exact=True).bounding_box()
    assert key is not None
    for _ in range(4):
        page.touchscreen.tap(key["x"] + 20, key["y"] + 20)
    expect(page.locator("#reading-reading")).to_have_value("7777")
