"""A phone that trusts the shop's authority, and nothing that the authority may not vouch for."""

import ssl
import subprocess
from datetime import timedelta
from pathlib import Path

import pytest
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.hazmat.primitives.serialization import Encoding
from playwright.sync_api import Browser, BrowserContext, Error, Page, expect

from tests.access.bench import HERE, Bench, today
from tests.access.trusting import phone_at, trust
from webapp.access.authority import private
from webapp.access.leaf import signed

pytestmark = pytest.mark.browser


def ready_for_no_signal(page: Page, shop: Bench) -> None:
    """Pair this phone, and wait until it can do without the server."""
    page.goto(shop.origin)
    page.locator("#code").fill(shop.code())
    page.get_by_role("button", name="Pair this phone").click()
    expect(page).to_have_url(f"{shop.origin}/")
    expect(page.locator("html[data-offline]")).to_be_attached()


def opened(context: BrowserContext, address: str) -> Page:
    page = context.new_page()
    page.goto(address)
    return page


def test_a_phone_that_trusts_the_authority_keeps_the_program_and_starts_without_a_server(
    phone: BrowserContext, shop: Bench
) -> None:
    page = phone.new_page()
    ready_for_no_signal(page, shop)
    assert page.evaluate("isSecureContext && !!navigator.serviceWorker.controller")
    shop.stop()
    page.close()
    again = opened(phone, shop.origin)
    expect(again.locator("h1")).to_have_text("Shoulderline")
    expect(again.locator("#state")).to_contain_text("cannot reach")


def test_a_phone_that_was_not_set_up_is_given_nothing(browser: Browser, shop: Bench, tmp_path: Path) -> None:
    stranger = phone_at(browser, tmp_path / "stranger", f"MAP {shop.shop.place.name} {HERE}")
    with pytest.raises(Error, match="ERR_CERT_AUTHORITY_INVALID"):
        opened(stranger, shop.origin)
    stranger.close()


def test_an_expired_certificate_still_opens_what_the_phone_keeps(
    phone: BrowserContext, shop: Bench, browser: Browser, tmp_path: Path
) -> None:
    page = phone.new_page()
    ready_for_no_signal(page, shop)
    shop.stop()
    phone.close()
    shop.aged(today() - timedelta(days=400))
    shop.start(renew=False)
    again = phone_at(browser, tmp_path / "home", f"MAP {shop.shop.place.name} {HERE}")
    with pytest.raises(ssl.SSLCertVerificationError, match="expired"):
        shop.connect()
    page = opened(again, shop.origin)
    expect(page.locator("h1")).to_have_text("Shoulderline")
    expect(page.locator("#state")).to_contain_text("cannot reach")
    assert page.evaluate("fetch('/projects.json').then(() => 'answered', () => 'refused')") == "refused"
    again.close()


def test_a_certificate_is_renewed_while_phones_are_served(bench: Bench, browser: Browser, tmp_path: Path) -> None:
    bench.aged(today() - timedelta(days=397 - 20))
    bench.start(renew=False)
    trust(tmp_path / "home", bench.shop.root)
    phone = phone_at(browser, tmp_path / "home", f"MAP {bench.shop.place.name} {HERE}")
    page = phone.new_page()
    ready_for_no_signal(page, bench)
    with bench.connect() as before:
        old = before.getpeercert(binary_form=True)
        bench.do(bench.shop.look(today()))
        before.sendall(f"GET /reached.txt HTTP/1.1\r\nHost: {bench.origin[8:]}\r\n\r\n".encode())
        assert before.recv(4096).startswith(b"HTTP/1.1 200")
    with bench.connect() as after:
        new = after.getpeercert(binary_form=True)
    assert new != old
    assert new == bench.shop.leaf.certificate.public_bytes(Encoding.DER)
    fresh = opened(phone, f"{bench.origin}/reached.txt")
    expect(fresh.locator("body")).to_have_text("Shoulderline")
    phone.close()


def test_a_second_address_is_sent_to_the_first(browser: Browser, shop: Bench, tmp_path: Path) -> None:
    """By its number the shop is another origin, with a store of its own: nothing may ever be kept there."""
    number = "192.168.77.5"
    shop.shop.addresses = [number]
    shop.do(shop.shop.look(today(), [number]))
    trust(tmp_path / "home", shop.shop.root)
    phone = phone_at(browser, tmp_path / "home", f"MAP {number} {HERE}", f"MAP {shop.shop.place.name} {HERE}")
    page = phone.new_page()
    answer = page.goto(f"https://{number}:{shop.port}/")
    assert answer is not None
    assert answer.status == 421
    page.get_by_role("link").click()
    expect(page).to_have_url(f"{shop.origin}/")
    expect(page.locator("h1")).to_be_visible()
    phone.close()


def test_a_name_that_the_certificate_lacks_is_refused(browser: Browser, shop: Bench, tmp_path: Path) -> None:
    trust(tmp_path / "home", shop.shop.root)
    phone = phone_at(browser, tmp_path / "home", f"MAP another-name.local {HERE}")
    with pytest.raises(Error, match="ERR_CERT_COMMON_NAME_INVALID"):
        opened(phone, f"https://another-name.local:{shop.port}/")
    phone.close()


OUTSIDE = ("bank.example", "shoulderline.example", "8.8.8.8", "127.0.0.1", "local.example")


@pytest.mark.parametrize("host", OUTSIDE)
def test_the_browser_refuses_a_leaf_for_what_is_not_private(
    browser: Browser, bench: Bench, tmp_path: Path, host: str
) -> None:
    """The authority's own key signs it, as a thief of that key would; the browser refuses it all the same."""
    bench.start()
    key = ec.generate_private_key(ec.SECP256R1())
    stolen = signed(key.public_key(), bench.shop.root, [host], today())
    file = tmp_path / "stolen.pem"
    file.write_bytes(private(key) + stolen.public_bytes(Encoding.PEM))
    bench.shop.https.renew(file)
    trust(tmp_path / "home", bench.shop.root)
    phone = phone_at(browser, tmp_path / "home", f"MAP {host} {HERE}")
    with pytest.raises(Error, match=r"ERR_CERT_(INVALID|AUTHORITY_INVALID|COMMON_NAME_INVALID)"):
        opened(phone, f"https://{host}:{bench.port}/")
    phone.close()


@pytest.mark.parametrize("host", ["shop.local", "shop.home.arpa", "192.168.1.20", "10.0.0.9", "fd00::9"])
def test_openssl_takes_a_leaf_for_a_private_name_or_address(bench: Bench, tmp_path: Path, host: str) -> None:
    assert verified(bench.start(), tmp_path, host).returncode == 0


@pytest.mark.parametrize("host", OUTSIDE)
def test_openssl_refuses_a_leaf_for_what_is_not_private(bench: Bench, tmp_path: Path, host: str) -> None:
    said = verified(bench.start(), tmp_path, host)
    assert said.returncode != 0
    assert "permitted subtree violation" in said.stderr


def verified(bench: Bench, folder: Path, host: str) -> subprocess.CompletedProcess[str]:
    key = ec.generate_private_key(ec.SECP256R1())
    root, leaf = folder / "root.pem", folder / "leaf.pem"
    root.write_bytes(bench.shop.root.certificate.public_bytes(Encoding.PEM))
    leaf.write_bytes(signed(key.public_key(), bench.shop.root, [host], today()).public_bytes(Encoding.PEM))
    words = ["openssl", "verify", "-purpose", "sslserver", "-CAfile", str(root), str(leaf)]
    return subprocess.run(words, capture_output=True, text=True)
