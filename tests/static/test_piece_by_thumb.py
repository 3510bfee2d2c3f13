"""The piece on a phone: parts, joints, a trim that is cut and taken back, stages, the list before the glue."""

import json
import re
import urllib.request
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from tests.hand import in_hand, ready, started
from tests.serving import Serving, common
from tests.static.test_screens_same import DRAWN, main_of, read, stamp_of

__all__ = ["common"]
from tests.static.test_local_sync import all_sent

pytestmark = pytest.mark.browser
WORKER = "block"
TWICE = 800  # ms: the same press within 0.7 s is the second half of a double one
TRIM = "Joint the lower edge of the upper rail: two passes, then a light one"

# Press a rail's button, and a tenth of a second after the page was drawn anew what stands under the thumb then.
TWO_PRESSES = """() => new Promise(done => {
    const press = () => document.querySelector('#main button[form="cut"]').click();
    const again = (found, watch) => { watch.disconnect(); setTimeout(() => { press(); done(); }, 100); };
    new MutationObserver(again).observe(document.getElementById("main"), { childList: true });
    press();
})"""

page = pytest.fixture(in_hand, name="page")


def served(address: str) -> dict[str, Any]:
    with urllib.request.urlopen(f"{address}.json") as answer:
        found: dict[str, Any] = json.loads(answer.read())
    return found


def name_a_part(page: Page, address: str, **typed: str) -> None:
    """Name a part on the project's page, which leads to its own."""
    page.goto(address)
    ready(page)
    page.get_by_text("Name a part", exact=True).tap()
    for field, text in typed.items():
        page.locator(f"#part-{field}").fill(text)
    page.keyboard.press("Escape")
    page.get_by_role("button", name="Name it").tap()
    expect(page.locator("h1")).to_have_text(typed["name"])
    ready(page)


def number_a_joint(page: Page, number: str, one: str, other: str, tenon: str) -> None:
    if not page.locator("#joint-number").is_visible():
        page.get_by_text("Number a joint", exact=True).tap()
    for field, text in (("number", number), ("one", one), ("other", other)):
        page.locator(f"#joint-{field}").fill(text)
    page.locator("#joint-tenon").select_option(tenon)
    page.get_by_role("button", name="Number it").tap()
    expect(page.locator("main")).to_contain_text(f"Joint {number}, ")


FIRST_ROUND = "openings=upper+rail,+left:+lacks+9/128&keep=13+1/16&fit=0&tenon=15/16"


def keep_a_gauge(page: Page, serving: Serving, address: str, query: str = FIRST_ROUND) -> None:
    page.goto(f"{serving.address}/work/gauge?{query}&project={address.split('/')[-1]}")
    ready(page)
    page.locator("#sheet-called").fill("First round")
    page.get_by_role("button", name="Keep", exact=True).tap()
    expect(page.locator("h1")).to_have_text("First round")
    ready(page)


def same_there(page: Page, serving: Serving, *paths: str) -> None:
    """Hold what the phone draws against what the server draws, once all is sent."""
    all_sent(page)
    for path in paths:
        live = main_of(read(serving.address + path))
        assert page.evaluate(DRAWN, [path, stamp_of(page)]) == live, path


def test_from_parts_to_a_trim_that_is_cut_and_the_tenons_room(page: Page, common: Serving) -> None:
    address = started(page, common.address, "Headboard by thumb")
    name_a_part(page, address, name="Post", count="2")
    name_a_part(page, address, name="Upper rail", mortise="1", width="5 1/2")
    name_a_part(page, address, name="Slat", count="9", tenon="15/16")
    page.goto(address)
    ready(page)
    number_a_joint(page, "1", "Upper rail", "Post", "through")
    number_a_joint(page, "2", "Slat", "Upper rail", "blind")
    expect(page.locator("#stage-mortises > summary")).to_contain_text("2 joints numbered")
    keep_a_gauge(page, common, address)
    page.goto(address)
    ready(page)
    expect(page.locator(".next")).to_have_text(TRIM)
    expect(page.locator(".warnings")).to_contain_text("the tenon bottoms")
    page.get_by_role("button", name="It is cut").tap()
    expect(page.locator(".next")).to_contain_text("deepen the slat mortises of the upper rail")
    expect(page.locator("#stage-trim > summary")).to_contain_text("the upper rail cut, 1/16 strong off")
    page.locator(".last").get_by_role("button", name="undo").tap()
    expect(page.locator(".next")).to_have_text(TRIM)
    page.wait_for_timeout(TWICE)
    page.get_by_role("button", name="It is cut").tap()
    expect(page.locator(".next")).not_to_have_text(TRIM)
    page.locator("main").get_by_role("link", name="Upper rail", exact=True).tap()
    expect(page.locator("h1")).to_have_text("Upper rail")
    ready(page)
    width = page.get_by_role("row", name="width")
    expect(width).to_contain_text("1/16 strong (0.070 in) under")
    part = re.sub(r"^https?://[^/]*", "", page.url)
    root = re.sub(r"^https?://[^/]*", "", address)
    same_there(page, common, root, part, f"{root}/glue")
    assert [len(thing["heads"]) for thing in served(address)["cuts"]] == [0, 1]


