"""The pad: every mark in few presses, counted over all; what was typed reads as what was meant; its manners."""

import os
import re
from fractions import Fraction

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.cases import case
from tests.serving import Serving
from webapp.core.mark import mark
from webapp.core.reading import read
from webapp.core.setting import setting
from webapp.units import FACTORS

pytestmark = pytest.mark.browser
WORKER = "block"

LEANS = int(os.environ.get("SHOULDERLINE_LEANS", "1"))  # 3 in the slow setting
MOST_PRESSES = 6
TARGET = 44
SIZES = [(360, 740), (360, 560), (640, 360), (768, 1024), (1280, 800)]

# A thumb: it knows what a mark says, and presses the keys that say it; what is not shown cannot be pressed.
THUMB = r"""([id, marks]) => {
  const field = document.getElementById(id), pad = document.getElementById("pad");
  const shown = (key) => [...pad.querySelectorAll(key)].find((button) => !button.closest("[hidden]"));
  const press = (key) => {
    if (!shown(key)) throw new Error(`no key ${key} after ${field.value}`);
    shown(key).click();
  };
  const turns = (top, of) => of === 2 ? [] : Array(of === 64 && top > 32 ? 2 : 1).fill(`[data-of="${of}"]`);
  const KEYS = [
    [/^\d+$/, (word) => [...word].map((digit) => `[data-put="${digit}"]`)],
    [/\//, (word) => [...turns(...word.split("/").map(Number)), `[data-put="${word}"]`]],
    [/^strong$|^scant$/, (word) => [`[data-do="${word}"]`]],
  ];
  const keys = (text) => text.split(" ").flatMap((word) => KEYS.find(([shape]) => shape.test(word))[1](word));
  return marks.map((text) => {
    field.value = "";
    const pressed = keys(text);
    pressed.forEach(press);
    return [field.value, pressed.length];
  });
}"""


def at(page: Page, serving: Serving) -> Locator:
    """Open the demo's project, and the pad under the field of a reading."""
    page.goto(f"{serving.address}/projects/019abc00-5a5b-7000-8000-000000000001")
    expect(page.locator("html")).to_have_class(re.compile(r"\bready\b"))
    return tap(page, "#reading-reading")


def tool(page: Page, serving: Serving, query: str = "") -> None:
    page.goto(f"{serving.address}/work/spacing{query}")
    expect(page.locator("html")).to_have_class(re.compile(r"\bready\b"))


def tap(page: Page, name: str) -> Locator:
    field = page.locator(name)
    field.click()
    expect(page.locator("#pad")).to_be_visible()
    return field


def press(page: Page, *names: str) -> None:
    for name in names:
        page.locator("#pad").get_by_role("button", name=name, exact=True).click()


def all_marks(parts: int) -> list[str]:
    """Every mark from 0 to just under 100, with LEANS of either lean and none: by turns, so each fraction has all."""
    how = setting("in", f"1/{parts}", FACTORS)
    texts = [mark(Fraction(n, parts), how) for n in range(100 * parts)]
    leans = ("", " strong", " scant")
    return [f"{text}{leans[(at + turn) % 3]}" for at, text in enumerate(texts) for turn in range(LEANS)]


@pytest.mark.parametrize(("parts", "graduation"), [(32, "1/32"), (64, "1/64")])
def test_every_mark_takes_few_presses(page: Page, demo_serving: Serving, parts: int, graduation: str) -> None:
    at(page, demo_serving)
    page.evaluate("(graduation) => Object.assign(document.body.dataset, {unit: 'in', graduation})", graduation)
    page.keyboard.press("Escape")
    tap(page, "#reading-reading")
    marks = all_marks(parts)
    typed = page.evaluate(THUMB, ["reading-reading", marks])
    how = setting("in", graduation, FACTORS)
    pairs = [(text, value) for text, (value, _) in zip(marks, typed, strict=True)]
    wrong = [(text, value) for text, value in pairs if value != text and read(value, how) != read(text, how)]
    presses = [count for _, count in typed]
    most, mean = max(presses), sum(presses) / len(marks)
    print(f"{len(marks)} marks at {graduation}: at most {most} presses, {mean:.2f} each")
    assert len(typed) == 100 * LEANS * parts
    assert wrong == []
    assert most <= (MOST_PRESSES - 1 if parts == 32 else MOST_PRESSES)


