"""A list field under a thumb: rows that come and go, the pad's way through them, and words that fill a field."""

import re

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.added import added_serving
from tests.hand import in_hand
from tests.serving import Serving

__all__ = ["added_serving"]

pytestmark = pytest.mark.browser
WORKER = "block"
TYPED = "left%3A%205%201%2F2%0A7%20strong"  # a named line and one that is not


page = pytest.fixture(in_hand, name="page")


def opened(page: Page, serving: Serving, query: str = "") -> Page:
    page.goto(f"{serving.address}/work/trial{query}")
    expect(page.locator("html")).to_have_class(re.compile(r"\bready\b"))
    return page


def reading(page: Page, number: int) -> Locator:
    return page.get_by_label(f"Reading {number}", exact=True)


def name(page: Page, number: int) -> Locator:
    return page.get_by_label(f"Name {number}", exact=True)


def press(page: Page, *names: str) -> None:
    for each in names:
        page.locator("#pad").get_by_role("button", name=each, exact=True).tap()


def lines(page: Page) -> list[str]:
    return page.locator("#planks").input_value().split("\n")


def rows(page: Page) -> list[tuple[str, str]]:
    found = page.locator(".entry:not(.gone)").evaluate_all(
        "rows => rows.map((row) => [...row.querySelectorAll('input')].map((input) => input.value))"
    )
    return [tuple(row) for row in found]


def test_lines_of_the_address_stand_in_rows(page: Page, added_serving: Serving) -> None:
    opened(page, added_serving, f"?planks={TYPED}%0A%0A")
    assert rows(page) == [("left", "5 1/2"), ("", "7 strong")]
    expect(page.locator("#planks")).to_be_hidden()
    expect(page.locator(".hero-label")).to_have_text("2 planks together")
    expect(name(page, 2)).to_have_attribute("placeholder", "2")


def test_an_empty_list_has_one_row(page: Page, added_serving: Serving) -> None:
    opened(page, added_serving)
    assert rows(page) == [("", "")]
    assert lines(page) == [""]


def test_a_thumb_goes_from_reading_to_reading_and_past_the_last(page: Page, added_serving: Serving) -> None:
    opened(page, added_serving)
    reading(page, 1).tap()
    press(page, "5", "a half", "next")
    expect(reading(page, 2)).to_be_focused()
    press(page, "6", "strong", "next", "7")
    assert lines(page) == ["5 1/2", "6 strong", "7"]
    expect(page.locator(".hero-label")).to_have_text("3 planks together")
    press(page, "next")
    assert len(rows(page)) == 4
    press(page, "next")
    expect(page.locator("#size")).to_be_focused()
    expect(page).to_have_url(re.compile("planks=5%201%2F2%0A6%20strong%0A7(&|$)"))


def test_after_rows_with_names_the_next_one_is_begun_at_its_name(page: Page, added_serving: Serving) -> None:
    opened(page, added_serving)
    name(page, 1).fill("upper rail, left")
    name(page, 1).press("Enter")
    expect(reading(page, 1)).to_be_focused()
    press(page, "5", "next")
    expect(name(page, 2)).to_be_focused()
    expect(page.locator("#pad")).to_be_hidden()
    page.keyboard.type("lower rail")
    page.keyboard.press("Enter")
    press(page, "6")
    assert lines(page) == ["upper rail, left: 5", "lower rail: 6"]


def test_keys_alone_fill_a_list(page: Page, added_serving: Serving) -> None:
    opened(page, added_serving)
    reading(page, 1).focus()
    for text in ("5", "6", "7"):
        page.keyboard.type(text)
        page.keyboard.press("Enter")
    assert rows(page) == [("", "5"), ("", "6"), ("", "7"), ("", "")]
    expect(page.locator(".hero-label")).to_have_text("3 planks together")


def test_one_press_adds_a_row(page: Page, added_serving: Serving) -> None:
    opened(page, added_serving, "?planks=5")
    page.get_by_role("button", name="Add a row").tap()
    expect(reading(page, 2)).to_be_focused()
    assert rows(page) == [("", "5"), ("", "")]
    assert lines(page) == ["5"]


def test_undo_stands_where_the_press_was(page: Page, added_serving: Serving) -> None:
    opened(page, added_serving, f"?planks={TYPED}%0A9")
    reading(page, 1).tap()
    out = page.get_by_role("button", name="take out row 2")
    before = out.bounding_box()
    out.tap()
    assert lines(page) == ["left: 5 1/2", "9"]
    expect(page.locator(".entry-gone")).to_have_text("taken out: 7 strong")
    expect(page.locator(".hero-label")).to_have_text("2 planks together")
    undo = page.get_by_role("button", name="undo")
    assert before is not None
    assert undo.bounding_box() == before
    expect(reading(page, 1)).to_be_focused()
    page.touchscreen.tap(before["x"] + before["width"] / 2, before["y"] + before["height"] / 2)
    assert lines(page) == ["left: 5 1/2", "7 strong", "9"]
    expect(page.locator(".gone")).to_have_count(0)


def test_a_row_is_taken_out_while_it_is_typed_in(page: Page, added_serving: Serving) -> None:
    opened(page, added_serving, f"?planks={TYPED}")
    reading(page, 1).tap()
    page.get_by_role("button", name="take out row 1").tap()
    expect(reading(page, 1)).to_be_focused()
    expect(page.locator("#pad")).to_be_visible()
    assert lines(page) == ["7 strong"]
    page.get_by_role("button", name="take out row 1").tap()
    assert rows(page) == [("", "")]
    page.get_by_role("button", name="undo").tap()
    assert lines(page) == ["7 strong"]


