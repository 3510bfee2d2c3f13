"""The commands as a maker types them: the shop's doors, and what is said about them."""

import http.client
import json
import re
import socket
import ssl
from collections.abc import Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest
from click.testing import CliRunner
from cryptography import x509
from cryptography.hazmat.primitives.hashes import SHA256
from zeroconf import IPVersion, ServiceInfo, Zeroconf

from tests.access.bench import HERE, asked, free_port
from tests.serving import Quick, Serving
from webapp.access.announce import KIND, Announcer
from webapp.access.name import Place
from webapp.access.private import addresses
from webapp.access.terminal import words
from webapp.cli import main

SHOP = ("--shop", "--shop-port", "0", "--setup-port", "0", "--address", HERE)
Start = Callable[..., Serving]


@pytest.fixture
def start(tmp_path: Path) -> Iterator[Start]:
    """Start a server with words of a test's own; `afresh` is a program of its own, as a maker starts it."""
    running: list[Serving] = []

    def started(*more: str, afresh: bool = False) -> Serving:
        running.append((Serving if afresh else Quick)(tmp_path / "data", *more))
        return running[-1].start()

    yield started
    for each in running:
        each.stop()


def ask(port: int, host: str, path: str = "/", **headers: str) -> tuple[int, dict[str, str], bytes]:
    connection = http.client.HTTPConnection(HERE, port, timeout=20)
    named = {name.replace("_", "-"): value for name, value in headers.items()}
    return asked(connection, "GET", path, {"Host": host, "Sec-Fetch-Site": "none", **named}, None)


def test_the_terminal_says_where_and_what_to_compare_and_this_machine_needs_nothing(start: Start) -> None:
    shop = start(*SHOP)
    origin = shop.says(r"(https://shoulderline-\w+\.local:\d+)/")[1]
    port = int(shop.says(rf"http://{HERE}:(\d+)/ on it")[1])
    pairs = " ".join(shop.says(r"^  ((?:[0-9A-F]{2} ?){16})$")[1] for _ in range(2))
    status, _, der = ask(port, f"{HERE}:{port}", "/shoulderline.crt")
    assert status == 200
    assert x509.load_der_x509_certificate(der).fingerprint(SHA256()) == bytes.fromhex(pairs)
    assert origin in ask(port, f"{HERE}:{port}")[2].decode()
    assert re.fullmatch(r"[A-Z]{4} [A-Z]{4}", shop.says(r"good for ten minutes, until \d\d:\d\d: (.*)$")[1])
    assert shop.says(r"for another phone, .* http://127\.0\.0\.1:(\d+)/devices in")[1] == str(shop.port)
    assert f"open http://{HERE}:{port}/ on it" in ask(shop.port, f"{HERE}:{shop.port}", "/devices")[2].decode()
    status, _, body = ask(shop.port, f"{HERE}:{shop.port}", "/projects.json")
    assert (status, json.loads(body)) == (200, {"projects": []})


def test_a_stop_is_not_held_up_and_the_shop_is_where_it_was_after_a_new_start(start: Start) -> None:
    first = start(*SHOP, afresh=True)
    said = first.says(r"(https://\S+:(\d+))/")
    held = [socket.create_connection((HERE, int(said[2])), 20) for _ in range(20)]
    assert ask(first.port, f"{HERE}:{first.port}")[0] == 200
    assert first.process is not None
    first.process.terminate()
    assert first.process.wait(20) == 0
    for each in held:
        each.close()
    assert start("--shop", "--setup-port", "0", "--address", HERE).says(r"(https://\S+)/")[1] == said[1]


def test_tls_is_of_today_and_plain_http_is_no_answer(start: Start) -> None:
    port = int(start(*SHOP).says(r"https://\S+:(\d+)/")[1])
    for version, name in ((ssl.TLSVersion.TLSv1_2, "TLSv1.2"), (ssl.TLSVersion.TLSv1_3, "TLSv1.3")):
        context = ssl.SSLContext(ssl.PROTOCOL_TLS_CLIENT)
        context.check_hostname, context.verify_mode = False, ssl.CERT_NONE  # the protocol alone is asked about
        context.minimum_version = context.maximum_version = version
        with socket.create_connection((HERE, port), 20) as bare, context.wrap_socket(bare) as secured:
            assert secured.version() == name
    with pytest.raises((ConnectionError, http.client.HTTPException)):
        ask(port, f"{HERE}:{port}")


def test_a_port_that_is_taken_is_said_with_what_to_do(tmp_path: Path) -> None:
    with socket.socket() as taken:
        taken.bind((HERE, 0))
        taken.listen()
        port = str(taken.getsockname()[1])
        typed = ["serve", "--port", "0", "--data", str(tmp_path), "--shop", "--address", HERE, "--shop-port", port]
        said = CliRunner().invoke(main, typed)
    assert said.exit_code == 1
    assert f"Port {port} is taken: stop what has it" in said.stderr


@pytest.mark.parametrize("address", ["8.8.8.8", "shop.local", "2001:db8::1"])
def test_the_shop_is_never_served_at_an_address_of_the_internet(tmp_path: Path, address: str) -> None:
    said = CliRunner().invoke(main, ["serve", "--shop", "--address", address, "--data", str(tmp_path)])
    assert said.exit_code == 2
    assert "private network" in said.stderr


def test_the_code_to_scan_is_drawn() -> None:
    assert "█" in words("https://a.local", "http://192.168.1.20:8480/", "AB " * 32)


def test_a_name_is_found_on_the_network_while_it_is_announced() -> None:
    """In a thread of its own, as the shop does it: the tests' browser has a loop in this one."""
    place = Place("shoulderline-announced.local", free_port())
    found = [address for address in addresses() if ":" not in address] or [HERE]
    with ThreadPoolExecutor(1) as aside:
        said, service = aside.submit(announced, place, found).result()
    assert said == ""
    assert service.server == "shoulderline-announced.local."
    assert service.port == place.port
    assert service.parsed_addresses(IPVersion.V4Only) == found


def announced(place: Place, found: list[str]) -> tuple[str, ServiceInfo]:
    """Announce a name, and ask for it as a phone does."""
    announcer = Announcer(place)
    announcer.announce(found)
    asking = Zeroconf(interfaces=found)
    service = ServiceInfo(KIND, f"shoulderline-announced.{KIND}")
    try:
        assert service.request(asking, 5000)
    finally:
        asking.close()
        announcer.close()
    return announcer.said, service
