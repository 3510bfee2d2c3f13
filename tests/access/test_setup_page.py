"""The set-up page: all that plain http gives, and a test that says which step is missing."""

import re
import socket
from pathlib import Path

import pytest
from cryptography import x509
from playwright.sync_api import Browser, Page, expect

from tests.access.bench import HERE, Bench, today
from tests.access.trusting import phone_at, trust


def host(shop: Bench) -> dict[str, str]:
    return {"Host": f"{HERE}:{shop.shop.setup_port}"}


def test_the_page_names_the_shop_its_certificate_and_both_ways(shop: Bench) -> None:
    status, headers, body = shop.ask_setup("/", headers=host(shop))
    text = body.decode()
    assert status == 200
    assert headers["Content-Type"] == "text/html; charset=utf-8"
    assert shop.origin in text
    assert shop.shop.root.fingerprint in text
    for words in ("Certificate Trust Settings", "CA certificate", "pairing code", "/shoulderline.crt"):
        assert words in text
    assert "$" not in text


def test_the_root_is_given_as_phones_take_it(shop: Bench) -> None:
    status, headers, body = shop.ask_setup("/shoulderline.crt", headers=host(shop))
    assert (status, headers["Content-Type"]) == (200, "application/x-x509-ca-cert")
    assert x509.load_der_x509_certificate(body) == shop.shop.root.certificate
    assert b"PRIVATE" not in body


@pytest.mark.parametrize("path", ["/", "/setup.js", "/setup.css", "/shoulderline.crt", "/here.txt", "/nothing"])
def test_every_answer_is_strict_and_sets_no_cookie(shop: Bench, path: str) -> None:
    _, headers, _ = shop.ask_setup(path, headers=host(shop))
    policy = headers["Content-Security-Policy"]
    assert policy.startswith("default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self' https://")
    assert "unsafe" not in policy
    assert (headers["X-Content-Type-Options"], headers["Cache-Control"]) == ("nosniff", "no-store")
    assert "Set-Cookie" not in headers


def test_there_is_no_inline_script_or_style(shop: Bench) -> None:
    text = shop.ask_setup("/", headers=host(shop))[2].decode()
    assert re.findall(r"<script(?! type=\"module\" src=\"/setup.js\")|<style| style=| on[a-z]+=", text) == []


@pytest.mark.parametrize(
    "path", ["/projects.json", "/sync", "/work/spacing", "/sw.js", "/static/x/y.js", "/../pyproject.toml"]
)
def test_nothing_of_the_program_is_there(shop: Bench, path: str) -> None:
    assert shop.ask_setup(path, headers=host(shop))[0] == 404


@pytest.mark.parametrize("method", ["POST", "PUT", "DELETE", "OPTIONS"])
def test_nothing_is_taken_in(shop: Bench, method: str) -> None:
    status, headers, _ = shop.ask_setup("/", method=method, headers=host(shop))
    assert (status, headers["Connection"]) == (405, "close")


def test_head_answers_without_a_body(shop: Bench) -> None:
    status, headers, body = shop.ask_setup("/", method="HEAD", headers=host(shop))
    assert (status, body) == (200, b"")
    assert int(headers["Content-Length"]) > 1000


@pytest.mark.parametrize("name", ["elsewhere.example", "shoulderline.local", "127.0.0.1", ""])
def test_another_host_is_refused(shop: Bench, name: str) -> None:
    assert shop.ask_setup("/", headers={"Host": name})[0] == 400


def outcome(page: Page, shop: Bench) -> str:
    page.goto(f"http://{HERE}:{shop.shop.setup_port}/")
    page.get_by_role("button", name="Test").click()
    found = page.locator("#outcome[data-kind]")
    expect(found).to_be_visible()
    return str(found.get_attribute("data-kind"))


@pytest.mark.browser
def test_the_test_says_that_the_certificate_is_not_trusted(browser: Browser, shop: Bench, tmp_path: Path) -> None:
    phone = phone_at(browser, tmp_path / "home", f"MAP {shop.shop.place.name} {HERE}")
    page = phone.new_page()
    assert outcome(page, shop) == "certificate"
    expect(page.locator("#outcome")).to_contain_text("step 3, the switch")
    phone.close()


@pytest.mark.browser
def test_the_test_is_passed_by_a_phone_that_trusts_the_certificate(
    browser: Browser, shop: Bench, tmp_path: Path
) -> None:
    trust(tmp_path / "home", shop.shop.root)
    phone = phone_at(browser, tmp_path / "home", f"MAP {shop.shop.place.name} {HERE}")
    page = phone.new_page()
    assert outcome(page, shop) == "passed"
    page.locator("#app").click()
    expect(page).to_have_url(re.compile(f"^{re.escape(shop.origin)}/"))
    phone.close()


@pytest.mark.browser
def test_the_test_says_that_the_name_is_not_found(browser: Browser, shop: Bench, tmp_path: Path) -> None:
    number = "192.168.77.5"
    shop.shop.addresses = [number]
    shop.do(shop.shop.look(today(), [number]))
    trust(tmp_path / "home", shop.shop.root)
    phone = phone_at(browser, tmp_path / "home", f"MAP {number} {HERE}", f"MAP {shop.shop.place.name} ~NOTFOUND")
    page = phone.new_page()
    assert outcome(page, shop) == "name"
    expect(page.locator("#outcome")).to_contain_text(f"--by-number {number}")
    phone.close()


@pytest.mark.browser
def test_the_test_says_that_the_computer_is_away(browser: Browser, shop: Bench, tmp_path: Path) -> None:
    phone = phone_at(browser, tmp_path / "home", f"MAP {shop.shop.place.name} {HERE}")
    page = phone.new_page()
    page.goto(f"http://{HERE}:{shop.shop.setup_port}/")
    shop.stop()
    page.get_by_role("button", name="Test").click()
    expect(page.locator("#outcome[data-kind='away']")).to_be_visible()
    phone.close()


@pytest.mark.browser
def test_the_test_says_that_a_door_is_closed(browser: Browser, shop: Bench, tmp_path: Path) -> None:
    """A firewall that drops what comes to the port: nothing answers, for as long as the page waits."""
    with socket.socket() as silent:
        silent.bind((HERE, 0))
        silent.listen(5)
        port = silent.getsockname()[1]
        rule = f"MAP {shop.shop.place.name}:{shop.port} {HERE}:{port}"
        phone = phone_at(browser, tmp_path / "home", rule)
        assert outcome(phone.new_page(), shop) == "closed"
        phone.close()
