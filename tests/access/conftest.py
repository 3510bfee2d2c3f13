"""A shop in this process, and a phone that was set up for it."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext

from tests.access.bench import HERE, Bench
from tests.access.trusting import phone_at, trust


@pytest.fixture
def bench(tmp_path: Path) -> Iterator[Bench]:
    made = Bench(tmp_path / "data")
    yield made
    made.stop()


@pytest.fixture
def shop(bench: Bench) -> Bench:
    return bench.start()


@pytest.fixture
def phone(browser: Browser, shop: Bench, tmp_path: Path) -> Iterator[BrowserContext]:
    """Hand out a phone on the shop's network that trusts its authority."""
    trust(tmp_path / "home", shop.shop.root)
    context = phone_at(browser, tmp_path / "home", f"MAP {shop.shop.place.name} {HERE}")
    yield context
    context.close()
