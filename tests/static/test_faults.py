"""A bad network under three tabs of one phone: nothing is lost or doubled, and the words never say more than is so."""

import os
import random
from collections.abc import Iterator

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.cases import case
from tests.faulty import FAULTS, Faulty
from tests.serving import Serving
from tests.static.test_local_sync import SENT, kept, module, opened, outbox, start_project, state, wake

pytestmark = pytest.mark.browser
WORKER = "block"

MANY = int(os.environ.get("SHOULDERLINE_FAULTS", "12"))  # 500 in the slow setting
SEED = int(os.environ.get("SHOULDERLINE_SEED", "1909"))
PER_PROJECT = 60  # readings kept in one project, so that the pages stay as long as they are in a shop

# A phone waits 20 seconds for a server that hangs: as long as a test of 500 faults has no time for.
HURRY = "const sound = AbortSignal.timeout.bind(AbortSignal); AbortSignal.timeout = () => sound(700);"

# A lie is a page that says "all sent" at two looks with something unsent at both, and between them, thrice on end.
WATCH = """async (local) => {
    const says = () => (document.getElementById("state")?.textContent ?? "").startsWith("all");
    const waits = async () => (await local.unsent()).some((each) => !each.why);
    let on = 0;
    window.lies = 0;
    setInterval(async () => {
        const lie = says() && await waits() && says();
        on = lie ? on + 1 : 0;
        if (on === 40) window.lies++; // for seconds: words follow the store a moment later
    }, 60);
}"""


@pytest.fixture
def network(common: Serving) -> Iterator[Faulty]:
    with Faulty(common.port) as found:
        yield found


def watched(page: Page, address: str) -> Page:
    opened(page, address)
    module(page, "local", WATCH)
    return page


def honest(tabs: list[Page]) -> None:
    assert [tab.evaluate("window.lies") for tab in tabs] == [0] * len(tabs)


def through(tabs: list[Page]) -> None:
    """The network is good again: every tab comes to say that all is sent."""
    for tab in tabs:
        wake(tab)
    for tab in tabs:
        expect(tab.locator("#state")).to_have_text(SENT, timeout=60_000)
    honest(tabs)
    assert outbox(tabs[0]) == []


def there_once(page: Page, project: str, readings: list[str]) -> None:
    """The server has each reading once and nothing else; so does the phone, entry by entry."""
    found = page.request.get(f"{project}/file").json()["entries"]
    assert sorted(each["body"]["place"] for each in found if each["kind"] == "reading") == sorted(readings)
    assert len(found) == len({each["id"] for each in found}) == len(readings) + 1
    mine = module(page, "local", "(local, project) => local.entries(project)", project.rsplit("/", 1)[1])
    assert {each["id"] for each in mine} == {each["id"] for each in found}
    assert all("seq" in each for each in mine)


class Bench:
    """Three tabs on one project, under faults in random order."""

    def __init__(self, phone: BrowserContext, network: Faulty, draw: random.Random) -> None:
        self.phone, self.network, self.draw = phone, network, draw
        self.readings: list[str] = []
        first = phone.new_page()
        self.project = start_project(first, network)
        state(first, SENT)
        self.tabs = [watched(first, self.project), *(watched(phone.new_page(), self.project) for _ in range(2))]

    def under(self, fault: str) -> None:
        """Let a fault lie in wait; keep something, and now and then load a tab anew or close it in the midst."""
        self.network.faults.append(fault)
        tab = self.draw.choice(self.tabs)
        place = f"Place {len(self.readings)}"
        kept(tab, place, "17 11/16 strong")
        self.readings.append(place)
        if self.draw.random() < 0.15:
            self.lose_a_tab()
        for _ in range(400):
            if not self.network.faults:
                return
            wake(self.draw.choice(self.tabs))
            tab.wait_for_timeout(50)
        raise AssertionError(f"no tab asked, so there was no {fault}")

    def lose_a_tab(self) -> None:
        at = self.draw.randrange(len(self.tabs))
        honest([self.tabs[at]])
        if self.draw.random() < 0.5:
            self.tabs[at].close()
            self.tabs[at] = self.phone.new_page()
        watched(self.tabs[at], self.project)

    def end(self) -> None:
        through(self.tabs)
        there_once(self.tabs[0], self.project, self.readings)
        for tab in self.tabs:
            tab.close()


def drawn(draw: random.Random, many: int) -> list[str]:
    """Every fault as often as every other, in random order."""
    each = [name for _ in range(many // len(FAULTS) + 1) for name in draw.sample(list(FAULTS), len(FAULTS))]
    return each[:many]


def test_nothing_is_lost_or_doubled_under_a_bad_network(phone: BrowserContext, network: Faulty) -> None:
    draw = random.Random(SEED)
    phone.add_init_script(HURRY)
    faults = drawn(draw, MANY)
    for start in range(0, MANY, PER_PROJECT):
        bench = Bench(phone, network, draw)
        for fault in faults[start : start + PER_PROJECT]:
            bench.under(fault)
        bench.end()
    print("\n", dict(network.seen))
    assert network.seen.total() == MANY


def test_under_each_fault_the_entry_stays_and_the_words_say_so(
    page: Page, phone: BrowserContext, network: Faulty
) -> None:
    """One fault after the other, in one project."""
    phone.add_init_script(HURRY)
    project = start_project(page, network)
    state(page, SENT)
    for at, fault in enumerate(FAULTS):
        with case(fault):
            network.faults.extend([fault] * 50)
            kept(page, fault, "58 3/8")
            state(page, "cannot reach the server, 1 waiting")
            assert [each["why"] for each in outbox(page)] == [""]
            assert network.seen[fault] > 0
            network.faults.clear()
            wake(page)
            state(page, SENT)
            there_once(page, project, list(FAULTS)[: at + 1])