def test_typing_with_a_real_finger(page: Page, demo_serving: Serving) -> None:
    field = at(page, demo_serving)
    press(page, "1", "7", "16ths", "11 over 16")
    expect(field).to_have_value("17 11/16")
    press(page, "strong")
    expect(field).to_have_value("17 11/16 strong")
    expect(page.locator("#said")).to_have_text("seventeen and eleven sixteenths, strong")
    press(page, "scant", "back")
    expect(field).to_have_value("17 11/16")
    press(page, "8ths", "3 over 8")
    expect(field).to_have_value("17 3/8")
    press(page, "back", "back", "back")
    expect(field).to_have_value("")
    expect(field).to_be_focused()


def test_the_caret_is_kept_and_keys_put_where_it_is(page: Page, demo_serving: Serving) -> None:
    field = at(page, demo_serving)
    page.keyboard.type("58 3/8")
    page.keyboard.press("Home")
    press(page, "1")
    expect(field).to_have_value("158 3/8")
    press(page, "back", "more", "feet")
    expect(field).to_have_value("' 58 3/8")
    assert field.evaluate("field => field.selectionStart") == 2


def test_a_pressed_field_is_taken_whole_and_a_second_press_sets_the_caret(page: Page, demo_serving: Serving) -> None:
    tool(page, demo_serving, "?span=58+3/8")
    field = tap(page, "#span")
    press(page, "6", "0")
    expect(field).to_have_value("60")
    field.click(position={"x": 150, "y": 26})
    press(page, "a half")
    expect(field).to_have_value("60 1/2")


def test_nudges_move_by_one_graduation(page: Page, demo_serving: Serving) -> None:
    tool(page, demo_serving, "?span=58+3/8&slat=2;+6+strong&count=9")
    moved = [("#span", "58 13/32", "58 3/8"), ("#slat", "2; 6 1/32 strong", "2; 6 strong"), ("#count", "10", "9")]
    for name, up, down in moved:
        field = tap(page, name)
        press(page, "one division more")
        expect(field).to_have_value(up)
        press(page, "one division less")
        expect(field).to_have_value(down)


def test_a_nudge_leaves_alone_what_is_no_length(page: Page, demo_serving: Serving) -> None:
    field = at(page, demo_serving)
    page.keyboard.type("3/")
    press(page, "one division more")
    expect(field).to_have_value("3/")
    field.fill("")
    press(page, "one division more")
    expect(field).to_have_value("1/32")


def test_next_goes_on_and_the_last_field_closes_the_pad(page: Page, demo_serving: Serving) -> None:
    tool(page, demo_serving)
    tap(page, "#span")
    for name in ("slat", "count", "gap"):
        press(page, "next")
        expect(page.locator(f"#{name}")).to_be_focused()
    tap(page, "#offset")
    press(page, "done")
    expect(page.locator("#pad")).to_be_hidden()
    expect(page.locator("body")).not_to_have_class(re.compile("typing"))


@pytest.mark.parametrize(("height", "way"), [(740, ["close the pad"]), (560, ["more", "close the pad"])])
def test_the_pad_can_be_closed_before_the_last_field(
    page: Page, demo_serving: Serving, height: int, way: list[str]
) -> None:
    page.set_viewport_size({"width": 360, "height": height})
    tool(page, demo_serving)
    tap(page, "#span")
    press(page, *way)
    expect(page.locator("#pad")).to_be_hidden()
    expect(page.locator("#span")).not_to_be_focused()


def test_a_count_has_digits_only(page: Page, demo_serving: Serving) -> None:
    tool(page, demo_serving)
    tap(page, "#count")
    names = "all => all.filter((key) => key.checkVisibility()).map((key) => key.textContent)"
    shown = page.locator("#pad button").evaluate_all(names)
    assert shown == ["close", *"123456789", "back", "−", "0", "+", "next"]


def test_a_metric_project_has_a_metric_pad(page: Page, demo_serving: Serving) -> None:
    tool(page, demo_serving)
    page.locator("#unit").select_option("mm")
    field = tap(page, "#span")
    expect(page.locator('#pad [data-of="16"]')).to_be_hidden()
    press(page, "1", "4", "8", "2", "point five", "strong")
    expect(field).to_have_value("1482.5 strong")
    field.fill("")
    press(page, "1", "4", "8", "point", "2", "cm")
    expect(field).to_have_value("148.2 cm")
    expect(page.locator("#said")).to_have_text("1482.0")


