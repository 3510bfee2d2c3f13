"""Forms with script: a tool is worked as it is typed, and what is kept is an entry by the server's own names."""

import re
from urllib.parse import parse_qs, urlsplit

import pytest
from playwright.sync_api import Page, expect

from tests.static.test_local_sync import SENT, kept, opened, start_project, state, wake

pytestmark = pytest.mark.browser
WORKER = "block"

GOOD = "span=58%203%2F8&slat=2%203%2F4&count=9"


@pytest.fixture
def tool(page, demo_serving) -> Page:
    """Open the empty form."""
    return opened(page, f"{demo_serving.address}/work/spacing")


def fill(page: Page, **fields: str) -> None:
    expect(page.locator("#pad[data-ready]")).to_be_attached()  # it comes after the form, and opens under its field
    for name, text in fields.items():
        page.locator(f"#{name}").fill(text)
    page.keyboard.press("Escape")


def error(page: Page, name: str):
    return page.locator(f"#{name}-error")


def query(page: Page) -> dict[str, str]:
    return {name: text for name, [text] in parse_qs(urlsplit(page.url).query).items()}


def test_it_is_worked_as_it_is_typed_and_the_address_follows(tool):
    navigations = []
    tool.on("request", lambda request: navigations.append(request.url) if request.is_navigation_request() else None)
    fill(tool, span="58 3/8", slat="2 3/4", count="9")
    expect(tool.locator(".hero")).to_contain_text("Gap")
    expect(tool).to_have_url(re.compile("count=9"))
    assert query(tool) | {"ends": "gap"} == {"span": "58 3/8", "slat": "2 3/4", "count": "9", "ends": "gap"}
    assert navigations == []
    expect(tool.locator("#part-sums")).to_contain_text("9 x 2 3/4")  # it is drawn when the keys rest
    before = tool.locator("main").inner_html()
    tool.reload()
    expect(tool.locator(".hero")).to_be_visible()
    assert tool.locator("main").inner_html() == before
    expect(tool.locator("#span")).to_have_value("58 3/8")


def test_a_lean_stands_in_the_address_as_a_word(tool):
    fill(tool, span="58 3/8+", slat="2 3/4", count="9")
    expect(tool).to_have_url(re.compile("strong"))
    assert query(tool)["span"] == "58 3/8 strong"


def test_an_error_shows_on_leaving_its_field_and_goes_when_it_is_mended(tool):
    tool.locator("#span").press_sequentially("58 3/")
    expect(error(tool, "span")).to_be_empty()
    tool.locator("#slat").focus()
    expect(error(tool, "span")).not_to_be_empty()
    expect(tool.locator("#span")).to_have_attribute("aria-invalid", "true")
    expect(error(tool, "slat")).to_be_empty()
    fill(tool, span="58 3/8")
    expect(error(tool, "span")).to_be_empty()
    expect(tool.locator("#span")).not_to_have_attribute("aria-invalid", "true")


def test_a_form_that_was_only_looked_at_has_no_errors(tool):
    for name in ["span", "slat", "count", "gap"]:
        tool.locator(f"#{name}").focus()
    tool.keyboard.press("Escape")
    tool.locator("#span").blur()
    expect(tool.locator(".error:not(:empty)")).to_have_count(0)


def test_the_last_good_answer_stays_and_says_so(tool):
    fill(tool, span="58 3/8", slat="2 3/4", count="9")
    expect(tool.locator("#part-sums")).to_contain_text("9 x 2 3/4")  # it is drawn when the keys rest
    good = tool.locator("main").inner_html()
    fill(tool, count="0")
    expect(tool.locator("#main")).to_have_class(re.compile(r"\bheld\b"))
    expect(tool.locator("#held")).to_have_text("This is the answer to what stood here before the last change.")
    assert tool.locator("main").inner_html() == good
    fill(tool, count="8")
    expect(tool.locator("#main")).not_to_have_class(re.compile(r"\bheld\b"))
    expect(tool.locator("#held")).to_be_empty()
    assert tool.locator("main").inner_html() != good


def test_a_page_opened_with_a_bad_address_shows_its_errors_at_once(page, demo_serving):
    address = f"{demo_serving.address}/work/spacing?span=58%203%2F0&slat=&count=9"
    page.goto(address)
    served = error(page, "span").text_content()
    opened(page, address)
    expect(error(page, "span")).to_have_text(served)
    page.reload()
    expect(error(page, "span")).to_have_text(served)
    expect(page.locator("#held")).to_be_empty()
    fill(page, span="58 3/8", slat="2 3/4")
    expect(page.locator(".hero")).to_be_visible()
    expect(page.locator(".error:not(:empty)")).to_have_count(0)


