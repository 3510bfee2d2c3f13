"""Every kept screen, walked from the URL map with the demo's data: the phone draws what the server draws."""

import json
import re
import urllib.request
from collections.abc import Iterator
from pathlib import Path
from typing import Any
from urllib.parse import urlencode

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.fitted import fit
from tests.serving import Serving, demo_serving
from webapp.app import create_app
from webapp.phone.shells import kept_pages
from webapp.tools import TOOLS

__all__ = ["demo_serving"]

OPENED = {"Sec-Fetch-Site": "none", "Sec-Fetch-Mode": "navigate", "Sec-Fetch-Dest": "document"}
MAIN = re.compile(r'<main id="main">(.*?)</main>', re.DOTALL)
BY_TOOL = [f"{screen}/{name}" for screen in ("tool", "source", "help") for name in TOOLS]
SHELLS = ["home", "project", "reading", "sheet", "origin", "round", "part", "glue", "diagnostics", *BY_TOOL]

DRAWN = """async ([address, stamp]) => {
    const at = (name) => import(`/static/${stamp}/${name}.js`);
    const [{ gather, placeOf }, { render }, { PARTS }, { $$core$screen: first }, { tool }, more] = await Promise.all(
        ["gather", "parts", "made", "screen", "linked", "more"].map(at));
    const views = { ...first, ...more, tool };
    const place = placeOf(new URL(address, location.href));
    if (["tool", "source", "help"].includes(place.screen)) document.body.dataset.tool = address.split(/[/?]/)[2];
    return render(PARTS, place.screen, views[place.screen](await gather(place)));
}"""


def read(address: str) -> str:
    request = urllib.request.Request(address, headers=OPENED)
    try:
        with urllib.request.urlopen(request) as answer:
            return answer.read().decode()
    except urllib.error.HTTPError as error:
        with error:
            return error.read().decode()


def main_of(html: str) -> str:
    found = MAIN.search(html)
    assert found, html[:500]
    return found[1]


def demo_of(serving: Serving) -> dict[str, Any]:
    """Return the demo's project."""
    found: list[dict[str, Any]] = json.loads(read(f"{serving.address}/projects.json"))["projects"]
    return found[0]


def addresses(serving: Serving) -> dict[str, list[str]]:
    """Return addresses for each kept screen: every thing the demo has, and each tool in each of its states."""
    project = demo_of(serving)
    if not project["rounds"]:
        fit(serving.address, project["id"])
        project = demo_of(serving)
    root = f"/projects/{project['id']}"
    things = {
        kind: [e["entry"] for t in project[kind] for e in t["heads"] + t["past"]]
        for kind in ("places", "sheets", "parts")
    }
    rounds = [f"{root}/rounds/{e['entry']}" for t in project["rounds"] for e in t["heads"]]
    return {
        "home": ["/"],
        "round": [
            *rounds,
            *(f"{rounds[-1]}?at={at}" for at in ("3&taken=0", "1&taken=1", "x")),
            f"{root}/rounds/nothing",
        ],
        "project": [root, "/projects/nothing"],
        "reading": [*(f"{root}/readings/{entry}" for entry in things["places"]), f"{root}/readings/nothing"],
        "sheet": [*(f"{root}/sheets/{entry}" for entry in things["sheets"]), f"{root}/sheets/nothing"],
        "part": [*(f"{root}/parts/{entry}" for entry in things["parts"]), f"{root}/parts/nothing"],
        "glue": [f"{root}/glue", "/projects/nothing/glue"],
        "tool": [address for name in TOOLS for address in tool_addresses(name, project["id"])],
        "source": [f"/from/{name}?{urlencode(query)}" for name in TOOLS for query in picking(name, project)],
        "origin": [f"{root}/origin/{entry}/{key}" for entry, key in numbers(project)] + [f"{root}/origin/nothing/gap"],
        "diagnostics": ["/diagnostics"],
        "help": [f"/help/{name}{query}" for name in TOOLS for query in ("", f"?project={project['id']}", "?project=x")],
    }


