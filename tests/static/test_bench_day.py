"""A day at the bench, by thumb at 360 x 740: with the server, then with the server stopped and the browser killed."""

import os
import signal
from contextlib import suppress
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Error, Page, expect

from tests.browser import executable, flags
from tests.hand import THUMB, keys, ready
from tests.serving import Serving
from tests.static.test_local_sync import all_sent

pytestmark = pytest.mark.browser


def on_the_phone(browser: Browser, profile: Path) -> BrowserContext:
    """Start the browser as a phone does, with all that it kept."""
    return browser.browser_type.launch_persistent_context(
        profile, args=flags(), executable_path=executable(browser.browser_type), **THUMB
    )


def kill(profile: Path) -> None:
    """Kill the browser of a profile as a phone does that runs out of memory: SIGKILL, with no word to it."""
    killed = 0
    for folder in Path("/proc").glob("[0-9]*"):
        try:
            words = (folder / "cmdline").read_bytes()
        except OSError:
            continue
        if f"--user-data-dir={profile}".encode() in words and b"--type=" not in words:
            os.kill(int(folder.name), signal.SIGKILL)
            killed += 1
    assert killed == 1


def thumb(page: Page, field: str, *presses: str) -> None:
    """Tap a field and press keys of the pad: "58", "3/8", "strong"."""
    page.locator(field).tap()
    expect(page.locator("#pad")).to_be_visible()
    for press in presses:
        for key in keys(press):
            page.locator(f"#pad {key} >> visible=true").tap()


def measure(page: Page, place: str, *presses: str) -> None:
    page.locator("#reading-place").fill(place)
    thumb(page, "#reading-reading", *presses)
    page.keyboard.press("Escape")
    page.get_by_role("button", name="Keep the reading").tap()
    expect(page.locator("#reading-place")).to_have_value("")


def space(page: Page, called: str, count: str) -> None:
    """Space the slats from a project's page, and keep the sheet."""
    page.get_by_role("link", name="Slats and gaps").tap()
    ready(page)
    thumb(page, "#span", "58", "3/8")
    thumb(page, "#slat", "2", "3/4")
    thumb(page, "#count", count)
    expect(page.locator(".hero")).to_contain_text("Gap")
    page.keyboard.press("Escape")
    page.locator("#sheet-called").fill(called)
    page.locator("#sheet button").tap()
    page.wait_for_url("**/sheets/*")
    ready(page)
    expect(page.locator("h1")).to_have_text(called)


def test_a_day_at_the_bench(browser: Browser, serving: Serving, tmp_path: Path) -> None:
    profile = tmp_path / "phone"
    phone = on_the_phone(browser, profile)
    page = phone.pages[0]
    project = morning(page, serving)
    serving.stop()
    kill(profile)
    with suppress(Error):  # the browser is dead, which is what this test wants
        phone.close()
    phone = on_the_phone(browser, profile)
    page = phone.pages[0]
    afternoon(page, project)
    serving.start()
    evening(page, serving, project)
    phone.close()


def morning(page: Page, serving: Serving) -> str:
    """Start a project, measure by the pad, space the slats, keep, reopen."""
    page.goto(serving.address)
    ready(page)
    page.locator("#project-name").fill("Headboard")
    page.get_by_role("button", name="Start").tap()
    page.wait_for_url("**/projects/*")
    ready(page)
    project = page.url
    measure(page, "Upper rail", "17", "11/16", "strong")
    expect(page.locator("#main")).to_contain_text("Upper rail")
    space(page, "First spacing", "9")
    expect(page.locator("#main .hero")).to_contain_text("scant")
    page.goto(project)
    page.get_by_role("link", name="First spacing", exact=True).tap()
    expect(page.locator("#main .exactly")).to_contain_text("269/80")
    all_sent(page)
    return project


def afternoon(page: Page, project: str) -> None:
    """The same with no server and a browser that was killed: all of the morning is there, and more is kept."""
    page.goto(project)
    ready(page)
    expect(page.locator("#main")).to_contain_text("Upper rail")
    expect(page.locator("#main")).to_contain_text("First spacing")
    measure(page, "Lower rail", "17", "1/2", "scant")
    measure(page, "Upper rail", "17", "5/8")
    space(page, "Second spacing", "8")
    page.goto(project)
    page.get_by_role("link", name="First spacing", exact=True).tap()
    ready(page)
    page.get_by_role("link", name="Change it").tap()
    ready(page)
    thumb(page, "#count", "10")
    page.keyboard.press("Escape")
    page.locator("#sheet button").tap()
    page.wait_for_url("**/sheets/*")
    expect(page.locator("#state")).to_contain_text("waiting")


def evening(page: Page, serving: Serving, project: str) -> None:
    """The server is back: everything is there, once."""
    page.goto(project)
    all_sent(page)
    found = page.request.get(f"{project}.json").json()
    readings = {p["place"]: ([r["text"] for r in p["heads"]], [r["text"] for r in p["past"]]) for p in found["places"]}
    assert readings == {
        "Upper rail": (["17 5/8"], ["17 11/16 strong"]),
        "Lower rail": (["17 1/2 scant"], []),
    }
    sheets = [
        ([s["inputs"]["count"] for s in t["heads"]], [s["inputs"]["count"] for s in t["past"]]) for t in found["sheets"]
    ]
    assert sheets == [(["10"], ["9"]), (["8"], [])]
    entries = page.request.get(f"{project}/file").json()["entries"]
    assert len(entries) == len({entry["id"] for entry in entries}) == 7
    assert serving.process is not None
