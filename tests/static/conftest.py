"""A phone in the hand: a page of Chromium, with a program to talk to, that may raise no error."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, BrowserContext, Page

from tests.serving import Quick, Serving, common, demo_serving, serving
from tests.static.states import filled
from tests.static.versions import bench

__all__ = ["bench", "common", "demo_serving", "serving"]

SIZE = {"width": 360, "height": 740}


@pytest.fixture
def phone(browser: Browser, request: pytest.FixtureRequest) -> Iterator[BrowserContext]:
    """Hand out a phone that has never been here; what its pages raise fails the test.

    A module that says WORKER = "block" has nothing to do with the worker: each page is then the server's own. Else
    every test's phone takes all files of the program, which is most of what a short test costs.
    """
    worker = getattr(request.module, "WORKER", "allow")
    context = browser.new_context(viewport=SIZE, service_workers=worker)  # type: ignore[arg-type]
    raised: list[str] = []
    context.on("weberror", lambda found: raised.append(str(found.error)))
    yield context
    context.close()
    assert raised == []


@pytest.fixture
def page(phone: BrowserContext) -> Page:
    return phone.new_page()


@pytest.fixture(scope="session")
def everything(tmp_path_factory: pytest.TempPathFactory) -> Iterator[tuple[Serving, dict[str, str]]]:
    """Serve all that a screen can show, with the ids by name; its tests leave it as it is."""
    server = Quick(tmp_path_factory.mktemp("everything")).start()
    yield server, filled(server)
    server.stop()