def picking(name: str, project: dict[str, Any]) -> list[dict[str, str]]:
    """Return what is picked for each kind of field; for one that holds two links, one of them to what was replaced."""
    place = project["places"][0]
    sheet = project["sheets"][0]["heads"][0]["entry"]
    at = {"project": project["id"]}
    links = f"span {place['past'][0]['entry']} reading 935/16\ncount {sheet} count 9"
    linked = {**at, "span": "935/16 in", "slat": "2 3/4", "count": "9", "links": links} if name == "spacing" else at
    fields = {field.kind: field.name for field in TOOLS[name].fields if field.kind != "choice"}
    kinds = [{**linked, "into": field} for field in fields.values()]
    return [*kinds, {**kinds[0], "at": sheet}, {**at, "into": "nothing"}, {"into": kinds[0]["into"]}]


def numbers(project: dict[str, Any]) -> list[tuple[str, str]]:
    """Return each reading, and of each kind of a sheet's numbers the first."""
    readings = [(e["entry"], "reading") for place in project["places"] for e in place["heads"] + place["past"]]
    keys = ("gap", "count", "slat-1-left")
    return [*readings, *((t["heads"][0]["entry"], key) for t in project["sheets"] for key in keys)]


def tool_addresses(name: str, project: str) -> list[str]:
    example = dict(TOOLS[name].example)
    first = TOOLS[name].fields[0].name
    states: list[dict[str, str]] = [
        {},
        example,
        example | {"unit": "mm"},
        example | {"project": project},
        example | {first: "<b>3/0</b> & \"'\u00e9"},
        example | {"project": "nothing", "graduation": "1/64"},
        {first: " "},
    ]
    return [f"/work/{name}?{urlencode(state)}" if state else f"/work/{name}" for state in states]


@pytest.fixture(scope="module")
def page(browser: Browser, demo_serving: Serving) -> Iterator[Page]:
    """A page that has taken all that the server has, dry fits too."""
    addresses(demo_serving)
    context = browser.new_context(viewport={"width": 360, "height": 740}, service_workers="allow")
    opened = context.new_page()
    opened.goto(demo_serving.address)
    expect(opened.locator("html.ready")).to_be_attached()
    expect(opened.locator("#state")).to_contain_text("all sent")
    yield opened
    context.close()


def stamp_of(page: Page) -> str:
    return str(page.locator('link[rel="stylesheet"]').get_attribute("href")).split("/")[2]


def test_the_walk_meets_every_kept_screen(tmp_path: Path, demo_serving: Serving) -> None:
    app = create_app(tmp_path)
    assert {kept.screen for kept in kept_pages(app)} == set(addresses(demo_serving))
    app.extensions["shoulderline"].close()


def test_the_phone_draws_every_screen_as_the_server_does_to_the_character(page: Page, demo_serving: Serving) -> None:
    walked = 0
    for address in [each for some in addresses(demo_serving).values() for each in some]:
        live = main_of(read(demo_serving.address + address))
        assert page.evaluate(DRAWN, [address, stamp_of(page)]) == live, address
        assert len(live) > 80, address
        walked += 1
    assert walked >= 20


def test_a_shell_opened_by_the_worker_shows_the_same_main(page: Page, demo_serving: Serving) -> None:
    expected: Any = "html => Object.assign(document.createElement('main'), {innerHTML: html}).innerHTML"
    page.reload()  # from here on the worker answers
    expect(page.locator("html.ready")).to_be_attached()
    for some in addresses(demo_serving).values():
        address = some[0]
        live = main_of(read(demo_serving.address + address))
        answer = page.goto(demo_serving.address + address)
        assert answer is not None
        assert answer.from_service_worker, address
        expect(page.locator("html.ready")).to_be_attached()
        assert page.locator("#main").inner_html() == page.evaluate(expected, live), address


def test_a_shell_holds_no_token_and_no_word_of_the_demo(demo_serving: Serving) -> None:
    words = ["Ash headboard", "Upper rail", "58 3/8", "csrf_token", "entry_id", 'method="post" action']
    for screen in SHELLS:
        shell = read(f"{demo_serving.address}/shell/{screen}")
        assert main_of(shell) == ""
        assert not [word for word in words if word in shell], screen
        for button in re.findall(r"<form class=\"keep\".*?</form>", shell, re.DOTALL):
            sends = [tag for tag in re.findall(r"<button[^>]*>", button) if 'type="button"' not in tag]
            assert all("disabled" in tag for tag in sends)


def test_the_workers_list_has_every_shell_and_every_kept_address(demo_serving: Serving) -> None:
    worker = read(f"{demo_serving.address}/sw.js")
    for screen in SHELLS:
        assert f'"/shell/{screen}"' in worker
