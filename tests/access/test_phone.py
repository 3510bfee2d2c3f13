"""A phone in the hand: paired, revoked, paired anew; and a page at another port of the same host."""

import socket
import ssl
import threading
from collections.abc import Iterator
from contextlib import contextmanager

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.access.bench import HERE, Bench
from webapp.access.leaf import FILE as LEAF
from webapp.access.pairing import make_code, paired

pytestmark = pytest.mark.browser

POSTING = """<!doctype html><title>elsewhere</title><form method=post action="{origin}/projects">
<input name=name value=Slipped><input name=unit value=in><input name=graduation value="1/32">
<button>go</button></form>"""


def pair(page: Page, shop: Bench) -> None:
    page.goto(shop.origin)
    page.locator("#code").fill(shop.code())
    page.get_by_role("button", name="Pair this phone").click()
    expect(page).to_have_url(f"{shop.origin}/")


def names(shop: Bench) -> list[str]:
    store = shop.app.extensions["shoulderline"]
    return [store.entry(project)["body"]["name"] for project in store.projects()]


def start_project(page: Page, name: str) -> None:
    page.locator("#project-name").fill(name)
    page.locator('form[data-keeps="project"] button').last.click()


def test_a_revoked_phone_says_so_keeps_what_it_has_and_sends_it_when_paired_anew(
    phone: BrowserContext, shop: Bench
) -> None:
    page = phone.new_page()
    pair(page, shop)
    expect(page.locator("html[data-offline]")).to_be_attached()
    expect(page.get_by_text("This phone", exact=True)).to_be_visible()
    expect(page.get_by_role("link", name="The shop’s phones")).to_be_hidden()
    store = shop.app.extensions["shoulderline"]
    [device] = paired(store)
    store.devices.revoke(device.id, "2026-01-01T00:00:00.000Z")
    page.goto(shop.origin)
    expect(page.locator("#state")).to_have_text("not paired with the shop's server, nothing waiting")
    start_project(page, "Made while revoked")
    expect(page.locator("#state")).to_have_text("not paired with the shop's server, 1 waiting")
    assert names(shop) == []
    page.get_by_role("link", name="Pair this phone").click()
    page.locator("#code").fill(shop.code())
    page.get_by_role("button", name="Pair this phone").click()
    expect(page.locator("#state")).to_have_text("all sent")
    assert names(shop) == ["Made while revoked"]


def test_a_link_pairs_by_one_press_and_leaves_no_trace_in_the_address(phone: BrowserContext, shop: Bench) -> None:
    page = phone.new_page()
    code = make_code(shop.app.extensions["shoulderline"])
    page.goto(f"{shop.origin}/pair#{code.token}")
    expect(page.locator("#code")).to_be_hidden()
    assert page.url == f"{shop.origin}/pair"
    page.get_by_role("button", name="Pair this phone").click()
    expect(page).to_have_url(f"{shop.origin}/")
    [cookie] = [each for each in phone.cookies() if each["name"].endswith("device")]
    assert (cookie["secure"], cookie["httpOnly"], cookie["sameSite"]) == (True, True, "Strict")
    assert page.evaluate("document.cookie") == ""


@contextmanager
def elsewhere(shop: Bench) -> Iterator[str]:
    """Serve a page at another port of the shop's own host, with its own certificate."""
    context = ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER)
    context.load_cert_chain(shop.shop_folder / LEAF)
    listening = socket.create_server((HERE, 0))
    body = POSTING.format(origin=shop.origin).encode()
    head = f"HTTP/1.1 200 OK\r\nContent-Type: text/html\r\nContent-Length: {len(body)}\r\nConnection: close\r\n\r\n"

    def answer() -> None:
        while True:
            try:
                bare, _ = listening.accept()
            except OSError:
                return
            try:
                with context.wrap_socket(bare, server_side=True) as asking:
                    asking.recv(65536)
                    asking.sendall(head.encode() + body)
            except OSError:
                bare.close()

    thread = threading.Thread(target=answer)
    thread.start()
    try:
        yield f"https://{shop.shop.place.name}:{listening.getsockname()[1]}/"
    finally:
        listening.shutdown(socket.SHUT_RDWR)
        listening.close()
        thread.join(10)


def test_a_page_at_another_port_of_the_same_host_cannot_post(phone: BrowserContext, shop: Bench) -> None:
    page = phone.new_page()
    pair(page, shop)
    with elsewhere(shop) as address:
        page.goto(address)
        with page.expect_navigation() as navigation:
            page.get_by_role("button", name="go").click()
    assert navigation.value.status == 403
    assert "This came from another page" in page.content()
    assert names(shop) == []
