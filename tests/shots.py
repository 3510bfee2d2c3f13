"""The manifest's screenshots, taken of the demo's real pages: `python -m tests.shots`, then look at them.

They are files of the program (static/screens); take them anew when the look has changed.
"""

import tempfile
from pathlib import Path

from playwright.sync_api import Browser, sync_playwright

from tests.browser import executable, flags
from tests.look import HEADBOARD, SPACED, Screen, show
from tests.serving import Serving
from webapp.folders import STATIC

SCREENS = {  # by the names that webapp/phone/manifest.py gives words to
    "project": Screen("project", HEADBOARD[:2]),
    "sheet": Screen("kept sheet", (*HEADBOARD[:2], "Slats between the posts")),
    "reading": Screen("a reading, typed", HEADBOARD[:2], ("#reading-reading", "=17 11/16 strong")),
    "wide": Screen("answer", (SPACED,)),
}
PHONE, WIDE = (360, 740), (1280, 800)


def take(browser: Browser, address: str, name: str, folder: Path) -> Path:
    """Take one picture: a phone's half as large again, the wide one as it is."""
    width, height = WIDE if name == "wide" else PHONE
    context = browser.new_context(
        viewport={"width": width, "height": height},
        device_scale_factor=1 if name == "wide" else 1.5,
        service_workers="block",
    )
    page = context.new_page()
    show(page, address, SCREENS[name])
    page.wait_for_timeout(1000)  # what is said of the exchange
    file = folder / f"{name}.png"
    page.screenshot(path=file)
    context.close()
    return file


def main() -> None:
    folder = STATIC / "screens"
    folder.mkdir(exist_ok=True)
    with tempfile.TemporaryDirectory() as data, sync_playwright() as playwright:
        server = Serving(Path(data), demo=True).start()
        browser = playwright.chromium.launch(executable_path=executable(playwright.chromium), args=flags())
        try:
            for name in SCREENS:
                file = take(browser, server.address, name, folder)
                print(file, file.stat().st_size)
        finally:
            browser.close()
            server.stop()


if __name__ == "__main__":
    main()