def test_enter_submits_nothing_and_shows_what_is_missing(tool):
    fill(tool, span="58 3/8")
    tool.locator("#span").press("Enter")
    expect(tool.locator("#fields .error:not(:empty)")).not_to_have_count(0)
    assert "58" in tool.locator("#span").input_value()


def test_the_unit_speaks_at_once(tool):
    fill(tool, span="1500", slat="70", count="9")
    tool.locator("#unit").select_option("mm")
    expect(tool.locator(".hero .unit")).to_have_text("mm")


def test_without_a_project_nothing_is_kept_here_and_the_way_to_one_is_shown(page, demo_serving):
    opened(page, f"{demo_serving.address}/work/spacing?{GOOD}")
    state(page, SENT)
    expect(page.locator("#keeping")).to_be_hidden()
    page.locator("main a", has_text="Ash headboard").click()
    expect(page.locator("#keeping")).to_be_visible()
    expect(page.locator("#span")).to_have_value("58 3/8")


def keep_sheet(page: Page, called: str) -> None:
    page.locator("#sheet-called").fill(called)
    page.locator("#sheet").get_by_role("button", name="Keep").click()
    page.wait_for_url("**/sheets/*")
    expect(page.locator("h1")).to_have_text(called)


def things(page: Page, address: str, kind: str) -> list:
    return page.request.get(f"{address}.json").json()[kind]


def test_a_sheet_is_kept_reopened_changed_and_kept_again(page, common):
    address = start_project(page, common)
    state(page, SENT)
    opened(page, f"{common.address}/work/spacing?{GOOD}&project={address.rsplit('/', 1)[1]}")
    keep_sheet(page, "Upper rail")
    state(page, SENT)
    [thing] = things(page, address, "sheets")
    first = thing["heads"][0]
    assert first["inputs"] == {"span": "58 3/8", "slat": "2 3/4", "count": "9"} | (
        {"ends": "gap"} if "ends" in first["inputs"] else {}
    )
    worked = page.request.get(f"{page.url}.json").json()["worked"]
    assert worked["same"] is True
    page.get_by_role("link", name="Change it").click()
    expect(page.locator("#sheet-called")).to_have_value("Upper rail")
    fill(page, count="10")
    keep_sheet(page, "Upper rail, ten")
    state(page, SENT)
    [thing] = things(page, address, "sheets")
    assert [head["called"] for head in thing["heads"]] == ["Upper rail, ten"]
    assert [past["called"] for past in thing["past"]] == ["Upper rail"]


def test_a_sheet_that_does_not_work_is_not_kept(page, common):
    address = start_project(page, common)
    state(page, SENT)
    opened(page, f"{common.address}/work/spacing?{GOOD}&project={address.rsplit('/', 1)[1]}")
    fill(page, count="none")
    page.locator("#sheet").get_by_role("button", name="Keep").click()
    expect(error(page, "count")).not_to_be_empty()
    assert things(page, address, "sheets") == []


def test_a_project_is_renamed_and_put_away(page, common):
    address = start_project(page, common)
    page.locator("summary", has_text="Name, unit").click()
    page.locator("#settings-name").fill("Bench in oak")
    page.get_by_role("button", name="Change", exact=True).click()
    expect(page.locator("h1")).to_have_text("Bench in oak")
    page.get_by_role("button", name="Put the project away").click()
    expect(page.get_by_role("button", name="Take it out again")).to_be_visible()
    state(page, SENT)
    found = page.request.get(f"{address}.json").json()
    assert (found["name"], found["archived"]) == ("Bench in oak", True)


def test_a_reading_is_noted_and_withdrawn(page, common):
    address = start_project(page, common)
    kept(page, "Clear span", "58 3/8")
    page.get_by_role("link", name="Clear span", exact=True).click()
    expect(page.locator("h1")).to_have_text("Clear span")
    page.locator("#note-text").fill("over the pegs")
    page.get_by_role("button", name="Add the note").click()
    expect(page.locator("main")).to_contain_text("over the pegs")
    page.locator("#withdrawal-why").fill("the tape had slipped")
    page.get_by_role("button", name="Withdraw").click()
    expect(page.locator("main")).to_contain_text("withdrawn: the tape had slipped")
    state(page, SENT)
    [place] = things(page, address, "places")
    assert place["heads"] == []
    assert place["past"][0]["why"] == "the tape had slipped"
    assert [note["text"] for note in place["past"][0]["notes"]] == ["over the pegs"]


