"""`kill -9` of the browser with unsent work, on a bad network: what it said it kept is there, and is sent once."""

import os
import random
from contextlib import suppress
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Error, Page, expect

from tests.faulty import Faulty
from tests.hand import ready
from tests.serving import Serving
from tests.static.test_bench_day import kill, on_the_phone
from tests.static.test_faults import there_once
from tests.static.test_local_sync import SENT, kept, measure, outbox, start_project, state, wake

pytestmark = pytest.mark.browser

ROUNDS = int(os.environ.get("SHOULDERLINE_PHONE_KILLS", "2"))  # 50 in the slow setting
SEED = int(os.environ.get("SHOULDERLINE_SEED", "1909"))
NETWORKS = ("down", "hangs after", "dropped after", "hangs before", "cut short after")


def unsent_work(page: Page, network: Faulty, draw: random.Random, number: int) -> list[str]:
    """Keep a few readings on a network that brings none of them through for certain."""
    how = NETWORKS[number % len(NETWORKS)]
    network.down = how == "down"
    network.faults.extend([] if network.down else [how] * 500)
    places = [f"Round {number}, place {at}" for at in range(draw.randint(1, 4))]
    for place in places:
        kept(page, place, "17 11/16 strong")
    return places


def test_a_killed_browser_has_what_it_said_it_kept(browser: Browser, serving: Serving, tmp_path: Path) -> None:
    profile = tmp_path / "phone"
    with Faulty(serving.port) as network:
        phone = on_the_phone(browser, profile)
        page = phone.pages[0]
        project = start_project(page, network)
        expect(page.locator("html[data-offline]")).to_have_count(1)
        state(page, SENT)
        readings: list[str] = []
        unsure = 0
        for number in range(ROUNDS):
            draw = random.Random(f"{SEED} {number}")
            readings += unsent_work(page, network, draw, number)
            assert outbox(page)
            last = f"Round {number}, at the last moment"
            measure(page, last, "1")  # nothing is waited for: it is kept whole, or not at all
            page.wait_for_timeout(draw.uniform(0, 30))
            kill(profile)
            with suppress(Error):  # the browser is dead, which is what this test wants
                phone.close()
            network.faults.clear()
            network.down = True
            phone = on_the_phone(browser, profile)
            page = phone.pages[0]
            page.goto(project)
            ready(page)
            waiting = [each["entry"]["body"]["place"] for each in outbox(page)]
            there = page.locator("#main").text_content() or ""  # a long list is folded
            assert [place for place in readings if place not in there] == []
            readings += [last] if last in waiting else []
            unsure += last in waiting
            network.down = False
            wake(page)
            expect(page.locator("#state")).to_have_text(SENT, timeout=60_000)
            there_once(page, project, readings)
        print(f"\nkilled {ROUNDS} times, {len(readings)} readings, of {ROUNDS} at the last moment {unsure} were kept")
        phone.close()
