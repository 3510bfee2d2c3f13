"""`python -m tests.benchmarks.budgets`: the phone's budgets, slowed down, beside a bare page of the same bytes.

Cold: the browser is started anew for each opening, the server is stopped, the worker answers; until the first answer
is drawn. The bare page stands as one file in a worker's cache of the same size of bytes, and is started the same way.
`SHOULDERLINE_ROUNDS` (20) says how many medians are of; `SHOULDERLINE_SLOWER` ("1 4 6") at which speeds.
"""

import os
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from statistics import median

from playwright.sync_api import BrowserContext, BrowserType, Page, sync_playwright

from tests.benchmarks import bytes as visits
from tests.benchmarks.keys import BARE, KEY, line
from tests.browser import executable, flags
from tests.serving import Serving

ROUNDS = int(os.environ.get("SHOULDERLINE_ROUNDS", "20"))
SLOWER = [int(rate) for rate in os.environ.get("SHOULDERLINE_SLOWER", "1 4 6").split()]
SLOW_4G = {
    "offline": False,
    "latency": 150,
    "downloadThroughput": 200_000,
    "uploadThroughput": 93_750,
}  # bytes a second
ANSWER = "/work/spacing?span=58+3/8&slat=2+3/4&count=9"
SHIFT = 0.02
PHONE = {"width": 360, "height": 740}

# From the start of the navigation until the answer's number is in the page and was painted: the first task behind the
# frame that shows it, as PAINTED has it for the bare page.
WATCH = """
window.shifted = 0;
window.answered = new Promise((resolve) => {
    const look = () => {
        if (!document.querySelector("#main .hero")) return requestAnimationFrame(look);
        setTimeout(() => resolve(performance.now()));
    };
    look();
});
new PerformanceObserver((list) => {
    for (const shift of list.getEntries()) if (!shift.hadRecentInput) window.shifted += shift.value;
}).observe({ type: "layout-shift", buffered: true });
"""
PAINTED = "new Promise((resolve) => requestAnimationFrame(() => setTimeout(() => resolve(performance.now()))))"
# The bytes of all that a cold opening takes from the cache, in one page that does nothing with its script but hold it.
PUT_BARE = """async (length) => {
    const name = (await caches.keys())[0];
    const held = `<script type="text/plain">${"x".repeat(length)}</script>`;
    const html = `<!doctype html><meta charset="utf-8"><main id="main"></main>${held}`;
    const page = new Response(html, { headers: { "Content-Type": "text/html" } });
    await (await caches.open(name)).put("/shell/diagnostics", page);
}"""


@contextmanager
def phone(chromium: BrowserType, profile: Path, rate: int) -> Iterator[Page]:
    """Start a browser anew with what it kept, at a speed."""
    context: BrowserContext = chromium.launch_persistent_context(
        profile,
        args=flags(),
        executable_path=executable(chromium),
        viewport=PHONE,  # type: ignore[arg-type]
    )
    page = context.pages[0]
    page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": rate})
    yield page
    context.close()


def visited(chromium: BrowserType, server: Serving, profile: Path) -> int:
    """Let the phone take all there is, and return the bytes of one opening's files."""
    with phone(chromium, profile, 1) as page:
        page.goto(server.address)
        page.locator("html[data-offline]").wait_for(state="attached", timeout=60_000)
        page.goto(server.address + ANSWER)
        page.locator("html.ready").wait_for(state="attached", timeout=60_000)
        sizes = "performance.getEntriesByType('resource').reduce((sum, each) => sum + each.decodedBodySize, 0)"
        return int(page.evaluate(sizes))


def opened(chromium: BrowserType, profile: Path, address: str, rate: int) -> tuple[float, float]:
    """Start the browser and open the answer: ms until it is drawn, and what was shifted by a second later."""
    with phone(chromium, profile, rate) as page:
        page.add_init_script(WATCH)
        page.goto(address)
        time = float(page.evaluate("window.answered"))
        page.wait_for_timeout(1000)
        return time, float(page.evaluate("window.shifted"))


def opened_bare(chromium: BrowserType, profile: Path, address: str, rate: int) -> float:
    with phone(chromium, profile, rate) as page:
        page.goto(address)
        return float(page.evaluate(PAINTED))


