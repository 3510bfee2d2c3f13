"""A phone in a hand: a page of its size that is tapped; what it raises fails the test."""

import re
from collections.abc import Iterator
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, expect

KEYS = {"strong": '[data-do="strong"]', "scant": '[data-do="scant"]', "next": '[data-do="next"]'}
THUMB: dict[str, Any] = {"viewport": {"width": 360, "height": 740}, "has_touch": True, "is_mobile": True}


def in_hand(browser: Browser, request: pytest.FixtureRequest) -> Iterator[Page]:
    """Hand a page out: for `pytest.fixture(in_hand, name="page")`; a module's WORKER is as in static/conftest.py."""
    context = browser.new_context(**THUMB, service_workers=getattr(request.module, "WORKER", "allow"))
    raised: list[str] = []
    context.on("weberror", lambda found: raised.append(str(found.error)))
    yield context.new_page()
    context.close()
    assert raised == []


def ready(page: Page) -> None:
    """Wait until the phone has taken the page over."""
    expect(page.locator("html")).to_have_class(re.compile(r"\bready\b"))


def started(page: Page, address: str, name: str) -> str:
    """Start a project by its form and return its address."""
    page.goto(address)
    ready(page)
    page.locator("#project-name").fill(name)
    page.get_by_role("button", name="Start", exact=True).click()
    expect(page.locator("h1")).to_have_text(name)
    ready(page)
    return page.url


def keys(press: str) -> list[str]:
    """Return the pad's keys that a press is made of, as selectors: "58" is two, "3/8" is its denominator and itself."""
    if press in KEYS:
        return [KEYS[press]]
    if "/" in press and press != "1/2":
        return [f'[data-of="{press.split("/")[1]}"]', f'[data-put="{press}"]']
    return [f'[data-put="{press}"]'] if press == "1/2" else [f'[data-put="{digit}"]' for digit in press]