def test_of_two_rivals_one_is_picked(page, common, browser):
    address = start_project(page, common)
    state(page, SENT)
    with browser.new_context() as other:
        second = opened(other.new_page(), address)
        page.context.route("**/sync", lambda route: route.abort())
        kept(page, "Clear span", "58 3/8")
        kept(second, "Clear span", "58 1/2")
        state(second, SENT)
    page.context.unroute("**/sync")
    state(page, SENT)
    expect(page.locator("main")).to_contain_text("rivals")
    page.get_by_role("link", name="Clear span", exact=True).click()
    page.get_by_role("button", name="This one holds").first.click()
    expect(page.get_by_role("button", name="This one holds")).to_have_count(0)
    state(page, SENT)
    [place] = things(page, address, "places")
    assert [head["text"] for head in place["heads"]] == ["58 1/2"]


def test_a_live_page_posts_by_itself_until_its_script_is_ready(page, common):
    """A script that never loads leaves a whole page behind."""
    page.context.route("**/screen.js", lambda route: route.abort())
    page.goto(common.address)
    page.get_by_label("Name").fill("Bench in ash")
    page.get_by_role("button", name="Start").click()
    page.wait_for_url("**/projects/*")
    expect(page.locator("h1")).to_have_text("Bench in ash")


def test_a_press_that_cannot_load_what_it_needs_posts_by_itself(page, common):
    page.context.route("**/more.js", lambda route: route.abort())
    opened(page, common.address)
    page.get_by_label("Name").fill("Bench in oak")
    page.get_by_role("button", name="Start").click()
    page.wait_for_url("**/projects/*")
    expect(page.locator("h1")).to_have_text("Bench in oak")


def test_light_and_thumb_are_the_phones_own(page, demo_serving):
    opened(page, demo_serving.address)
    page.locator("summary", has_text="This phone").click()
    page.locator("#phone-theme").select_option("sun")
    page.locator("#phone-hand").select_option("left")
    for _ in range(2):
        expect(page.locator("html")).to_have_attribute("data-theme", "sun")
        expect(page.locator("html")).to_have_attribute("data-hand", "left")
        page.reload()
    page.locator("summary", has_text="This phone").click()
    expect(page.locator("#phone-theme")).to_have_value("sun")
    page.locator("#phone-theme").select_option("")
    expect(page.locator("html")).not_to_have_attribute("data-theme", re.compile("."))


def test_without_a_worker_a_page_opens_once_the_server_has_it(serving, browser):
    """As over plain http: every page is the server's own."""
    with browser.new_context(service_workers="block") as context:
        page = context.new_page()
        address = start_project(page, serving)
        state(page, SENT)
        assert page.evaluate("navigator.serviceWorker.controller") is None
        opened(page, serving.address)
        serving.stop()
        page.get_by_label("Name").fill("Bench in oak")
        page.get_by_role("button", name="Start").click()
        expect(page.locator("#project-error")).to_have_text(re.compile("^Kept on this phone"))
        expect(page.locator("main")).to_contain_text("Bench in oak")
        serving.start()
        wake(page)
        state(page, SENT)
        names = [project["name"] for project in page.request.get(f"{serving.address}/projects.json").json()["projects"]]
        assert names == ["Bench in ash", "Bench in oak"]
        assert page.request.get(f"{address}.json").ok


def test_without_means_for_a_digest_the_form_posts_what_stands_in_it_now(common, browser):
    """As over plain http: the page is the server's own, and keeps by its form."""
    with browser.new_context(service_workers="block") as context:
        context.add_init_script("Object.defineProperty(Crypto.prototype, 'subtle', {get: () => undefined});")
        page = context.new_page()
        address = start_project(page, common)
        state(page, SENT)
        opened(page, f"{common.address}/work/spacing?{GOOD}&project={address.rsplit('/', 1)[1]}")
        fill(page, count="8")
        posts = []
        page.on(
            "request", lambda request: posts.append(urlsplit(request.url).path) if request.method == "POST" else None
        )
        keep_sheet(page, "Lower rail")
        assert urlsplit(address).path + "/sheets" in posts
        [thing] = things(page, address, "sheets")
        assert thing["heads"][0]["inputs"]["count"] == "8"