def cold(chromium: BrowserType, server: Serving, folder: Path) -> None:
    """Print cold openings without a server, by turns with the bare page's so that noise falls on both."""
    own, bare = folder / "phone", folder / "bare"
    size = visited(chromium, server, own)
    visited(chromium, server, bare)
    with phone(chromium, bare, 1) as page:
        page.goto(server.address)
        page.evaluate(PUT_BARE, size)
    server.stop()
    for rate in SLOWER:
        found = [
            (
                opened(chromium, own, server.address + ANSWER, rate),
                opened_bare(chromium, bare, f"{server.address}/diagnostics", rate),
            )
            for _ in range(ROUNDS)
        ]
        times, bares, shifts = zip(*((time, bare, shift) for (time, shift), bare in found), strict=True)
        middle, beside = median(times), median(bares)
        print(f"{rate}x, cold, no server: first answer {middle:,.0f} ms (aim 500 at 6x), least {min(times):,.0f};")
        print(f"    a bare page of {size:,} bytes {beside:,.0f} ms: {middle / beside:.1f} times; {load()}")
        print(f"    layout shift: median {median(shifts):.4f}, most {max(shifts):.4f} (aim {SHIFT})")
    server.start()


def load() -> str:
    one, _, _ = os.getloadavg()
    return f"load {one:.1f} on {os.cpu_count()} cores"


def keys(chromium: BrowserType, server: Serving) -> None:
    """Print key to answer of the spacing; `python -m tests.benchmarks.keys` has every tool with twenty rows."""
    for rate in SLOWER:
        browser = launched_by(chromium)
        page = browser.new_page(viewport=PHONE)  # type: ignore[arg-type]
        page.goto(server.address + ANSWER)
        page.locator("html.ready").wait_for(state="attached", timeout=60_000)
        page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": rate})
        times = page.evaluate(KEY, ["span", ["58 1/2", "58 3/8"] * max(1, ROUNDS // 2)])
        bare = page.evaluate(BARE, [page.locator("#main").inner_html(), ROUNDS])
        print(f"{rate}x, spacing, {line('key to answer', times)} (aim 50 at 6x); {line('bare', bare)}; {load()}")
        browser.close()


def launched_by(chromium: BrowserType):  # type: ignore[no-untyped-def]
    return chromium.launch(executable_path=executable(chromium), args=flags())


def over_4g(chromium: BrowserType, server: Serving) -> None:
    """Print a first visit over slow 4G: until the answer stands, until the phone has taken over, what shifted."""
    for rate in SLOWER:
        found = [first_visit(chromium, server, rate) for _ in range(ROUNDS)]
        answer, ready, shift = (median(each[at] for each in found) for at in (0, 1, 2))
        print(f"{rate}x, slow 4G, first visit: answer {answer:,.0f} ms, taken over {ready:,.0f} ms;")
        print(f"    layout shift: median {shift:.4f} (aim {SHIFT}); {load()}")


def first_visit(chromium: BrowserType, server: Serving, rate: int) -> tuple[float, float, float]:
    browser = launched_by(chromium)
    page = browser.new_context(viewport=PHONE, service_workers="block").new_page()
    session = page.context.new_cdp_session(page)
    session.send("Emulation.setCPUThrottlingRate", {"rate": rate})
    session.send("Network.enable")
    session.send("Network.emulateNetworkConditions", SLOW_4G)
    page.add_init_script(WATCH)
    page.goto(server.address + ANSWER, wait_until="commit")
    answer = float(page.evaluate("window.answered"))
    page.locator("html.ready").wait_for(state="attached", timeout=120_000)
    ready, shift = page.evaluate("[performance.now(), window.shifted]")
    browser.close()
    return answer, float(ready), float(shift)


def main() -> None:
    print(f"medians of {ROUNDS}; {load()}")
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        server = Serving(Path(folder) / "data", demo=True).start()
        cold(playwright.chromium, server, Path(folder))
        keys(playwright.chromium, server)
        over_4g(playwright.chromium, server)
        server.stop()
    visits.main()


if __name__ == "__main__":
    main()
