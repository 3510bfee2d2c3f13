"""On the phone: the shop is said once and stands in every form; a project is started like another one, offline too."""

import json
import urllib.request

import pytest
from playwright.sync_api import Page, expect

from tests.added import added_serving
from tests.hand import in_hand, ready, started
from tests.serving import Serving
from tests.static.test_local_sync import all_sent

__all__ = ["added_serving"]

pytestmark = pytest.mark.browser


page = pytest.fixture(in_hand, name="page")


def served(address: str) -> dict:
    with urllib.request.urlopen(f"{address}.json") as answer:
        found: dict = json.loads(answer.read())
    return found


def offline(page: Page, *, gone: bool) -> None:
    """Take the server away from this phone, or give it back; its worker answers all the same."""
    page.context.set_offline(gone)


def settings(page: Page) -> None:
    page.get_by_text("Name, unit, graduation and shop").tap()
    expect(page.locator("#settings-shop-least")).to_be_visible()


def test_the_shop_is_said_by_thumb_and_stands_in_the_tools_form(page: Page, added_serving: Serving) -> None:
    project = started(page, added_serving.address, "Shop by thumb")
    settings(page)
    page.locator("#settings-shop-least").tap()
    expect(page.locator("#settings-shop-least")).to_be_visible()
    for key in ("2", "a half"):
        page.locator("#pad").get_by_role("button", name=key, exact=True).tap()
    page.keyboard.press("Escape")
    page.get_by_role("button", name="Change", exact=True).tap()
    expect(page.locator("#settings-shop-least")).to_have_attribute("placeholder", "2 1/2")
    expect(page.locator("#settings-shop-least")).to_have_value("")
    page.get_by_role("link", name="Planks side by side").tap()
    ready(page)
    expect(page.locator("#least")).to_have_attribute("placeholder", "2 1/2, your shop's")
    page.get_by_label("Reading 1", exact=True).fill("5")
    page.keyboard.press("Escape")
    expect(page.locator(".line", has_text="Least width")).to_contain_text("two and a half")
    page.locator("#sheet-called").fill("Top")
    page.get_by_role("button", name="Keep", exact=True).tap()
    expect(page.locator("h1")).to_have_text("Top")
    all_sent(page)
    (thing,) = served(project)["sheets"]
    assert thing["heads"][0]["inputs"] == {"planks": "5", "least": "2 1/2", "faces": "both"}
    assert served(page.url)["worked"]["same"] is True


def test_what_no_tool_can_read_is_said_at_its_field(page: Page, added_serving: Serving) -> None:
    started(page, added_serving.address, "Shop unread")
    settings(page)
    page.locator("#settings-shop-turn").fill("1/0")
    page.get_by_role("button", name="Change", exact=True).tap()
    expect(page.locator("#settings-shop-turn-error")).not_to_be_empty()
    expect(page.locator("#settings-shop-turn")).to_have_value("1/0")


def test_the_usual_stands_in_a_blank_field_and_follows_the_unit(page: Page, added_serving: Serving) -> None:
    page.goto(f"{added_serving.address}/work/trial")
    ready(page)
    expect(page.locator("#least")).to_have_attribute("placeholder", "usually 1 in")
    page.locator("#unit").select_option("mm")
    expect(page.locator("#least")).to_have_attribute("placeholder", "usually 25 mm")


def keep_a_sheet(page: Page, called: str) -> None:
    page.get_by_role("link", name="Planks side by side").tap()
    ready(page)
    page.get_by_label("Reading 1", exact=True).fill("5 1/2")
    page.keyboard.press("Escape")
    page.locator("#sheet-called").fill(called)
    page.get_by_role("button", name="Keep", exact=True).tap()
    expect(page.locator("h1")).to_have_text(called)


def test_a_project_is_started_like_another_offline_by_a_double_press(page: Page, added_serving: Serving) -> None:
    address = started(page, added_serving.address, "Bed in ash")
    keep_a_sheet(page, "Top")
    page.goto(address)
    ready(page)
    page.locator("#reading-place").fill("rail")
    page.locator("#reading-reading").fill("17 5/8")
    page.keyboard.press("Enter")
    page.keyboard.press("Escape")
    expect(page.get_by_role("link", name="rail", exact=True)).to_be_visible()
    all_sent(page)
    expect(page.locator("html[data-offline]")).to_be_attached()
    page.reload()
    ready(page)
    offline(page, gone=True)
    page.get_by_text("Start another like this").tap()
    page.locator("#like-name").fill("Bed in oak")
    page.get_by_role("button", name="Start it").dblclick()
    expect(page.locator("h1")).to_have_text("Bed in oak")
    expect(page.get_by_role("link", name="Top")).to_be_visible()
    expect(page.locator("main")).not_to_contain_text("Readings")
    expect(page.locator("main")).to_contain_text("five and a half")
    other = page.url
    offline(page, gone=False)
    page.evaluate("dispatchEvent(new Event('focus'))")
    all_sent(page)
    found = served(other)
    assert (found["name"], found["places"], len(found["sheets"])) == ("Bed in oak", [], 1)
    names = [each["name"] for each in served(f"{added_serving.address}/projects")["projects"]]
    assert names.count("Bed in oak") == 1
    (head,) = found["sheets"][0]["heads"]
    assert served(f"{other}/sheets/{head['entry']}")["worked"]["same"] is True


def test_a_name_is_asked_for(page: Page, added_serving: Serving) -> None:
    started(page, added_serving.address, "Nameless next")
    page.get_by_text("Start another like this").tap()
    page.get_by_role("button", name="Start it").tap()
    expect(page.locator("#like-name-error")).to_contain_text("Give the project a name")


def test_help_opens_offline_and_fills_the_form(page: Page, added_serving: Serving) -> None:
    page.goto(f"{added_serving.address}/work/trial")
    ready(page)
    expect(page.locator("html[data-offline]")).to_be_attached()
    page.reload()
    ready(page)
    offline(page, gone=True)
    page.get_by_role("link", name="Help, with a worked example").tap()
    expect(page.locator("h1")).to_have_text("Planks side by side: help")
    expect(page.locator("main")).to_contain_text("One width each.")
    page.get_by_role("link", name="Fill the form with it").tap()
    expect(page.locator(".hero-label")).to_have_text("2 planks together")
    expect(page.get_by_label("Name 2", exact=True)).to_have_value("right")
