"""Key to answer at a slowed-down processor, for each tool with twenty rows, beside a bare page of the same bytes."""

import tempfile
from pathlib import Path
from statistics import median, quantiles

from playwright.sync_api import Page, sync_playwright

from tests.engine import launched
from tests.serving import Serving
from webapp.core.address import work_address
from webapp.tools import TOOLS

SLOWER = 6
ROUNDS = 20
ROWS = 20

# What is typed at first, with twenty rows where the tool takes rows; and the field a key goes to.
TYPED = {
    "spacing": ({"span": "96", "slat": "2 1/2", "count": str(ROWS)}, "span"),
    "stick": ({"marks": "\n".join(f"mark {i}: {4 * i} 3/8" for i in range(ROWS)), "length": "96"}, "length"),
    "passes": ({"blanks": "\n".join(f"rail {i}: 1 {i}/32" for i in range(1, ROWS + 1)), "target": "7/8"}, "target"),
    "gauge": ({"openings": "\n".join(f"rail {i}, left: 13 {i}/64" for i in range(1, ROWS + 1))}, "fit"),
    "square": ({"sides": "54 x 36", "rising": "65", "falling": "64 7/8"}, "rising"),
}

# A press: the field's text changes as a key changes it, the answer is drawn and laid out.
KEY = """([id, texts]) => {
    const field = document.getElementById(id), main = document.getElementById("main");
    return texts.map((text) => {
        const start = performance.now();
        field.value = text;
        field.dispatchEvent(new InputEvent("input", { bubbles: true }));
        main.getBoundingClientRect();
        return performance.now() - start;
    });
}"""

# The same bytes put into a bare page, laid out: what the browser itself takes.
BARE = """([html, rounds]) => {
    const main = document.createElement("main");
    document.body.replaceChildren(main);
    return Array.from({ length: rounds }, () => {
        const start = performance.now();
        main.innerHTML = html;
        main.getBoundingClientRect();
        return performance.now() - start;
    });
}"""


def line(name: str, times: list[float]) -> str:
    """Write the middle and the 95th percentile of some times."""
    return f"{name} {median(times):6.1f} ms, 95th {quantiles(times, n=20, method='inclusive')[18]:6.1f} ms"


def pressed(page: Page, address: str, name: str) -> list[float]:
    """Open a tool with its rows and press keys."""
    typed, field = TYPED.get(name, (dict(TOOLS[name].example), TOOLS[name].fields[0].name))
    page.goto(address + work_address(name, typed))
    page.locator("html.ready").wait_for()
    said = typed.get(field, "1/64")
    times: list[float] = page.evaluate(KEY, [field, [f"{said} strong", said] * (ROUNDS // 2)])
    return times


def main() -> None:
    """Print a line for each tool."""
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        browser = launched(playwright)
        serving = Serving(Path(folder)).start()
        for name in TOOLS:
            page = browser.new_page(viewport={"width": 360, "height": 740})
            page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})
            times = pressed(page, serving.address, name)
            html = page.locator("#main").inner_html()
            bare = page.evaluate(BARE, [html, ROUNDS])
            said = f"{line('key to answer', times)}; {line('bare page', bare)}"
            print(f"{SLOWER}x, {name:8} {said}; {len(html):,} characters")
            page.close()
        serving.stop()
        browser.close()


if __name__ == "__main__":
    main()
