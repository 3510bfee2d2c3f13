"""From the shop's network nobody gets anything but the pairing page without a paired device's cookie."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from flask import Flask

from tests.access.doors import HOST, ORIGIN, SYNC, Phone, question
from webapp.access.devices import COOKIE, MARK, NOT_PAIRED, OPEN
from webapp.access.origin import POLICY
from webapp.access.way import KEY, MACHINE
from webapp.app import create_app
from webapp.demo import fill
from webapp.phone.build import PLACE, withdraw

VARIABLE = re.compile(r"<(?:[^>]*:)?(\w+)>")
HOLDS_CODE = {"phone.static_file", "phone.shell", "phone.worker"}


@pytest.fixture
def app(tmp_path: Path) -> Iterator[Flask]:
    made = create_app(tmp_path)
    fill(made.extensions["shoulderline"])
    yield made
    made.extensions["shoulderline"].close()


@pytest.fixture
def phone(app: Flask) -> Phone:
    return Phone(app)


def addresses(app: Flask) -> list[tuple[str, str, str]]:
    """Every route with every method, at an address where there is something: (endpoint, method, address)."""
    store = app.extensions["shoulderline"]
    project = store.projects()[0]
    kinds = {entry["kind"]: entry["id"] for entry in store.entries(project)}
    there = {
        "project": project, "tool": "spacing", "stamp": app.extensions[PLACE].stamp, "things": "readings",
        "entry": kinds["reading"], "sheet": kinds["sheet"], "reading": kinds["reading"], "device": "x", "key": "gap",
    }  # fmt: skip
    names = {"phone.static_file": "screen.js", "phone.shell": "home", "pairing.part": "pairing.js"}
    found = []
    for rule in app.url_map.iter_rules():
        there["name"] = names.get(rule.endpoint, "x")
        address = VARIABLE.sub(lambda match: there[match[1]], rule.rule)
        found += [(rule.endpoint, method, address) for method in sorted(rule.methods or ())]
    return found


def test_an_unpaired_device_gets_the_pairing_page_at_every_route_and_method(app: Flask, phone: Phone) -> None:
    page = phone.ask("/nothing-at-all").text
    assert "Type in the eight letters" in page
    walked = addresses(app)
    assert len(walked) > 40
    for endpoint, method, address in walked:
        if endpoint in OPEN:
            continue
        answer = phone.ask(address, method)
        assert answer.status_code == 401, (method, address)
        assert answer.headers[MARK] == "wanted"
        assert answer.headers["Cache-Control"] == "no-store"
        if method == "HEAD":
            assert answer.text == ""
        elif answer.is_json:
            assert answer.json == {"errors": {"": NOT_PAIRED}}
        else:
            assert answer.text == page, address


def test_what_is_open_to_the_unpaired_is_the_pairing_page_and_what_puts_it_on_a_home_screen(
    app: Flask, phone: Phone
) -> None:
    given = {
        (endpoint, method)
        for endpoint, method, address in addresses(app)
        if phone.ask(address, method).status_code not in (401, 405)
    }
    assert given == {
        (endpoint, method)
        for endpoint in ("pairing.page", "pairing.part", "phone.manifest")
        for method in ("GET", "HEAD", "OPTIONS")
    } | {("pairing.enter", "OPTIONS")}
    stamp = app.extensions[PLACE].stamp
    assert phone.ask(f"/static/{stamp}/icons/mark-192.png").status_code == 200
    assert phone.ask(f"/static/{stamp}/screens/project.png").status_code == 200
    assert phone.ask(f"/static/{stamp}/icons/../screen.js").status_code == 404


def test_a_worker_that_was_withdrawn_leaves_the_unpaired_too(app: Flask, phone: Phone) -> None:
    assert phone.ask("/sw.js").status_code == 401
    withdraw(app)
    assert "unregister" in phone.ask("/sw.js").text
    assert phone.ask("/").status_code == 401


def test_what_is_open_says_nothing_of_the_shop(app: Flask, phone: Phone) -> None:
    store = app.extensions["shoulderline"]
    words = {entry["body"].get("name") or entry["body"].get("place") for entry in store.entries(store.projects()[0])}
    shown = "".join(phone.ask(at).text for at in ("/", "/pair", "/pair/pairing.js", "/manifest.webmanifest"))
    assert [word for word in words if word and len(word) > 3 and word in shown] == []


def test_a_paired_device_gets_every_page(app: Flask, phone: Phone) -> None:
    phone.paired()
    pages = [
        (endpoint, address)
        for endpoint, method, address in addresses(app)
        if method == "GET" and not endpoint.startswith(("pairing.", "devices."))
    ]
    refused = {address: phone.ask(address).status_code for _, address in pages}
    assert set(refused.values()) <= {200, 400, 404}, refused
    assert {endpoint for endpoint, address in pages if refused[address] == 200} > HOLDS_CODE


def test_trace_is_not_answered(phone: Phone) -> None:
    phone.paired()
    for address in ("/", "/pair", "/sync", "/devices"):
        assert phone.ask(address, "TRACE").status_code in (404, 405)


def test_a_paired_phone_lists_no_devices_and_pairs_no_others(phone: Phone) -> None:
    phone.paired()
    assert phone.ask("/devices").status_code == 404
    assert phone.ask("/devices/code", "POST").status_code == 404


def test_this_machine_needs_no_pairing(app: Flask) -> None:
    client = app.test_client()
    assert client.get("/").status_code == 200
    assert client.get("/pair").status_code == 404


def test_no_header_makes_a_request_this_machines_own(phone: Phone) -> None:
    sent = {"Shoulderline.Way": "machine", "X-Forwarded-For": "127.0.0.1", "X-Forwarded-Host": "127.0.0.1"}
    assert phone.ask("/", headers=sent).status_code == 401
    assert phone.ask("/", headers={"Host": "127.0.0.1:8470"}).status_code == 400


def test_a_revoked_device_is_out_at_its_next_request(app: Flask, phone: Phone) -> None:
    phone.paired("The bench's")
    other = Phone(app).paired("Another")
    assert phone.ask("/projects.json").status_code == 200
    [device] = [each for each in phone.store.devices.all() if each.name == "The bench's"]
    assert phone.store.devices.revoke(device.id, "2026-01-01T00:00:00.000Z")
    assert phone.ask("/projects.json").status_code == 401
    assert phone.ask("/sync", "POST", json=question(), headers=SYNC).status_code == 401
    assert other.ask("/projects.json").status_code == 200
    assert phone.paired().ask("/projects.json").status_code == 200, "pairing anew undoes it"


@pytest.mark.parametrize("key", ["", "x", "A" * 43, "A" * 5000, "é", "'; --"])
def test_a_made_up_key_opens_nothing(app: Flask, key: str) -> None:
    Phone(app).paired()
    assert Phone(app, key).ask("/").status_code == 401


def test_the_hash_that_is_kept_is_no_key(app: Flask, phone: Phone) -> None:
    phone.paired()
    from webapp.access.pairing import fast_hash

    assert Phone(app, phone.key).ask("/").status_code == 200
    assert Phone(app, fast_hash(phone.key)).ask("/").status_code == 401


@pytest.mark.parametrize(
    "headers",
    [
        {"Sec-Fetch-Site": "same-site"},
        {"Sec-Fetch-Site": "cross-site"},
        {"Sec-Fetch-Site": "none"},
        {"Sec-Fetch-Site": "same-origin", "Origin": "https://bench.local:9999"},
        {"Sec-Fetch-Site": "same-origin", "Origin": "null"},
    ],
)
@pytest.mark.parametrize("address", ["/sync", "/projects", "/import", "/pair"])
def test_another_page_cannot_use_a_phones_pairing(phone: Phone, address: str, headers: dict[str, str]) -> None:
    phone.paired()
    before = len(phone.store.projects())
    assert phone.ask(address, "POST", json=question(), headers=SYNC | headers).status_code == 403
    assert len(phone.store.projects()) == before


@pytest.mark.parametrize("address", ["/sync", "/projects", "/pair"])
def test_an_oversized_body_is_refused(phone: Phone, address: str) -> None:
    body = b"code=" + b"x" * (1024 * 1024 + 1)
    assert phone.ask(address, "POST", data=body).status_code in (401, 413)
    phone.paired()
    kind = "application/json" if address == "/sync" else "application/x-www-form-urlencoded"
    assert phone.ask(address, "POST", data=body, content_type=kind, headers=SYNC).status_code == 413


@pytest.mark.parametrize("address", ["/", "/pair", "/pair/pairing.js", "/sync", "/manifest.webmanifest"])
def test_every_answer_over_https_has_the_strict_headers(phone: Phone, address: str) -> None:
    headers = phone.ask(address).headers
    assert headers["Content-Security-Policy"] == POLICY
    assert headers["X-Content-Type-Options"] == "nosniff"
    assert headers["Strict-Transport-Security"].startswith("max-age=")
    assert not any(name.startswith("Access-Control") for name, _ in headers)


def test_plain_http_promises_no_https(app: Flask) -> None:
    assert "Strict-Transport-Security" not in app.test_client().get("/").headers


def test_no_cache_between_keeps_what_only_paired_devices_get(app: Flask, phone: Phone) -> None:
    phone.paired()
    for _, method, address in addresses(app):
        if method == "GET":
            assert "public" not in phone.ask(address).headers["Cache-Control"], address


def test_the_pairing_page_has_no_inline_script_or_style(phone: Phone) -> None:
    html = phone.ask("/").text
    assert "<style" not in html
    assert " style=" not in html
    assert all("src=" in tag.split(">")[0] for tag in html.split("<script")[1:])
    assert not re.search(r"\son\w+=", html)


def test_the_cookies_are_held_to_https_to_this_host_and_from_scripts(phone: Phone) -> None:
    from webapp.access.pairing import make_code

    [given] = phone.enter(make_code(phone.store).letters).headers.getlist("Set-Cookie")
    parts = {part.strip().lower() for part in given.split(";")[1:]}
    assert given.startswith(f"{COOKIE}=")
    assert COOKIE.startswith("__Host-")
    assert {"secure", "httponly", "samesite=strict", "path=/", f"max-age={400 * 24 * 3600}"} <= parts
    assert not any(part.startswith("domain") for part in parts)
    [session] = phone.ask("/").headers.getlist("Set-Cookie")
    assert session.startswith("__Host-shoulderline=")
    assert {"Secure", "HttpOnly", "SameSite=Strict", "Path=/"} <= {part.strip() for part in session.split(";")[1:]}


def test_a_form_over_https_keeps_its_token(phone: Phone) -> None:
    from tests.pages.client import Forms

    phone.paired()
    form = Forms(phone.ask("/").text).found["project"]
    typed = form["fields"] | {"name": "Over https", "unit": "in", "graduation": "1/32"}
    assert phone.ask("/projects", "POST", data=typed).status_code == 303
    assert phone.ask("/projects", "POST", data=typed | {"csrf_token": "x", "entry_id": ""}).status_code == 400


def test_a_cookie_begins_its_time_anew_once_a_day(phone: Phone) -> None:
    phone.paired()
    [device] = phone.store.devices.all()
    phone.ask("/manifest.webmanifest")
    assert phone.ask("/manifest.webmanifest").headers.getlist("Set-Cookie") == []
    phone.store.devices.seen(device.id, "2026-01-01T00:00:00.000Z")
    [given] = phone.ask("/manifest.webmanifest").headers.getlist("Set-Cookie")
    assert given.startswith(f"{COOKIE}={phone.key};")
    assert f"Max-Age={400 * 24 * 3600}" in given
    [seen] = phone.store.devices.all()
    assert seen.seen_at > "2026-01-01T00:00:00.000Z"
    assert seen.paired_at == device.paired_at


def test_the_doors_are_told_apart_by_the_program_alone(app: Flask) -> None:
    client = app.test_client()
    client.environ_base[KEY] = MACHINE
    assert client.get("/", headers={"Host": HOST}).status_code == 400
    assert ORIGIN.endswith(HOST)
