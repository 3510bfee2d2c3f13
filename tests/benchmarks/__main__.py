"""`python -m tests.benchmarks`: how fast, as ratios within one run; machines differ and are noisy.

Medians are printed beside what they are compared with; nothing here passes or fails.
"""

import tempfile
from collections.abc import Callable
from pathlib import Path
from statistics import median
from time import perf_counter

from flask import Flask
from playwright.sync_api import sync_playwright

from tests.benchmarks import bytes as visits
from tests.benchmarks import keys
from tests.engine import Engine, launched
from webapp.app import create_app
from webapp.core.reading import read
from webapp.core.setting import setting
from webapp.core.sheet import to_json
from webapp.core.working import work
from webapp.tools import TOOLS
from webapp.units import FACTORS

READINGS = ("17 11/16 strong", "5' 2 3/16\"", "58 3/8 - 9 x 2 3/4", "seventeen and eleven sixteenths, scant", "455 mm")
NINE = {"span": "58 3/8", "slat": "2 3/4", "count": "9"}
TWENTY = {"span": "96", "slat": "2 1/2", "count": "20"}
THOUSAND = {"span": "900'", "slat": "2 1/2", "count": "1000"}

PHONE = """async ([typed, rounds]) => {
    const at = (name) => import(`/static/engine/core/${name}.js`);
    const { TOOL } = await at("spacing");
    const [{ work }, { to_json }, { Fraction }] = await Promise.all(
        [at("working"), at("sheet"), import("/static/engine/fraction.js")]);
    const factors = new Map([["in", 1], ["ft", 12]].map(([k, v]) => [k, new Fraction(v, 1)]));
    for (const [unit, n] of [["mm", 5], ["cm", 50], ["m", 5000]]) factors.set(unit, new Fraction(n, 127));
    const input = new Map(Object.entries(typed));
    const times = [];
    for (let i = 0; i < rounds; i++) {
        const start = performance.now();
        to_json(work(TOOL, input, factors).get("sheet"));
        times.push(performance.now() - start);
    }
    return times;
}"""

PHONE_READINGS = """async ([texts, rounds]) => {
    const [{ read }, { setting }, { Fraction }] = await Promise.all([import("/static/engine/core/reading.js"),
        import("/static/engine/core/setting.js"), import("/static/engine/fraction.js")]);
    const pairs = [["in", 1, 1], ["ft", 12, 1], ["mm", 5, 127], ["cm", 50, 127], ["m", 5000, 127]];
    const how = setting("in", "1/32", new Map(pairs.map(([k, n, d]) => [k, new Fraction(n, d)])));
    const start = performance.now();
    for (let i = 0; i < rounds; i++) for (const text of texts) read(text, how);
    return (rounds * texts.length) / ((performance.now() - start) / 1000);
}"""


def timed(run: Callable[[], object], rounds: int) -> float:
    """Return the median of some rounds, in milliseconds, the first left out."""
    run()
    times = []
    for _ in range(rounds):
        start = perf_counter()
        run()
        times.append((perf_counter() - start) * 1000)
    return median(times)


def a_second(run: Callable[[], object], texts: int) -> float:
    """Return how many readings are parsed in a second."""
    return texts / (timed(run, 50) / 1000)


def bare() -> Flask:
    """Make the barest route there is, to stand beside."""
    app = Flask("bare")
    app.add_url_rule("/", "bare", lambda: {"bare": True})
    return app


def on_the_server() -> None:
    """Readings and sheets in CPython; the routes beside each other, in turns so that noise falls on all."""
    how = setting("in", "1/32", FACTORS)
    print(
        f"readings parsed a second, CPython: {a_second(lambda: [read(t, how) for t in READINGS], len(READINGS)):,.0f}"
    )
    for name, typed, rounds in (("9", NINE, 100), ("20", TWENTY, 100), ("1,000", THOUSAND, 5)):
        print(f"spacing of {name} slats, CPython: {timed(lambda t=typed: sheet(t), rounds):.2f} ms")
    routes()


def sheet(typed: dict[str, str]) -> str:
    """Work the spacing into JSON."""
    return to_json(work(TOOLS["spacing"], typed, FACTORS)["sheet"])


def routes() -> None:
    """Print the page beside its own JSON, and the JSON beside a bare route."""
    with tempfile.TemporaryDirectory() as folder:
        app = create_app(Path(folder))
        client, beside = app.test_client(), bare().test_client()
        turns: dict[str, list[float]] = {"bare": [], "json": [], "page": []}
        for _ in range(15):
            turns["bare"].append(timed(lambda: beside.get("/"), 20))
            turns["json"].append(timed(lambda: client.get("/work/spacing.json", query_string=NINE), 20))
            turns["page"].append(timed(lambda: client.get("/work/spacing", query_string=NINE), 20))
        app.extensions["shoulderline"].close()
    found = {name: median(times) for name, times in turns.items()}
    print(
        f"a bare route {found['bare']:.2f} ms, JSON of 9 slats {found['json']:.2f} ms, its page {found['page']:.2f} ms"
    )
    over_bare, over_json = found["json"] / found["bare"], found["page"] / found["json"]
    print(f"JSON over bare: {over_bare:.1f} (aim 6); page over JSON: {over_json:.1f} (aim 3)")


def on_the_phone() -> None:
    """The same in the browser's engine, at this machine's speed."""
    with sync_playwright() as playwright:
        browser = launched(playwright)
        engine = Engine(browser.new_page())
        print(f"readings parsed a second, Chromium: {engine.run(PHONE_READINGS, [list(READINGS), 400]):,.0f}")
        for name, typed, rounds in (("9", NINE, 100), ("20", TWENTY, 100), ("1,000", THOUSAND, 5)):
            times = engine.run(PHONE, [typed, rounds])
            print(f"spacing of {name} slats, Chromium: {median(times):.2f} ms, the first {times[0]:.2f} ms")
        browser.close()


if __name__ == "__main__":
    on_the_server()
    on_the_phone()
    keys.main()
    visits.main()
