"""A day at the bench in Firefox and in WebKitGTK: with the server, then with the server and the browser killed.

They run where SHOULDERLINE_BROWSERS names them. What each browser lacks of a phone stands in DEVELOPERS.md.
"""

import json
from typing import Any
from urllib.request import urlopen

from tests.other.phones import Firefox, WebKit
from tests.other.window import Window
from tests.serving import Serving


def measure(window: Window, place: str, *presses: str) -> None:
    window.type("#reading-place", place)
    window.thumb("#reading-reading", *presses)
    window.put_away()
    window.tap("=Keep the reading")
    window.until('return find("#reading-place").value === ""')
    window.says("#main", place)


def space(window: Window, called: str, count: str) -> None:
    """Space the slats from a project's page, and keep the sheet."""
    window.tap("=Slats and gaps")
    window.at("/work/spacing")
    window.thumb("#span", "58", "3/8")
    window.thumb("#slat", "2", "3/4")
    window.thumb("#count", count)
    window.says(".hero", "Gap")
    window.put_away()
    window.type("#sheet-called", called)
    window.tap("#sheet button")
    window.until('return location.pathname.includes("/sheets/")')
    window.ready()
    window.says("h1", called)


def test_a_day_at_the_bench(phone: Firefox | WebKit, serving: Serving) -> None:
    window = phone.start()
    project = morning(window, serving)
    serving.stop()
    phone.kill()
    window = phone.start()
    afternoon(window, project)
    serving.start()
    evening(window, project)


WRITES = """
const field = find(arguments[0]);
field.value = String(Math.random());
field.dispatchEvent(new InputEvent("input", { bubbles: true }));
location.assign(arguments[1]);
"""
ANSWERS = """
return new Promise((resolve, reject) => {
  setTimeout(() => resolve("silent"), 20000);
  const opening = indexedDB.open("shoulderline");
  opening.onerror = reject;
  opening.onsuccess = () => {
    const transaction = opening.result.transaction(["meta"], "readwrite");
    transaction.objectStore("meta").count();
    transaction.oncomplete = () => (opening.result.close(), resolve("answers"));
  };
});
"""
ROUNDS = 20


def test_pages_left_in_the_midst_of_a_write_hold_up_no_other(phone: Firefox | WebKit, serving: Serving) -> None:
    """WebKit puts a page aside whole when it is left: with a transaction under way, no other ever began again."""
    window = phone.start()
    window.goto(serving.address)
    window.type("#project-name", "Headboard")
    window.tap("=Start")
    window.at("/projects/")
    project = str(window.run("return location.href"))
    work = f"/work/spacing?project={project.rsplit('/', 1)[1]}"
    for _ in range(ROUNDS):
        window.run(WRITES, "#reading-place", work)
        window.at("/work/")
        window.run(WRITES, "#sheet-called", project)
        window.at("/projects/")
        assert window.later(ANSWERS) == "answers"


def morning(window: Window, serving: Serving) -> str:
    """Start a project, measure by the pad, space the slats, keep, reopen; return the project's address."""
    window.goto(serving.address)
    window.type("#project-name", "Headboard")
    window.tap("=Start")
    window.at("/projects/")
    project = str(window.run("return location.href"))
    measure(window, "Upper rail", "17", "11/16", "strong")
    space(window, "First spacing", "9")
    window.says("#main .hero", "scant")
    window.goto(project)
    window.tap("=First spacing")
    window.says("#main .exactly", "269/80")
    window.until('return document.querySelector("#state").textContent === "all sent"')
    window.until('return document.documentElement.hasAttribute("data-offline")')
    return project


def afternoon(window: Window, project: str) -> None:
    """The same with no server and a browser that was killed: all of the morning is there, and more is kept."""
    window.goto(project)
    window.says("#main", "Upper rail")
    window.says("#main", "First spacing")
    measure(window, "Lower rail", "17", "1/2", "scant")
    measure(window, "Upper rail", "17", "5/8")
    window.says("#main", "1 before it")
    space(window, "Second spacing", "8")
    window.goto(project)
    window.tap("=First spacing")
    window.at("/projects/")
    window.until('return location.pathname.includes("/sheets/")')
    window.ready()
    window.tap("=Change it")
    window.at("/work/spacing")
    window.thumb("#count", "10")
    window.says(".hero", "eleven of them")
    window.put_away()
    window.tap("#sheet button")
    window.until('return location.pathname.includes("/sheets/")')
    window.says("#state", "waiting")


def evening(window: Window, project: str) -> None:
    """The server is back: everything is there, once."""
    window.goto(project)
    window.until('return document.querySelector("#state").textContent === "all sent"')
    found = fetched(f"{project}.json")
    readings = {p["place"]: ([r["text"] for r in p["heads"]], [r["text"] for r in p["past"]]) for p in found["places"]}
    assert readings == {
        "Upper rail": (["17 5/8"], ["17 11/16 strong"]),
        "Lower rail": (["17 1/2 scant"], []),
    }
    sheets = [
        ([s["inputs"]["count"] for s in t["heads"]], [s["inputs"]["count"] for s in t["past"]]) for t in found["sheets"]
    ]
    assert sheets == [(["10"], ["9"]), (["8"], [])]
    entries = fetched(f"{project}/file")["entries"]
    assert len(entries) == len({entry["id"] for entry in entries}) == 7
    assert window.run('return localStorage.getItem("shoulderline-errors")') is None


def fetched(address: str) -> Any:
    with urlopen(address) as answer:
        return json.load(answer)
