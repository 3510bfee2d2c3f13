"""A phone in the hand: a page of Chromium, with a program to talk to, that may raise no error."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, BrowserContext, Page

from tests.serving import common, demo_serving, serving
from tests.static.versions import bench

__all__ = ["bench", "common", "demo_serving", "serving"]

SIZE = {"width": 360, "height": 740}


@pytest.fixture
def phone(browser: Browser) -> Iterator[BrowserContext]:
    """Hand out a phone that has never been here; what its pages raise fails the test."""
    context = browser.new_context(viewport=SIZE)  # type: ignore[arg-type]
    raised: list[str] = []
    context.on("weberror", lambda found: raised.append(str(found.error)))
    yield context
    context.close()
    assert raised == []


@pytest.fixture
def page(phone: BrowserContext) -> Page:
    return phone.new_page()
