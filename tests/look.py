"""A contact sheet of all screens, sizes and themes: `python -m tests.look [folder]`, then look at the pictures."""

import base64
import re
import sys
import tempfile
from collections.abc import Iterator
from dataclasses import dataclass
from html import escape
from pathlib import Path

from playwright.sync_api import Browser, Page, sync_playwright

from tests.browser import executable, flags
from tests.serving import Serving
from webapp.core.address import work_address
from webapp.tools import TOOLS

SIZES = {
    "phone": (360, 740),
    "low phone": (360, 560),
    "lying phone": (640, 360),
    "tablet": (768, 1024),
    "wide": (1280, 800),
    "narrow, text at 200 %": (320, 640),
}
THEMES = ("light", "dark", "sun")
SPACED = "/work/spacing?span=58+3/8&slat=2+3/4&count=9"
HEADBOARD = ("/", "Ash headboard", "Slats and gaps")
WORKED = ("#span", "=58 3/8", "#slat", "=2 3/4", "#count", "=9")
SETTLED = 700  # ms, for what is said a little later


@dataclass(frozen=True)
class Screen:
    """One picture: where it is, and what is pressed there first (selectors, `=text` to type, or Escape)."""

    name: str
    way: tuple[str, ...]
    presses: tuple[str, ...] = ()


SCREENS = (
    Screen("home", ("/",)),
    Screen("project", ("/", "Ash headboard")),
    Screen("a reading, typed", ("/", "Ash headboard"), ("#reading-reading", "=17 11/16 strong")),
    Screen("one place", ("/", "Ash headboard", "Upper rail, shoulder to shoulder")),
    Screen("kept sheet", ("/", "Ash headboard", "Slats between the posts")),
    Screen("tool, empty", ("/work/spacing",)),
    Screen("answer", (SPACED,)),
    Screen("typing", (SPACED,), ("#slat",)),
    Screen("sixteenths", (SPACED,), ("#slat", '#pad [data-of="16"]')),
    Screen("32nds", (SPACED,), ("#slat", '#pad [data-of="32"]')),
    Screen("more keys", (SPACED,), ("#slat", '#pad [data-do="more"]')),
    Screen("the last answer stands", (SPACED,), ("#slat", "=2 3/", '#pad [data-do="next"]')),
    Screen("worked in a project", HEADBOARD, (*WORKED, "Escape")),
    Screen("to be kept", HEADBOARD, (*WORKED, "Escape", "#sheet-called", "=Upper rail")),
    Screen("errors", ("/work/spacing?span=58+3/0&slat=2+3/4&count=x",)),
    Screen("millimetres", ("/work/spacing?unit=mm&span=1482.5&slat=70&count=9",), ("#span",)),
    Screen("feet", ("/work/spacing?unit=ft&span=24'+11+31/32\"&slat=2+3/4+in&count=60&offset=1'",)),
    Screen("a thousand", ("/work/spacing?span=500+ft&slat=2+3/4&count=1000",)),
    *(Screen(tool.title, (work_address(tool.name, dict(tool.example)),)) for tool in TOOLS.values()),
)


def show(page: Page, address: str, screen: Screen) -> None:
    """Go the screen's way and press what is to be pressed."""
    first, *links = screen.way
    page.goto(address + first)
    for link in links:
        ready(page)
        page.get_by_role("link", name=link).first.click()
    ready(page)
    for word in screen.presses:
        press(page, word)
    if screen.presses:
        page.wait_for_timeout(SETTLED)


def press(page: Page, word: str) -> None:
    if word == "Escape":
        page.keyboard.press(word)
    elif word[0] == "=":
        page.keyboard.type(word[1:])
    else:
        page.locator(word).click()


def ready(page: Page) -> None:
    page.locator("html.ready").wait_for(state="attached")


def pictures(browser: Browser, address: str, theme: str, size: str) -> Iterator[tuple[str, bytes]]:
    """Take every screen's picture at one size."""
    width, height = SIZES[size]
    context = browser.new_context(viewport={"width": width, "height": height}, service_workers="block")
    page = context.new_page()
    page.goto(address)
    page.evaluate("(theme) => localStorage.setItem('shoulderline-theme', theme)", theme)
    for screen in SCREENS:
        show(page, address, screen)
        if "200" in size:
            page.evaluate("document.documentElement.style.fontSize = '200%'")
        too_wide = page.evaluate("document.documentElement.scrollWidth - innerWidth")
        if too_wide > 0:
            print(f"{theme}, {size}, {screen.name}: {too_wide} px wider than the screen")
        yield screen.name, page.screenshot()
    context.close()


def contact_sheet(browser: Browser, address: str, theme: str, folder: Path) -> list[Path]:
    """Compose one picture for each size of a theme."""
    made = []
    for size, (width, _) in SIZES.items():
        figures = "".join(figure(name, shot, width) for name, shot in pictures(browser, address, theme, size))
        columns = max(2, 2400 // (width + 16))
        page = browser.new_page(viewport={"width": columns * (width + 16) + 16, "height": 600})
        page.set_content(f"<style>{STYLE}</style><h1>{theme}, {size}</h1><main>{figures}</main>")
        file = folder / f"{theme}-{re.sub('[^a-z0-9]+', '-', size).strip('-')}.png"
        page.screenshot(path=file, full_page=True)
        page.close()
        made.append(file)
    return made


STYLE = (
    "body{margin:16px;background:#777;color:#fff;font:14px sans-serif} main{display:flex;flex-wrap:wrap;gap:16px}"
    "figure{margin:0} img{display:block} h1{font-size:16px}"
)


def figure(name: str, shot: bytes, width: int) -> str:
    data = base64.b64encode(shot).decode()
    return f'<figure>{escape(name)}<img width="{width}" src="data:image/png;base64,{data}" alt=""></figure>'


def main() -> None:
    folder = Path(sys.argv[1] if len(sys.argv) > 1 else tempfile.mkdtemp(prefix="shoulderline-look-"))
    folder.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory() as data, sync_playwright() as playwright:
        server = Serving(Path(data), demo=True).start()
        browser = playwright.chromium.launch(executable_path=executable(playwright.chromium), args=flags())
        try:
            for theme in THEMES:
                for file in contact_sheet(browser, server.address, theme, folder):
                    print(file)
        finally:
            browser.close()
            server.stop()


if __name__ == "__main__":
    main()