def test_rows_and_undo_from_the_keyboard(page: Page, added_serving: Serving) -> None:
    opened(page, added_serving, f"?planks={TYPED}")
    page.get_by_role("button", name="take out row 2").focus()
    page.keyboard.press("Enter")
    expect(page.get_by_role("button", name="undo")).to_be_focused()
    page.keyboard.press("Enter")
    assert lines(page) == ["left: 5 1/2", "7 strong"]


def test_an_error_waits_until_the_list_is_left_and_marks_its_row(page: Page, added_serving: Serving) -> None:
    opened(page, added_serving, f"?planks={TYPED}")
    error = page.locator("#planks-error")
    name(page, 2).fill("right")
    reading(page, 2).fill("7 q")
    name(page, 1).tap()
    expect(error).to_be_empty()
    expect(page.locator("#held")).not_to_be_empty()
    page.locator("#size").tap()
    expect(error).to_contain_text('right: "q" is no word of a length')
    expect(reading(page, 2)).to_have_attribute("aria-invalid", "true")
    expect(reading(page, 1)).not_to_have_attribute("aria-invalid", "true")
    reading(page, 2).fill("7")
    expect(error).to_be_empty()
    expect(reading(page, 2)).not_to_have_attribute("aria-invalid", "true")


def test_an_error_of_the_tool_marks_the_row_that_it_names(page: Page, added_serving: Serving) -> None:
    opened(page, added_serving, "?planks=5%0A1%2F2")
    expect(page.locator("#planks-error")).to_have_text("2: This is under the least width.")
    expect(reading(page, 2)).to_have_attribute("aria-invalid", "true")


def test_the_unit_changes_and_the_rows_stay(page: Page, added_serving: Serving) -> None:
    opened(page, added_serving, "?planks=left%3A%20100%0A50")
    page.locator("#unit").select_option("mm")
    expect(page.locator(".hero .unit")).to_have_text("mm")
    assert rows(page) == [("left", "100"), ("", "50")]
    reading(page, 1).tap()
    expect(page.locator('#pad [data-put=" cm"]').first).to_be_visible()
    expect(page.locator('#pad [data-of="16"]')).to_be_hidden()


def test_pasted_lines_become_rows(page: Page, added_serving: Serving) -> None:
    opened(page, added_serving, "?planks=5")
    page.get_by_role("button", name="Add a row").tap()
    reading(page, 2).evaluate(
        """(field) => {
            const clipboardData = new DataTransfer();
            clipboardData.setData("text", "left: 6\\r\\nright: 7");
            field.dispatchEvent(new ClipboardEvent("paste", { clipboardData, bubbles: true, cancelable: true }));
        }"""
    )
    assert rows(page) == [("", "5"), ("left", "6"), ("right", "7")]
    assert lines(page) == ["5", "left: 6", "right: 7"]


def test_a_word_is_put_in_by_a_press_that_moves_nothing(page: Page, added_serving: Serving) -> None:
    opened(page, added_serving, "?planks=5")
    page.locator("#size").tap()
    page.get_by_role("button", name="the widest").tap()
    expect(page.locator("#keep")).to_have_value("widest")
    expect(page.locator("#size")).to_be_focused()
    expect(page).to_have_url(re.compile("keep=widest"))


def test_the_signs_are_behind_one_key(page: Page, added_serving: Serving) -> None:
    opened(page, added_serving)
    reading(page, 1).tap()
    for signs in ("bracket opens", "5", "plus", "7", "bracket closes", "divided by", "4"):
        press(page, *([signs] if signs.isdigit() else ["more", signs]))
    expect(reading(page, 1)).to_have_value("(5 + 7) / 4")
    expect(page.locator("#said")).to_have_text("three")
    press(page, "more", "times", "2", "more", "minus", "1", "more", "point", "5")
    expect(reading(page, 1)).to_have_value("(5 + 7) / 4 x 2 - 1.5")
    press(page, "back", "back", "back", "back")
    expect(reading(page, 1)).to_have_value("(5 + 7) / 4 x 2")
    press(page, "more")
    shown = page.locator("#pad button").evaluate_all(
        "all => all.filter(k => k.checkVisibility()).map(k => k.textContent)"
    )
    assert {"phone’s keyboard", "ft", "(", ")", ".", "+", "−", "×", "÷"} <= set(shown)


def test_a_size_has_its_cross_on_the_pad(page: Page, added_serving: Serving) -> None:
    opened(page, added_serving)
    size = page.locator("#size")
    size.tap()
    press(page, "3", "0", "by", "6", "0", "a half")
    expect(size).to_have_value("30 x 60 1/2")
    expect(page.locator("#said")).to_have_text("thirty by sixty and a half")
    press(page, "one division more")
    expect(size).to_have_value("30 x 60 17/32")
    press(page, "back", "back", "back", "back")
    expect(size).to_have_value("30")


def test_a_kept_list_comes_back_into_its_rows(page: Page, added_serving: Serving) -> None:
    opened(page, added_serving)
    page.goto(added_serving.address)
    page.get_by_role("link", name="Ash headboard").tap()
    expect(page.locator("h1")).to_have_text("Ash headboard")
    project = page.url.split("/")[-1]
    opened(page, added_serving, f"?planks={TYPED}&project={project}")
    page.locator("#sheet-called").fill("Top")
    page.get_by_role("button", name="Keep", exact=True).tap()
    expect(page.locator("h1")).to_have_text("Top")
    said = page.locator(".line-value", has_text="7 strong")
    assert said.evaluate("place => getComputedStyle(place).whiteSpace") == "pre-line"
    page.get_by_role("link", name="Change it").tap()
    expect(page.locator("html")).to_have_class(re.compile(r"\bready\b"))
    assert rows(page) == [("left", "5 1/2"), ("", "7 strong")]
