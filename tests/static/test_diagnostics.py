"""How this phone stands, read off the phone itself, with the server and without."""

import re

import pytest
from playwright.sync_api import Page, expect

from tests.hand import ready
from tests.serving import Serving

pytestmark = pytest.mark.browser

LINES = """() => Object.fromEntries([...document.querySelectorAll("#standing .line")].map((line) =>
    [line.querySelector(".line-label").textContent, line.querySelector(".line-value").textContent]))"""


def line(page: Page, label: str):
    return page.locator("#standing .line").filter(has=page.get_by_text(label, exact=True)).locator(".line-value")


def test_it_says_how_the_phone_stands(page: Page, common: Serving) -> None:
    page.goto(common.address)
    expect(page.locator("html[data-offline]")).to_be_attached()
    page.get_by_text("This phone", exact=True).click()
    page.get_by_role("link", name="How this phone stands").click()
    ready(page)
    expect(page.locator("h1")).to_have_text("How this phone stands")
    expect(line(page, "Server")).to_have_text("answers, all is exchanged")
    said = page.evaluate(LINES)
    stamp = str(page.locator('link[rel="stylesheet"]').get_attribute("href")).split("/")[2]
    assert said["Build"].replace(" ", "") == stamp
    assert re.fullmatch(r"[0-9a-f]{4} [0-9a-f]{4} [0-9a-f]{4}", said["Engine"])
    assert re.fullmatch(r"([0-9a-f]{4} ){7}[0-9a-f]{4}", said["Server's data"])
    assert said["Opens offline"] == "yes"
    assert said["Clock"].startswith("good, ")
    assert said["Page"] == "secure"
    assert re.fullmatch(r"\d+\.\d MB used of \d+\.\d MB", said["Room"])
    assert said["Kept for good"] == "no answer yet"
    assert re.fullmatch(r"Chrome \d+, .+", said["Browser"])
    assert [said[name] for name in ("Held here", "Waiting to be sent", "Refused")] == ["0 entries"] * 3
    expect(page.locator("#standing")).to_contain_text("Last errors")
    assert max(len(words) for words in said.values()) <= 60


def test_the_shops_own_computer_shows_the_way_to_the_phones(page: Page, common: Serving) -> None:
    """The start page's shell is the same on a phone: tests/access/test_phone.py looks that it shows nothing there."""
    page.goto(common.address)
    page.get_by_role("link", name="The shop’s phones").click()
    expect(page.locator("h1")).to_have_text("Paired phones")


def test_without_a_server_it_counts_what_waits_and_saves_it_as_a_file(page: Page, common: Serving) -> None:
    page.goto(common.address)
    expect(page.locator("html[data-offline]")).to_be_attached()
    page.context.set_offline(True)
    page.locator("#project-name").fill("Alone")
    page.get_by_role("button", name="Start", exact=True).click()
    expect(page.locator("h1")).to_have_text("Alone")
    page.goto(f"{common.address}/diagnostics")
    expect(line(page, "Waiting to be sent")).to_have_text("1 entry")
    expect(line(page, "Server")).to_have_text("cannot be reached")
    with page.expect_download() as found:
        page.get_by_role("button", name="Save what is not sent as a file").click()
    assert "Alone" in found.value.path().read_text(encoding="utf-8")


def test_a_clock_that_is_wrong_is_said(page: Page, common: Serving) -> None:
    page.add_init_script("const real = Date.now; Date.now = () => real() + 7 * 60_000;")
    page.goto(f"{common.address}/diagnostics")
    expect(line(page, "Clock")).to_have_text(re.compile("^wrong, 7 minutes ahead of the server"))


def test_the_last_errors_are_kept_without_their_words(browser, common: Serving) -> None:
    context = browser.new_context()
    page = context.new_page()
    page.goto(f"{common.address}/diagnostics")
    ready(page)
    page.evaluate("""async () => {
        for (let at = 0; at < 25; at++) setTimeout(() => { throw new RangeError(`typed 58 3/8 ${at}`); });
        await new Promise((later) => setTimeout(later, 100));
        setTimeout(() => { BigInt("58 3/8"); });
        Promise.reject(new DOMException("typed 58 3/8", "QuotaExceededError"));
        await new Promise((later) => setTimeout(later, 100));
    }""")
    page.reload()
    ready(page)
    said = page.locator("#standing ul.list >> nth=1").locator(".line-value")
    expect(said).to_have_count(20)
    assert "58 3/8" not in page.evaluate("localStorage.getItem('shoulderline-errors')")
    assert {words.split(" at ")[0] for words in said.all_text_contents()} == {
        "QuotaExceededError",
        "SyntaxError",
        "RangeError",
    }
    context.close()


@pytest.mark.parametrize("head", ["RangeError: 58 3/8 at rail.js:1:1\n    at ", ""])
def test_an_errors_place_is_found_in_every_browsers_stack(page: Page, common: Serving, head: str) -> None:
    """A stack begins with the error's words in Chromium alone; in Firefox and WebKit with its first place."""
    page.goto(common.address)
    said = page.evaluate(
        """async (stack) => {
            const here = document.querySelector("script[type=module]").src;
            const { noteFault, faults } = await import(new URL("errors.js", here).href);
            noteFault(Object.assign(new RangeError("58 3/8 at rail.js:1:1"), { stack }));
            return faults()[0].said;
        }""",
        head + "kept@http://127.0.0.1/static/0/keep.js:12:3\nopen@http://127.0.0.1/static/0/screen.js:4:5",
    )
    assert said == "RangeError at keep.js line 12 column 3"
