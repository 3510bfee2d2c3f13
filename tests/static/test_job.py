"""The demo's headboard by thumb, from its trim to the marks: the network gone half-way, and on two phones."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.hand import THUMB, in_hand
from tests.serving import Quick, Serving
from tests.static.test_bench_day import measure, ready
from tests.static.test_dry_fit import measure as measured_next
from tests.static.test_local_sync import all_sent
from webapp.demo import ID, PROJECT

pytestmark = pytest.mark.browser

hand = pytest.fixture(in_hand, name="page")
TRIM = "Joint the lower edge of the upper rail: two passes, then a light one"
SHOULDERS = "Upper rail, shoulder to shoulder"
SPACING = "Slats between the posts"


@pytest.fixture
def demo(tmp_path: Path) -> Iterator[Serving]:
    server = Quick(tmp_path / "data", demo=True).start()
    yield server
    server.stop()


def opened(page: Page, serving: Serving) -> str:
    """Open the demo's project on a phone that then works without a server; return its address."""
    page.goto(serving.address)
    expect(page.locator("html[data-offline]")).to_be_attached()
    all_sent(page)
    return looked_at(page, f"{serving.address}/projects/{PROJECT}")


def looked_at(page: Page, address: str) -> str:
    page.goto(address)
    ready(page)
    return address


def kept(page: Page, project: str) -> dict[str, dict[str, Any]]:
    """Return the sheets that stand on the server, by what they are called: no two by one name."""
    heads = [head for thing in things(page, project) for head in thing["heads"]]
    assert len({head["called"] for head in heads}) == len(heads)
    return {head["called"]: head for head in heads}


def things(page: Page, project: str) -> list[dict[str, Any]]:
    return list(page.request.get(f"{project}.json").json()["sheets"])


def measure_again(page: Page, project: str) -> None:
    """Measure the round once more after trimming, and keep the gauge sheet that it leads to."""
    looked_at(page, f"{project}/rounds/{ID.format(19)}")
    page.get_by_role("button", name="Measure again after trimming").tap()
    page.wait_for_url(lambda address: "/rounds/" in address and ID.format(19) not in address)
    ready(page)
    expect(page.locator("#pad[data-ready]")).to_be_attached()
    page.locator("#reading-reading").tap()
    for end in ("left", "middle", "right"):
        measured_next(page, f"Upper rail, {end}", "13", "1/16", "strong")
    page.get_by_role("link", name="Gauge sheet of this round").tap()
    page.wait_for_url("**/work/gauge**")
    ready(page)
    expect(page.locator(".hero")).to_be_visible()
    page.locator("#sheet-called").fill("Gauge stick, trimmed")
    page.locator("#sheet button").tap()
    page.wait_for_url("**/sheets/*")
    ready(page)


def test_from_the_trim_to_the_marks_with_the_network_gone_half_way(page: Page, demo: Serving) -> None:
    project = opened(page, demo)
    expect(page.locator(".next")).to_have_text(TRIM)
    expect(page.locator(".warnings")).to_contain_text("the tenon bottoms")
    page.get_by_role("button", name="It is cut").tap()
    expect(page.locator(".next")).to_contain_text("Before the slats are cut")
    expect(page.locator(".warnings")).to_contain_text("the tenon bottoms")
    all_sent(page)
    demo.stop()
    measure_again(page, project)
    looked_at(page, f"{project}/sheets/{ID.format(23)}")
    expect(page.locator(".held-by")).to_contain_text("It is cut, and is not worked again")
    expect(page.locator(".held-by")).to_contain_text("Upper rail, left is now 13 1/16 strong")
    looked_at(page, project)
    measure(page, SHOULDERS, "58", "1/4")
    looked_at(page, f"{project}/sheets/{ID.format(8)}")
    expect(page.locator(".held-by .changed, .held-by .item").first).to_contain_text("58 3/8")
    expect(page.locator(".held-by .changed, .held-by .item").first).to_contain_text("58 1/4")
    looked_at(page, project)
    page.get_by_role("button", name="Work them again").tap()
    expect(page.get_by_role("button", name="Work them again")).to_have_count(0)
    demo.start()
    page.reload()
    ready(page)
    all_sent(page)
    there = kept(page, project)
    assert there[SPACING]["inputs"]["span"] == "233/4 in"
    assert there["Marks of the rails"]["inputs"]["marks"].startswith("Slat 1, left: 67/20 in")
    assert there["Gauge stick of dry fit 1"]["entry"] == ID.format(23)
    assert [link["line"] for link in there["Gauge stick, trimmed"]["links"]] == [
        f"Upper rail, {end}" for end in ("left", "middle", "right")
    ]


def test_what_one_phone_cuts_stands_against_what_another_worked_again_meanwhile(
    browser: Browser, demo: Serving
) -> None:
    contexts = [browser.new_context(**THUMB) for _ in range(2)]
    here, there = [context.new_page() for context in contexts]
    project = opened(here, demo)
    opened(there, demo)
    measure(here, SHOULDERS, "58", "1/4")
    for page in (here, there):
        page.reload()
        ready(page)
        all_sent(page)
        expect(page.get_by_role("button", name="Work them again")).to_be_visible()
    demo.stop()
    looked_at(here, f"{project}/sheets/{ID.format(8)}")
    here.get_by_role("button", name="All of it is cut").tap()
    expect(here.locator("#part-cut")).to_contain_text("all of it: cut")
    there.get_by_role("button", name="Work them again").tap()
    expect(there.get_by_role("button", name="Work them again")).to_have_count(0)
    demo.start()
    for page in (there, here, there):
        looked_at(page, project)
        all_sent(page)
    assert kept(here, project)[SPACING]["entry"] == ID.format(8)
    [late] = [item["entry"] for thing in things(here, project) for item in thing["past"] if item["late"]]
    looked_at(there, f"{project}/sheets/{late}")
    expect(there.locator("#main")).to_contain_text("Worked again on another phone after it was cut: it does not stand.")
    mains = []
    for page in (here, there):
        looked_at(page, project)
        all_sent(page)
        mains.append(page.locator("#main").inner_html())
    assert mains[0] == mains[1]
    for context in contexts:
        context.close()
