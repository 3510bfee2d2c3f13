"""A mark as drawn: stacked for the eye, one line for the clipboard, words for a screen reader."""

import pytest
from playwright.sync_api import Page

from tests.serving import Serving

pytestmark = pytest.mark.browser
WORKER = "block"

HERO = "/work/spacing?span=58+3/8&slat=2+3/4&count=9"
FEET = "/work/spacing?unit=ft&span=24'+11+31/32\"&slat=2+3/4+in&count=3"
METRIC = "/work/spacing?unit=mm&span=1482.5&slat=70&count=9"


@pytest.mark.parametrize(
    ("address", "copied"), [(HERO, "3 3/8 scant"), (FEET, "6' 0 15/16\" scant"), (METRIC, "85.0 mm strong")]
)
def test_a_mark_is_copied_as_one_line_that_reads_back(
    page: Page, demo_serving: Serving, address: str, copied: str
) -> None:
    page.goto(demo_serving.address + address)
    text = page.locator(".hero-value").evaluate(
        """(mark) => {
            getSelection().selectAllChildren(mark);
            return getSelection().toString();
        }"""
    )
    assert text.strip() == copied


def test_a_fraction_is_stacked_with_its_bar(page: Page, demo_serving: Serving) -> None:
    page.goto(demo_serving.address + HERO)
    fraction = page.locator(".hero .fraction")
    whole = page.locator(".hero .whole").bounding_box()
    top, bottom = (fraction.locator(part).bounding_box() for part in (".top", ".bottom"))
    assert top["y"] + top["height"] <= bottom["y"] + 1
    assert abs(top["x"] - bottom["x"]) < 1
    assert bottom["x"] >= whole["x"] + whole["width"]
    assert whole["height"] >= 72


def test_a_denominator_of_two_digits_stands_on_one_line(page: Page, demo_serving: Serving) -> None:
    page.goto(demo_serving.address + FEET)
    fraction = page.locator(".hero .fraction")
    top, bottom = (fraction.locator(part) for part in (".top", ".bottom"))
    assert (top.inner_text(), bottom.inner_text()) == ("15", "16")
    for part in (top, bottom):
        size, box = part.evaluate("part => parseFloat(getComputedStyle(part).fontSize)"), part.bounding_box()
        assert box["height"] < 1.5 * size


def test_a_mark_is_read_aloud_in_words(page: Page, demo_serving: Serving) -> None:
    page.goto(demo_serving.address + HERO)
    said = page.locator(".hero-value").aria_snapshot()
    assert said == "- paragraph: three and three eighths, scant"
