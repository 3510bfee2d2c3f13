"""Bytes of a first visit over the wire, and of all that the phone keeps; `python -m tests.benchmarks.bytes`."""

import tempfile
from pathlib import Path

from playwright.sync_api import Page, Response, sync_playwright

from tests.engine import launched
from tests.serving import Serving
from webapp.app import create_app
from webapp.phone.build import PLACE

AIM, SCRIPTS = 100_000, 50_000
VISITS = ("/", "/work/spacing")


def visited(page: Page, address: str) -> dict[str, tuple[int, int]]:
    """Open an address for the first time and return each file's bytes as they came: its own, and its headers."""
    came: list[Response] = []
    page.on("response", lambda answer: came.append(answer))  # noqa: PLW0108 - Playwright marks what it is given
    page.goto(address)
    page.locator("html.ready").wait_for(state="attached", timeout=60_000)
    page.wait_for_load_state("networkidle")
    sizes = {answer.url: answer.request.sizes() for answer in came}
    return {url: (found["responseBodySize"], found["responseHeadersSize"]) for url, found in sizes.items()}


def kept() -> dict[str, tuple[int, int]]:
    """Return what the phone keeps: each file's bytes, and those of its smallest encoding."""
    with tempfile.TemporaryDirectory() as folder:
        app = create_app(Path(folder))
        build = app.extensions[PLACE]
        app.extensions["shoulderline"].close()
    return {
        name: (len(body), min(map(len, [body, *build.packed[name].values()]))) for name, body in build.files.items()
    }


def total(files: dict[str, tuple[int, int]], suffix: str = "") -> str:
    found = [sizes for name, sizes in files.items() if name.endswith(suffix)]
    return f"{sum(b for _, b in found):,} bytes compressed, {sum(a for a, _ in found):,} bare, {len(found)} files"


def said(came: dict[str, tuple[int, int]]) -> str:
    bodies, heads = (sum(sizes[at] for sizes in came.values()) for at in (0, 1))
    return f"{bodies:,} bytes and {heads:,} of headers in {len(came)} answers"


def main() -> None:
    files = kept()
    print(f"all that the phone keeps: {total(files)}")
    print(f"of these scripts: {total(files, '.js')}")
    for name in ("screen.js", "folding.js", "linked.js", "more.js"):
        print(f"    {name}: {total(files, f'/{name}')}")
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        server, browser = Serving(Path(folder), demo=True).start(), launched(playwright)
        for visit in VISITS:
            page = browser.new_context(service_workers="block").new_page()
            came = visited(page, server.address + visit)
            scripts = {url: sizes for url, sizes in came.items() if url.endswith(".js")}
            print(f"first visit to {visit}: {said(came)} (aim {AIM:,})")
            print(f"    of these scripts: {said(scripts)} (aim {SCRIPTS:,})")
        browser.close()
        server.stop()


if __name__ == "__main__":
    main()
