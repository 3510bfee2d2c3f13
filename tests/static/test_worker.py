"""The worker: a version is kept whole or not at all, answers without a server, and gives way when asked to."""

import re
from contextlib import suppress

import pytest
from flask import redirect, request
from playwright.sync_api import Error, expect

from tests.cases import case
from tests.static.versions import caches, installed, offline

pytestmark = pytest.mark.browser

PROJECT = "/projects/019abc00-5a5b-7000-8000-000000000001"


def test_all_files_of_a_version_are_kept_and_nothing_else(page, bench):
    offline(page, f"{bench.address}{PROJECT}")
    page.goto(f"{bench.address}/work/spacing?span=58&slat=2&count=9")
    page.goto(f"{bench.address}{PROJECT}.json")
    page.goto(bench.address)
    kept = caches(page)
    assert list(kept) == [f"shoulderline-{bench.build.stamp}"]
    assert sorted(*kept.values()) == sorted(bench.build.files)


def test_every_kept_page_opens_without_a_server(page, bench):
    offline(page, bench.address)
    project = bench.app.test_client().get(f"{PROJECT}.json", headers={"Sec-Fetch-Site": "none"}).json
    reading = project["places"][0]["heads"][0]["entry"]
    sheet = project["sheets"][0]["heads"][0]["entry"]
    bench.stop()
    headings = {
        "/": "Shoulderline",
        PROJECT: project["name"],
        f"{PROJECT}/readings/{reading}": project["places"][0]["place"],
        f"{PROJECT}/sheets/{sheet}": project["sheets"][0]["heads"][0]["called"],
        "/work/spacing": "Slats and gaps",
        f"/work/spacing?span=58+3%2F8&slat=2+3%2F4&count=9&project={PROJECT[10:]}": "Slats and gaps",
    }
    for address, heading in headings.items():
        page.goto(f"{bench.address}{address}")
        expect(page.locator("h1")).to_have_text(heading)
        expect(page.locator("#state")).to_have_text("cannot reach the server, nothing waiting")
    bench.start()


def test_what_is_not_kept_belongs_to_the_network(page, bench):
    offline(page, bench.address)
    assert page.goto(f"{bench.address}{PROJECT}.json").json()["name"]
    assert page.goto(f"{bench.address}/nothing").status == 404
    bench.stop()
    for address in [f"{PROJECT}.json", "/nothing", "/projects.json"]:
        with pytest.raises(Error, match="ERR_CONNECTION_REFUSED"):
            page.goto(f"{bench.address}{address}")
    bench.start()


def test_a_kept_page_is_its_shell_with_a_signal_as_well(page, bench):
    offline(page, bench.address)
    page.goto(f"{bench.address}{PROJECT}")
    expect(page.locator("h1")).to_be_visible()
    assert "csrf_token" not in page.content()
    assert page.locator("form[action]").count() == page.locator("#fields[action]").count()


def other_stamp(answer):
    answer.headers["Shoulderline-Stamp"] = "0000000000000000"
    return answer


def sent_elsewhere(answer):
    return redirect("/shell/home") if request.path != "/shell/home" else answer


def status(code):
    def changed(answer):
        answer.status_code = code
        return answer

    return changed


FAULTS = {
    "other stamp": other_stamp,
    "elsewhere": sent_elsewhere,
    "404": status(404),
    "500": status(500),
    "401": status(401),
}


def test_a_version_with_one_bad_file_leaves_the_old_one_at_work(page, bench, monkeypatch, tmp_path):
    """One fault after the other: each time the browser tries the new version anew, and lets it be."""
    offline(page, bench.address)
    old = bench.build
    bench.edit(monkeypatch, tmp_path / "static", "style.css", "\n/* new */\n")
    for name, fault in FAULTS.items():
        with case(name):
            bench.spoilt[f"/static/{bench.build.stamp}/more.js"] = fault
            states = installed(page)
            assert "redundant" in states
            assert "installed" not in states
            assert list(caches(page)) == [f"shoulderline-{old.stamp}"]
            expect(page.locator("#update")).to_be_hidden()
    bench.stop()
    page.goto(bench.address)
    expect(page.locator("h1")).to_have_text("Shoulderline")
    assert old.stamp in page.content()
    bench.start()


def test_a_new_version_waits_and_a_plain_reload_keeps_the_old_one(page, bench, monkeypatch, tmp_path):
    offline(page, bench.address)
    old = bench.build.stamp
    bench.edit(monkeypatch, tmp_path / "static", "style.css", "\n/* new */\n")
    assert "installed" in installed(page)
    expect(page.locator("#update")).to_be_visible()
    page.reload()
    expect(page.locator("#update")).to_be_visible()
    assert old in page.content()
    assert sorted(caches(page)) == sorted([f"shoulderline-{old}", f"shoulderline-{bench.build.stamp}"])