def test_whoever_has_keys_types_as_ever_and_escape_closes(page: Page, demo_serving: Serving) -> None:
    field = at(page, demo_serving)
    page.keyboard.type("17 3/8")
    page.keyboard.press("Escape")
    expect(page.locator("#pad")).to_be_hidden()
    expect(field).to_be_focused()
    page.keyboard.type(" strong")
    expect(field).to_have_value("17 3/8 strong")
    expect(page.locator("#pad")).to_be_hidden()
    tap(page, "#reading-reading")


def test_the_pads_keys_work_from_the_keyboard_too(page: Page, demo_serving: Serving) -> None:
    field = at(page, demo_serving)
    page.locator("#pad").get_by_role("button", name="7", exact=True).focus()
    page.keyboard.press("Enter")
    expect(field).to_have_value("7")
    page.keyboard.press("Escape")
    expect(field).to_be_focused()


def test_the_phones_own_keyboard_is_one_key_away_and_back(page: Page, demo_serving: Serving) -> None:
    field = at(page, demo_serving)
    expect(field).to_have_attribute("inputmode", "none")
    press(page, "more", "phone’s keyboard")
    expect(page.locator("#pad")).to_be_hidden()
    expect(field).to_be_focused()
    expect(field).not_to_have_attribute("inputmode", "none")
    page.get_by_role("button", name="Type with the pad again").click()
    tap(page, "#reading-reading")
    expect(field).to_have_attribute("inputmode", "none")


def test_the_other_hand_mirrors_the_pad_and_is_remembered(page: Page, demo_serving: Serving) -> None:
    at(page, demo_serving)
    press(page, "more", "other hand", "digits")
    for _ in range(2):
        left = {name: page.locator(f'#pad [data-do="{name}"]').bounding_box()["x"] for name in ("next", "more", "back")}
        digit = page.locator('#pad .pane [data-put="1"]').bounding_box()["x"]
        assert left["next"] < left["more"]
        assert left["back"] < digit
        page.reload()
        at(page, demo_serving)


def keys_shown(page: Page) -> list[tuple[str, dict[str, float], bool]]:
    """Give each key that is there: its words, its box, and whether its words are cut off."""
    found = page.locator("#pad button").evaluate_all(
        """all => all.filter((key) => key.checkVisibility()).map((key) => [
            key.textContent, key.getBoundingClientRect().toJSON(), key.scrollWidth > key.clientWidth])"""
    )
    return [tuple(key) for key in found]


def test_keys_are_large_enough_and_on_the_screen(page: Page, demo_serving: Serving) -> None:
    for width, height in SIZES:
        with case(f"{width} x {height}"):
            large_enough(page, demo_serving, width, height)


def large_enough(page: Page, demo_serving: Serving, width: int, height: int) -> None:
    page.set_viewport_size({"width": width, "height": height})
    tool(page, demo_serving, "?span=58+3/8&slat=2+3/4&count=9&graduation=1/64")
    tap(page, "#span")
    seen = 0
    for pane in ("8ths", "16ths", "32nds", "64ths", "33 up", "digits", "more"):
        press(page, pane)
        keys = keys_shown(page)
        seen += len(keys)
        assert [name for name, box, _ in keys if min(box["width"], box["height"]) < TARGET] == []
        assert [name for name, box, _ in keys if box["left"] < 0 or box["right"] > width] == []
        assert [name for name, box, _ in keys if box["top"] < 0 or box["bottom"] > height] == []
        assert [name for name, _, cut in keys if cut] == []
    assert seen > 100


def test_answer_strip_and_field_stay_in_sight_while_typing(page: Page, demo_serving: Serving) -> None:
    for width, height in SIZES:
        with case(f"{width} x {height}"):
            in_sight(page, demo_serving, width, height)


def in_sight(page: Page, demo_serving: Serving, width: int, height: int) -> None:
    page.set_viewport_size({"width": width, "height": height})
    tool(page, demo_serving, "?span=58+3/8&slat=2+3/4&count=9")
    tap(page, "#offset")
    pad = page.locator("#pad").bounding_box()
    for part in (".hero", ".strip", "#offset"):
        box = page.locator(part).first.bounding_box()
        assert box["y"] >= 0
        assert box["y"] + box["height"] <= height
        assert box["x"] + box["width"] <= pad["x"] or box["y"] + box["height"] <= pad["y"]
