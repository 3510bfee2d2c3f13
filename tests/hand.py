"""A phone in a hand: a page of its size that is tapped; what it raises fails the test."""

from collections.abc import Iterator
from typing import Any

from playwright.sync_api import Browser, Page

THUMB: dict[str, Any] = {"viewport": {"width": 360, "height": 740}, "has_touch": True, "is_mobile": True}


def in_hand(browser: Browser) -> Iterator[Page]:
    """Hand a page out: for `pytest.fixture(in_hand, name="page")`."""
    context = browser.new_context(**THUMB)
    raised: list[str] = []
    context.on("weberror", lambda found: raised.append(str(found.error)))
    yield context.new_page()
    context.close()
    assert raised == []
