"""A maker's thumb on a phone: what is tapped and pressed from an empty project on, one step of the job a method."""

import re
from dataclasses import dataclass
from fractions import Fraction
from typing import Any
from urllib.parse import urlparse

from playwright.sync_api import Page, expect

from tests.hand import keys
from tests.static.test_bench_day import thumb

WAIT = 20_000
CLOSE = '#pad [data-do="close"] >> visible=true'
NEXT = '#pad [data-do="next"] >> visible=true'


def ready(page: Page) -> None:
    """Wait until the phone has taken the page over; an `expect` looks again after half a second alone."""
    page.wait_for_selector("html.ready", state="attached", timeout=WAIT)


@dataclass(frozen=True)
class Maker:
    """One phone, and the address of the project that it works at."""

    page: Page
    project: str

    def at(self, address: str = "") -> None:
        """Open the project's page, or another one."""
        self.page.goto(address or self.project)
        ready(self.page)

    def follow(self, link: str) -> None:
        """Tap a link that leads to another page."""
        before = self.page.url
        self.page.get_by_role("link", name=link, exact=True).first.tap()
        self.page.wait_for_url(lambda address: address != before)
        ready(self.page)

    def next_is(self, words: str, more: str = "") -> None:
        expect(self.page.locator(".next")).to_have_text(words)
        if more:
            expect(self.page.locator(".next + .soft")).to_have_text(more)

    def go_on(self) -> None:
        """Tap the next thing to do, which leads to where it is done."""
        self.page.locator(".next a").tap()
        ready(self.page)

    def press(self, *presses: str) -> None:
        """Press keys of the pad, which is open."""
        for press in presses:
            for key in keys(press):
                self.page.locator(f"#pad {key} >> visible=true").tap()

    def name(self, name: str, **sizes: str) -> None:
        """Name a part with its sizes as drawn, by the form that stands open."""
        self.page.locator("#part-name").fill(name)
        for size, said in sizes.items():
            thumb(self.page, f"#part-{size}", *said.split())
        self.page.locator(CLOSE).tap()
        self.page.get_by_role("button", name="Name it").tap()
        expect(self.page.locator("h1")).to_have_text(name)
        ready(self.page)

    def joint(self, number: str, one: str, other: str, tenon: str) -> None:
        for field, text in (("number", number), ("one", one), ("other", other)):
            self.page.locator(f"#joint-{field}").fill(text)
        self.page.locator("#joint-tenon").select_option(tenon)
        self.page.get_by_role("button", name="Number it").tap()
        expect(self.page.locator("#main")).to_contain_text(f"Joint {number}, ")

    def tick(self, *stages: str) -> None:
        for stage in stages:
            line = self.page.locator(f"#stage-{stage}")
            if not line.evaluate("line => line.open"):
                line.locator("summary").tap()
            line.get_by_role("button", name="done").tap()
            expect(line.locator(".stage-state")).to_have_text("done")

    def read(self, part: str, measure: str, *presses: str) -> None:
        """Read a size off the wood once more, or first: from the part's page, by the way beside the size."""
        self.follow(part)
        self.page.get_by_role("row", name=measure).get_by_role("link", name="measure it").tap()
        expect(self.page.locator("#reading-place")).to_have_value(f"{part}, {measure}")
        self.keep_reading(*presses)

    def read_other(self, part: str, measure: str, *presses: str) -> None:
        """Read a size that was not drawn."""
        self.follow(part)
        self.page.get_by_text("Read another size off the wood").tap()
        self.follow(f"Measure its {measure}")
        self.keep_reading(*presses)

    def keep_reading(self, *presses: str) -> None:
        ready(self.page)
        thumb(self.page, "#reading-reading", *presses)
        self.page.locator(NEXT).tap()
        self.page.get_by_role("button", name="Keep the reading").tap()
        expect(self.page.locator("#reading-place")).to_have_value("")

    def take(self, field: str, number: str) -> None:
        """Pick a number for a tool's field by the way beside it."""
        self.page.get_by_role("button", name=f"{field}, from…", exact=True).tap()
        self.page.wait_for_url("**/from/**")
        ready(self.page)
        self.page.get_by_role("button", name=re.compile(re.escape(number))).tap()
        self.page.wait_for_url("**/work/**")
        ready(self.page)

    def type(self, field: str, *presses: str) -> None:
        """Press a number into a tool's field, and close the pad."""
        thumb(self.page, field, *presses)
        self.page.locator(CLOSE).tap()

    def keep(self, called: str = "") -> None:
        """Keep the sheet, under the name that stands there or another one."""
        expect(self.page.locator("#main .hero")).to_be_visible()
        if called:
            self.page.locator("#sheet-called").fill(called)
        self.page.locator("#sheet button").tap()
        self.page.wait_for_url("**/sheets/*")
        ready(self.page)

    def measure(self, place: str, *presses: str) -> None:
        """Measure one place of a round: the pad is open for it, and its last key keeps the reading."""
        expect(self.page.locator(".hero-value")).to_have_text(place)
        self.press(*presses)
        self.page.locator(NEXT).tap()
        expect(self.page.locator("#reading-reading")).to_have_value("")

    def fits(self, place: str) -> None:
        """Try the stick in one place: it fits."""
        expect(self.page.locator(".hero-value")).to_have_text(place)
        self.page.locator(".puts").get_by_role("button", name="fits").tap()
        self.measure(place)

    def lay_out(self, places: list[str]) -> None:
        self.page.locator("#round-places").fill("\n".join(places))
        self.press_button("Lay it out")

    def press_button(self, name: str) -> None:
        """Press a button that leads to another page."""
        before = self.page.url
        self.page.get_by_role("button", name=name).tap()
        self.page.wait_for_url(lambda address: address.split("#")[0] != before.split("#")[0])
        ready(self.page)

    def work_again(self, what: str) -> None:
        self.next_is(f"Work again what no longer holds: {what}")
        self.page.locator(".held-sheets .main").tap()
        expect(self.page.locator(".held-sheets .main")).to_have_count(0)

    def cut(self) -> None:
        """Say of the next thing that it is cut."""
        before = self.page.locator(".next").inner_text()
        self.page.get_by_role("button", name="It is cut").tap()
        expect(self.page.locator(".next")).not_to_have_text(before)

    def sent(self) -> None:
        expect(self.page.locator("#state")).to_have_text("all sent", timeout=WAIT)

    def asked(self, path: str = "") -> dict[str, Any]:
        """Return what the server says at an address of the project."""
        found: dict[str, Any] = self.page.request.get(f"{self.project}{path}.json").json()
        return found

    def entries(self) -> dict[str, str]:
        """Return the sheets that stand on the server, by name: no two have one."""
        heads = [head for thing in self.asked()["sheets"] for head in thing["heads"]]
        assert len({head["called"] for head in heads}) == len(heads)
        return {head["called"]: head["entry"] for head in heads}

    def lengths(self) -> dict[tuple[str, str], Fraction]:
        """Return the lengths that the server gives, by the names of sheets and their keys."""
        sheets = {called: self.asked(f"/sheets/{entry}")["worked"]["sheet"] for called, entry in self.entries().items()}
        return {(called, key): size for called, sheet in sheets.items() for key, size in _lengths(sheet)}

    def paths(self, *called: str) -> list[str]:
        """Return the paths of the project's page and of sheets."""
        entries, project = self.entries(), urlparse(self.project).path
        return [project, *[f"{project}/sheets/{entries[name]}" for name in called]]

    def on(self, page: Page, address: str) -> "Maker":
        """Take another phone to the same project; it has never been here."""
        page.goto(address)
        expect(page.locator("html[data-offline]")).to_be_attached(timeout=WAIT)
        return Maker(page, self.project)

    def hear(self, other: "Maker") -> None:
        """Open the project when all that another phone has made is sent."""
        other.sent()
        self.at()
        self.sent()


def _lengths(sheet: dict[str, Any]) -> list[tuple[str, Fraction]]:
    parts = [sheet["answer"], *sheet.get("figures", []), *sheet.get("marks", [])]
    said = [(part["key"], part.get("at", part.get("value"))) for part in parts]
    return [(key, Fraction(value["inches"])) for key, value in said if isinstance(value, dict)]


def begun(page: Page, address: str, name: str) -> Maker:
    """Start a project on a phone that has never been here, and that then works without a server."""
    page.goto(address)
    expect(page.locator("html[data-offline]")).to_be_attached(timeout=WAIT)
    page.locator("#project-name").fill(name)
    page.get_by_role("button", name="Start", exact=True).tap()
    page.wait_for_url(re.compile("/projects/"))
    ready(page)
    return Maker(page, page.url)
