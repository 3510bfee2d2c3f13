"""The gauge stick in the hand: rows filled by thumb, with the server and without it."""

import re
from urllib.parse import urlencode

import pytest
from playwright.sync_api import Page, expect

from tests.hand import in_hand
from tests.serving import Serving
from webapp.core.gauge import TOOL

pytestmark = pytest.mark.browser


phone = pytest.fixture(in_hand, name="phone")


def opened(page: Page, address: str) -> None:
    page.goto(address)
    expect(page.locator("html")).to_have_class(re.compile(r"\bready\b"))


def say_lacks(page: Page, row: int, keys: list[str]) -> None:
    """Tap a row, the word, then keys of the pad."""
    entry = page.locator(".entry", has=page.locator(".entry-reading")).nth(row)
    entry.locator(".entry-reading").tap()
    entry.get_by_role("button", name="lacks").tap()
    for key in keys:
        page.locator(f"#pad {key} >> visible=true").tap()


@pytest.mark.parametrize("served", [True, False], ids=["with the server", "without the server"])
def test_what_lacks_against_the_stick_is_said_by_thumb(phone: Page, demo_serving: Serving, served: bool) -> None:
    opened(phone, f"{demo_serving.address}/")
    phone.evaluate("navigator.serviceWorker.ready")
    if not served:
        phone.context.set_offline(True)
    typed = {"openings": "back rail, left: fits\nback rail, right: fits", "keep": "13 1/16"}
    opened(phone, f"{demo_serving.address}/work/gauge?{urlencode(typed)}")
    expect(phone.get_by_role("region", name="Steps")).to_contain_text("fits, nothing comes off")
    for row in (0, 1):
        say_lacks(phone, row, ['[data-of="16"]', '[data-put="1/16"]', '[data-do="strong"]'])
    phone.keyboard.press("Escape")
    expect(phone.get_by_role("region", name="Steps")).to_contain_text("two passes, then a light one")
    expect(phone.get_by_role("region", name="Cautions")).to_contain_text("WAC 296-78-635")
    expect(phone.locator("#keep")).to_have_value("13 1/16")


def test_the_example_fits_the_phone_from_edge_to_edge(phone: Page, demo_serving: Serving) -> None:
    opened(phone, f"{demo_serving.address}/work/gauge?{urlencode(dict(TOOL.example))}")
    expect(phone.locator(".hero")).to_contain_text("Gauge, the largest opening")
    assert phone.evaluate("document.documentElement.scrollWidth") == 360


def test_a_stick_without_its_length_is_asked_for_at_its_field(phone: Page, demo_serving: Serving) -> None:
    opened(phone, f"{demo_serving.address}/work/gauge?openings=back+rail:+fits")
    expect(phone.locator("#keep-error")).to_contain_text("Say the stick's length here")
