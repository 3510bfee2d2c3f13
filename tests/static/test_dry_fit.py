"""A dry fit by thumb: laid out from the parts, measured in one flow with the pad, half of it without a server."""

import re
from urllib.parse import parse_qs, urlparse

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.fitted import Fitted
from tests.hand import in_hand
from tests.serving import Serving
from tests.static.test_local_sync import all_sent
from webapp.core.links import read_links

pytestmark = pytest.mark.browser

hand = pytest.fixture(in_hand, name="page")
HERO = ".hero-value"
KEEP = '#pad [data-do="next"]:visible'


def begin(page: Page, serving: Serving) -> Fitted:
    """Start a project on the phone with two rails, and wait until it works without a server."""
    page.goto(serving.address)
    expect(page.locator("html[data-offline]")).to_be_attached()
    page.locator("#project-name").fill("Bed in ash")
    page.locator("#project button").tap()
    page.wait_for_url("**/projects/*")
    all_sent(page)
    fitted = Fitted(serving.address, page.url.rsplit("/", 1)[1])
    fitted.keep("part", name="Upper rail", faces="lower", shoulder="30")
    fitted.keep("part", name="Middle rail", faces="upper", shoulder="30")
    page.reload()
    all_sent(page)
    return fitted


def lay_out(page: Page) -> None:
    page.get_by_text("Lay out a dry fit").tap()
    page.locator("#round").get_by_role("button", name="Lay it out").tap()
    page.wait_for_url("**/rounds/*")
    ready(page)


def ready(page: Page) -> None:
    expect(page.locator("html")).to_have_class(re.compile(r"\bready\b"))
    expect(page.locator("#pad[data-ready]")).to_be_attached()


def measure(page: Page, place: str, *presses: str) -> None:
    """Press a reading on the pad, which is open for this place, and keep it by the pad's own key."""
    expect(page.locator(HERO)).to_have_text(place)
    expect(page.locator("#reading-reading")).to_be_focused()
    for press in presses:
        for key in keys(press):
            page.locator(f"#pad {key}:visible").tap()
    page.locator(KEEP).tap()
    expect(page.locator("#reading-reading")).to_have_value("")


def keys(press: str) -> list[str]:
    if "/" in press:
        return [f'[data-of="{press.split("/")[1]}"]', f'[data-put="{press}"]']
    return [f'[data-do="{press}"]'] if press.isalpha() else [f'[data-put="{digit}"]' for digit in press]


def row(page: Page, place: str) -> Locator:
    return page.locator("li.place").filter(has=page.get_by_role("link", name=place, exact=True))


def close(page: Page) -> None:
    page.locator('#pad [data-do="close"]:visible').first.tap()
    expect(page.locator("#pad")).to_be_hidden()


def test_a_dry_fit_in_one_flow(page: Page, serving: Serving) -> None:
    begin(page, serving)
    lay_out(page)
    measure(page, "Upper rail, left", "13", "1/16")
    measure(page, "Upper rail, right", "14", "1/16", "strong")
    expect(page.locator(".hero .rivals")).to_have_text("Read it again: 14 1/16 strong is 1 in strong over its fellows.")
    measure(page, "Upper rail, right", "13", "1/16", "strong")
    expect(page.locator(HERO)).to_have_text("Middle rail, left")
    page.get_by_role("button", name="Skip it").tap()

    serving.stop()  # half-way: everything goes on
    measure(page, "Middle rail, right", "12", "15/16")
    measure(page, "Middle rail, right", "13")  # 1/8 under: asked again
    for place, reading in (("rising", "42"), ("falling", "42")):
        measure(page, f"diagonal, {place}", reading)
    close(page)
    row(page, "diagonal, falling").get_by_role("button", name="Withdraw").tap()
    expect(page.locator(HERO)).to_have_text("diagonal, falling")
    expect(row(page, "diagonal, falling")).to_contain_text("withdrawn: 42")
    page.locator("#reading-reading").tap()
    measure(page, "diagonal, falling", "42", "1/16")
    measure(page, "side, along", "30")
    measure(page, "side, up", "30")
    measure(page, "shoulder line, Upper rail", "30")
    measure(page, "shoulder line, Middle rail", "30")
    measure(page, "Middle rail, left", "13", "1/16", "scant")
    expect(page.locator(HERO)).to_have_text("All is measured")
    expect(page.locator("#pad")).to_be_hidden()

    first = page.url
    opens = page.get_by_role("link", name="Gauge sheet of this round")
    query = parse_qs(urlparse(opens.get_attribute("href") or "").query)
    assert [link.line for link in read_links(query["links"][0])] == [
        "Upper rail, left",
        "Upper rail, right",
        "Middle rail, left",
        "Middle rail, right",
    ]
    opens.tap()
    expect(page.locator(".hero-label")).to_contain_text("largest opening")
    page.goto(first)
    page.get_by_role("link", name="Square sheet").tap()
    expect(page.locator("#sides")).to_have_value("30 in x 30 in")
    expect(page.locator(".hero")).to_be_visible()
    page.goto(first)
    second_round(page, serving)


def second_round(page: Page, serving: Serving) -> None:
    """Measure again after trimming, against a stick, with the server back again in the end."""
    ready(page)
    page.locator("#round-stick").tap()
    page.keyboard.type("13 1/16")
    page.get_by_role("button", name="Measure again after trimming").tap()
    expect(page.locator(".hero-label")).to_have_text("Place 1 of 10, 10 left to measure")
    page.locator(".puts").get_by_role("button", name="fits").tap()
    page.locator(KEEP).tap()
    expect(page.locator(HERO)).to_have_text("Upper rail, right")
    page.locator(".puts").get_by_role("button", name="lacks").tap()
    measure(page, "Upper rail, right", "1/32")
    expect(page.locator(HERO)).to_have_text("Middle rail, left")
    close(page)
    expect(row(page, "Upper rail, left")).to_contain_text("as before")
    expect(row(page, "Upper rail, right")).to_contain_text("lacks 1/32")
    expect(row(page, "Upper rail, right")).to_contain_text("less by")
    row(page, "Upper rail, left").get_by_role("link").tap()
    measure(page, "Upper rail, left", "13", "1/16", "strong")
    expect(page.locator(HERO)).to_have_text("Middle rail, left")
    close(page)
    expect(row(page, "Upper rail, left")).to_contain_text("read 2 times")
    serving.start()
    all_sent(page)


def test_what_is_half_typed_holds_its_place_whatever_another_phone_sends(page: Page, serving: Serving) -> None:
    fitted = begin(page, serving)
    lay_out(page)
    all_sent(page)
    page.locator('#pad [data-put="1"]:visible').tap()
    within = page.url.rsplit("/", 1)[1].split("?")[0]
    fitted.keep("reading", place="Upper rail, left", reading="13", round=within)
    page.evaluate("window.dispatchEvent(new Event('online'))")
    expect(page.locator("#main")).to_contain_text("13")
    expect(page.locator(HERO)).to_have_text("Upper rail, left")
    expect(page.locator("#reading-reading")).to_have_value("1")
    page.reload()
    expect(page.locator("#reading-reading")).to_have_value("1")
    expect(page.locator(HERO)).to_have_text("Upper rail, left")
    page.locator('#pad [data-put="4"]:visible').tap()
    page.locator(KEEP).tap()
    expect(page.locator(HERO)).to_have_text("Upper rail, right")