def test_the_button_takes_the_new_version_over_and_the_old_one_goes(page, bench, monkeypatch, tmp_path):
    offline(page, bench.address)
    bench.edit(monkeypatch, tmp_path / "static", "style.css", "\n/* new */\n")
    installed(page)
    with page.expect_navigation():
        page.locator("#update").click()
    expect(page.locator(f'link[href="/static/{bench.build.stamp}/style.css"]')).to_be_attached()
    expect(page.locator("#update")).to_be_hidden()
    expect(page.locator("html[data-offline]")).to_be_attached()
    assert list(caches(page)) == [f"shoulderline-{bench.build.stamp}"]


def test_a_page_of_the_version_before_has_all_of_it_and_goes_on_keeping(phone, page, bench, monkeypatch, tmp_path):
    """It asks for what a press needs before the new version takes the files away."""
    offline(page, f"{bench.address}/projects/{bench.project}")
    more = "() => performance.getEntriesByType('resource').some(({ name }) => name.endsWith('/more.js'))"
    page.wait_for_function(more)
    old = bench.build.stamp
    bench.edit(monkeypatch, tmp_path / "static", "style.css", "\n/* new */\n")
    other = phone.new_page()
    offline(other, bench.address)
    installed(other)
    other.locator("#update").click()
    expect(other.locator(f'link[href="/static/{bench.build.stamp}/style.css"]')).to_be_attached()
    assert list(caches(other)) == [f"shoulderline-{bench.build.stamp}"]
    page.locator("#reading-place").fill("Bench, height")
    page.locator("#reading-reading").fill("34 1/2")
    page.locator("#reading-reading").press("Enter")
    expect(page.locator("main")).to_contain_text("Bench, height")
    assert old in page.content()


def test_an_update_takes_nothing_that_was_half_typed(page, bench, monkeypatch, tmp_path):
    """In a tool's form and in a form that keeps, pressed before the address had followed."""
    tool = f"{bench.address}/work/spacing?project={bench.project}"
    offline(page, tool)
    bench.edit(monkeypatch, tmp_path / "static", "style.css", "\n/* new */\n")
    installed(page)
    page.locator("#span").fill("58 3/8")
    page.locator("#slat").fill("2 3/4")
    page.locator("#count").fill("9")
    page.keyboard.press("Escape")
    page.locator("#sheet-called").fill("First, wi")
    page.locator("#slat").fill("2 3/")
    page.evaluate("document.getElementById('update').click()")
    expect(page.locator(f'link[href="/static/{bench.build.stamp}/style.css"]')).to_be_attached()
    for field, text in {"span": "58 3/8", "slat": "2 3/", "count": "9", "sheet-called": "First, wi"}.items():
        expect(page.locator(f"#{field}")).to_have_value(text)


def test_a_new_version_takes_over_by_itself_at_the_next_cold_start(phone, page, bench, monkeypatch, tmp_path):
    offline(page, bench.address)
    bench.edit(monkeypatch, tmp_path / "static", "style.css", "\n/* new */\n")
    installed(page)
    page.goto("about:blank")
    page.close()
    again = phone.new_page()
    stamp = re.compile(f"/static/{bench.build.stamp}/")
    for _ in range(120):  # the browser lets the old version go in its own time
        again.goto(bench.address)
        if stamp.search(again.content()):
            break
        again.goto("about:blank")
        again.wait_for_timeout(250)
    expect(again.locator("h1")).to_be_visible()
    assert stamp.search(again.content())


def test_two_versions_never_mix(page, bench, monkeypatch, tmp_path):
    """An open page of the old version keeps working, and asks for none of the new one's files."""
    offline(page, f"{bench.address}/work/spacing")
    old = bench.build.stamp
    bench.edit(monkeypatch, tmp_path / "static", "parts.js", "\nexport const NEW = 1;\n")
    asked = []
    page.on("request", lambda request: asked.append(request.url))
    installed(page)
    page.locator("#span").fill("58 3/8")
    page.locator("#slat").fill("2 3/4")
    page.locator("#count").fill("9")
    expect(page.locator(".hero")).to_contain_text("Gap")
    files = [url for url in asked if "/static/" in url]
    assert all(f"/static/{old}/" in url for url in files)
    assert page.request.get(f"{bench.address}/static/{old}/parts.js").status == 404


def test_a_browser_that_cleared_the_cache_is_served_by_the_network(page, bench):
    offline(page, bench.address)
    page.evaluate("async () => { for (const name of await caches.keys()) await caches.delete(name); }")
    page.goto(bench.address)
    expect(page.locator("h1")).to_have_text("Shoulderline")
    expect(page.locator("html[data-offline]")).not_to_be_attached()


def test_a_shell_without_its_server_says_that_a_project_is_not_here(page, bench):
    offline(page, bench.address)
    bench.stop()
    with suppress(Error):
        page.goto(f"{bench.address}/projects/01900000-0000-7000-8000-000000000009")
    expect(page.locator("main")).to_contain_text("not here")
    expect(page.locator("#reading button.main")).to_be_disabled()
    bench.start()
