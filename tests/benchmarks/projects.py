"""A large project: opened on the server, beside the bare SQL of its rows; folded on a phone, and added to."""

import json
import sqlite3
import tempfile
from contextlib import closing
from pathlib import Path
from statistics import median
from time import perf_counter
from typing import Any

from flask import Flask
from playwright.sync_api import sync_playwright
from sqlalchemy import event
from sqlalchemy.engine import Engine as SqlEngine

from tests.benchmarks.keys import SLOWER
from tests.core.histories import uid
from tests.engine import Engine, launched
from webapp.app import create_app
from webapp.core.entries import draft
from webapp.serving import settle
from webapp.store import Store
from webapp.tools import TOOLS
from webapp.units import FACTORS

READINGS, SHEETS, PHONE = 5_000, 400, 50_000
ROUNDS = 5
PROJECT = uid(1)

FOLD = """async ([entries, rounds]) => {
    const { toPython } = await import("/static/engine/python.js");
    const { start, add, summary } = await import("/static/engine/core/fold.js");
    const [all, news] = [toPython(entries.slice(0, -rounds)), toPython(entries.slice(-rounds))];
    const state = start();
    let from = performance.now();
    for (const entry of all) add(state, entry);
    summary(state);
    const times = [performance.now() - from];
    for (const entry of news) {
        from = performance.now();
        add(state, entry);
        summary(state);
        times.push(performance.now() - from);
    }
    return times;
}"""


def framed(number: int, kind: str, body: dict[str, Any], replaces: list[str]) -> dict[str, Any]:
    frame = {"id": uid(number), "project": PROJECT, "made_at": "2026-11-25T10:17:35.123Z", "by": "a phone"}
    return {**frame, "kind": kind, "body": body, "replaces": replaces}


def readings(many: int) -> list[dict[str, Any]]:
    """Return a project's start and so many readings, four at each place, each of them replacing the one before."""
    body = {"name": "Bed in ash", "unit": "in", "graduation": "1/32"}
    made = [framed(1, "project", body, [])]
    for number in range(2, many + 2):
        place, again = divmod(number - 2, 4)
        said = {"text": f"{40 + again} 3/8", "inches": f"{(40 + again) * 8 + 3}/8", "unit": "in", "graduation": "1/32"}
        body = {"place": f"place {place}", **said}
        made.append(framed(number, "reading", body, [uid(number - 1)] if again else []))
    return made


def sheets(store: Store, many: int, before: int) -> list[dict[str, Any]]:
    """Return so many kept sheets, each linked to a reading that stands."""
    made = []
    for number in range(many):
        source = uid(5 + 4 * number)
        typed = {"tool": "spacing", "slat": "2 3/4", "count": "9", "span": "347/8 in", "called": f"sheet {number}"}
        drafted = draft("sheet", {**typed, "links": f"span {source} reading 347/8"}, None, TOOLS, FACTORS)
        signed = store.signed(drafted)
        made.append(framed(before + number + 2, "sheet", signed["body"], []))
    return made


def on_the_server() -> None:
    """Open the project's page, count its queries, and read the same rows by hand."""
    with tempfile.TemporaryDirectory() as folder:
        app = create_app(Path(folder))
        store = app.extensions["shoulderline"]
        store.add(readings(READINGS) + sheets(store, SHEETS, READINGS))
        asked: list[str] = []
        settle()  # as where it is served
        event.listen(SqlEngine, "before_cursor_execute", lambda *given: asked.append(given[2]))
        page = opened(app)
        asked.clear()
        app.test_client().get(f"/projects/{PROJECT}")
        count = len(asked)
        bare = timed(lambda: by_hand(Path(folder)))
        store.close()
    print(f"{READINGS:,} readings and {SHEETS} sheets: the page {page:.0f} ms in {count} queries (aims 200 ms, 10);")
    print(f"  the bare SQL of its rows, with their JSON parsed, {bare:.0f} ms: {page / bare:.1f} times")


def opened(app: Flask) -> float:
    client = app.test_client()
    answer = client.get(f"/projects/{PROJECT}")
    if answer.status_code != 200 or b"sheet 399" not in answer.data:
        raise RuntimeError("the page does not show the project")
    return timed(lambda: client.get(f"/projects/{PROJECT}"))


def by_hand(folder: Path) -> None:
    with closing(sqlite3.connect(folder / "shoulderline.db")) as database:
        for column, table in (("body", "entries"), ("sheet", "worked")):
            for (text,) in database.execute(f"SELECT {column} FROM {table}"):  # noqa: S608 - no text of a user's
                json.loads(text)
        database.execute("SELECT entry, replaced FROM replaces ORDER BY entry, position").fetchall()


def timed(run: Any) -> float:
    times = []
    for _ in range(ROUNDS):
        start = perf_counter()
        run()
        times.append((perf_counter() - start) * 1000)
    return median(times)


def on_the_phone() -> None:
    """Fold as many entries as a phone is to hold, then one more at a time, at full speed and at six times less."""
    entries = [{**entry, "seq": number + 1} for number, entry in enumerate(readings(PHONE - 1))]
    with sync_playwright() as playwright:
        browser = launched(playwright)
        for slow in (1, SLOWER):
            page = browser.new_page()
            page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": slow})
            times = Engine(page).run(FOLD, [entries, 20])
            print(
                f"{PHONE:,} entries folded at {slow}x in {times[0]:,.0f} ms (aim at 6x 2,000), "
                f"then one more in {median(times[1:]):.1f} ms, at most {max(times[1:]):.1f} (aim 50)"
            )
            page.close()
        browser.close()


def main() -> None:
    on_the_server()
    on_the_phone()


if __name__ == "__main__":
    main()