def test_a_size_is_measured_from_the_part_and_the_part_changed(page: Page, common: Serving) -> None:
    address = started(page, common.address, "Bench by thumb")
    name_a_part(page, address, name="Post", thickness="3 1/2")
    page.get_by_role("row", name="thickness").get_by_role("link", name="measure it").tap()
    expect(page.locator("#reading-place")).to_have_value("Post, thickness")
    ready(page)
    page.locator("#reading-reading").fill("3 7/16")
    page.keyboard.press("Escape")
    page.get_by_role("button", name="Keep the reading").tap()
    expect(page.locator("#stage-finish-milling > summary")).to_contain_text("1 of 1 size read off the wood")
    page.locator("main").get_by_role("link", name="Post", exact=True).tap()
    ready(page)
    expect(page.get_by_role("row", name="thickness")).to_contain_text("1/16 (0.063 in) under")
    expect(page.locator("#part-thickness")).to_have_attribute("placeholder", "3 1/2")
    page.locator("#part-count").fill("4")
    page.keyboard.press("Escape")
    page.get_by_role("button", name="Change it").tap()
    expect(page.locator(".answer")).to_contain_text("4 pieces")
    expect(page.locator("#part-count")).to_have_attribute("placeholder", "4")
    same_there(page, common, re.sub(r"^https?://[^/]*", "", page.url))


def test_stages_and_the_list_before_the_glue_are_ticked_and_taken_back_in_place(page: Page, common: Serving) -> None:
    address = started(page, common.address, "Ticks by thumb")
    name_a_part(page, address, name="Post", width="3 1/2")
    page.goto(address)
    ready(page)
    stage = page.locator("#stage-stock")
    stage.locator("summary").tap()
    press = stage.get_by_role("button", name="done")
    before = press.bounding_box()
    press.tap()
    undo = stage.get_by_role("button", name="undo")
    expect(undo).to_be_visible()
    after = undo.bounding_box()
    assert before is not None
    assert after is not None
    assert abs(before["x"] - after["x"]) < 2
    expect(page.locator(".next")).to_have_text("Rough mill the post")
    undo.tap()
    expect(page.locator(".next")).to_have_text("Get out the stock for the post")
    page.locator("#stage-glue-up summary").tap()
    page.locator("#stage-glue-up").get_by_role("link", name="Before the glue").tap()
    expect(page.locator("h1")).to_have_text("Before the glue")
    ready(page)
    line = page.locator(".item", has_text="The post").first
    line.get_by_role("button", name="done").tap()
    expect(page.locator(".answer")).to_contain_text("1 of 2 are open")
    line.get_by_role("button", name="undo").tap()
    expect(page.locator(".answer")).to_contain_text("2 of 2 are open")
    page.wait_for_timeout(TWICE)
    line.get_by_role("button", name="done").tap()
    expect(page.locator(".answer")).to_contain_text("1 of 2 are open")
    all_sent(page)
    assert len([thing for thing in served(address)["done"] if thing["heads"]]) == 1


def test_a_double_press_cuts_one_rail_though_the_next_rails_button_comes_under_the_thumb(
    page: Page, common: Serving
) -> None:
    address = started(page, common.address, "Two rails")
    query = "openings=upper+rail:+lacks+1/16%0Alower+rail:+lacks+1/16&keep=13&fit=0"
    keep_a_gauge(page, common, address, query)
    page.goto(address)
    ready(page)
    expect(page.locator(".next")).to_have_text("Joint the lower edge of the upper rail: two passes")
    page.evaluate(TWO_PRESSES)
    expect(page.locator(".next")).to_have_text("Joint the upper edge of the lower rail: two passes")
    all_sent(page)
    assert [cut["key"] for thing in served(address)["cuts"] for cut in thing["heads"]] == ["rail-1"]
    page.wait_for_timeout(TWICE)
    page.get_by_role("button", name="It is cut").tap()
    expect(page.locator(".next")).not_to_contain_text("Joint")


def test_the_pad_goes_and_the_form_stays_where_it_was(page: Page, common: Serving) -> None:
    page.goto(started(page, common.address, "Pad and form"))
    ready(page)
    page.get_by_text("Name a part", exact=True).tap()
    field = page.locator("#part-mortise")
    field.tap()
    expect(page.locator("#pad")).to_be_visible()
    page.locator('#pad [data-do="close"] >> visible=true').tap()
    expect(page.locator("#pad")).to_be_hidden()
    expect(field).to_be_in_viewport()
    expect(page.get_by_role("button", name="Name it")).to_be_in_viewport()
