"""The log of the doors: what it says, what it never says, and how large it may grow."""

import re
import stat
from collections.abc import Iterator
from pathlib import Path

import pytest
from flask import Flask

from tests.access.bench import Bench
from tests.access.doors import Phone
from tests.pages.client import OWN, forms
from webapp.access import log as logs
from webapp.access.log import FILE, FORMER, LONGEST, Log
from webapp.access.pairing import LETTERS, Pace, make_code
from webapp.app import create_app

LINE = re.compile(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z (refused|paired|revoked|code made)( [a-z_]+=\"[ -~]*\")*")


@pytest.fixture
def app(tmp_path: Path) -> Iterator[Flask]:
    made = create_app(tmp_path)
    yield made
    made.extensions["shoulderline"].close()


@pytest.fixture
def phone(app: Flask) -> Phone:
    return Phone(app)


def lines(folder: Path) -> list[str]:
    """Return the log, each line of it whole."""
    found = (folder / FILE).read_text(encoding="ascii").splitlines()
    assert [line for line in found if not LINE.fullmatch(line)] == []
    return [line.split(" ", 1)[1] for line in found]


def test_a_pairing_a_wrong_try_and_a_revocation_are_written_with_door_and_address(
    app: Flask, phone: Phone, tmp_path: Path
) -> None:
    code = make_code(phone.store)
    bad = next(letter for letter in LETTERS if letter != code.letters[0]) + code.letters[1:]
    assert phone.enter(bad).status_code == 401
    phone.enter(code.letters)
    [device] = phone.store.devices.all()
    client = app.test_client()
    [form] = [form for name, form in forms(client.get("/devices", headers=OWN)).items() if name.startswith("revoke-")]
    client.post(form["action"], data=form["fields"], headers=OWN)
    phone.enter(code.letters)
    assert lines(tmp_path) == [
        'refused why="pairing: wrong" door="shop" client="127.0.0.1"',
        f'paired device="{device.id}" door="shop" client="127.0.0.1"',
        f'revoked device="{device.id}" door="machine" client="127.0.0.1"',
        'refused why="pairing: used" door="shop" client="127.0.0.1"',
    ]


def test_a_code_that_is_made_is_written_without_itself(app: Flask, tmp_path: Path) -> None:
    client = app.test_client()
    form = forms(client.get("/devices", headers=OWN))["make"]
    shown = client.post(form["action"], data=form["fields"] | {"called": "Anna"}, headers=OWN).text
    code = re.search(r'id="code"[^>]*>([A-Z]{4} [A-Z]{4})<', shown)
    assert code
    assert lines(tmp_path) == ['code made door="machine" client="127.0.0.1"']


@pytest.mark.parametrize(
    ("why", "headers"),
    [
        ("not paired", {}),
        ("another page", {"Sec-Fetch-Site": "cross-site"}),
        ("wrong host", {"Host": "elsewhere.example"}),
    ],
)
def test_what_the_guard_refuses_is_written(phone: Phone, tmp_path: Path, why: str, headers: dict[str, str]) -> None:
    assert phone.ask("/work/spacing?span=58", headers=headers).status_code in (400, 401, 403)
    [line] = lines(tmp_path)
    host = headers.get("Host", "bench.local:8443")
    assert line == f'refused why="{why}" door="shop" client="127.0.0.1" asked="GET /work/spacing" host="{host}"'


def test_a_secret_is_never_written(phone: Phone, tmp_path: Path) -> None:
    code = make_code(phone.store)
    phone.ask("/", headers={"Cookie": "__Host-shoulderline-device=made-up-key"})
    phone.enter("", typed={"token": "A" * 22})
    phone.enter("WRONG WORD")
    phone.enter(code.letters)
    text = (tmp_path / FILE).read_text(encoding="ascii")
    secrets = ("made-up-key", "A" * 22, "WRONG", code.letters, code.letters.replace(" ", ""), code.token, phone.key)
    assert [secret for secret in secrets if secret in text] == []
    assert text.count("\n") == 4


@pytest.mark.parametrize("path", ["/a%0A2026-01-01T00:00:00.000Z paired", "/%1b[2J", '/"x', "/é", "/" + "x" * 5000])
def test_what_somebody_sends_makes_no_line_and_no_sign_of_its_own(phone: Phone, tmp_path: Path, path: str) -> None:
    phone.ask(path)
    [line] = lines(tmp_path)
    assert line.startswith("refused why=")
    assert len(line) < LONGEST * 8


def test_a_flood_of_refusals_is_counted_and_not_written_out(phone: Phone, tmp_path: Path) -> None:
    log = Log(tmp_path)
    log.pace = Pace(most=3)
    for _ in range(10):
        log.refused("not paired")
    log.note("paired", device="x")
    log.pace = Pace(most=3)
    log.refused("not paired")
    assert lines(tmp_path) == ['refused why="not paired"'] * 3 + [
        'paired device="x"',
        'refused why="not paired" left_out="7"',
    ]


def test_the_log_is_bounded_and_for_its_owner_alone(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(logs, "MOST", 1000)
    log = Log(tmp_path)
    for number in range(200):
        log.note("paired", device=str(number))
    now, former = tmp_path / FILE, tmp_path / FORMER
    assert {path.name for path in tmp_path.iterdir()} == {FILE, FORMER}
    assert now.stat().st_size <= 1000
    assert former.stat().st_size <= 1000
    assert {stat.S_IMODE(path.stat().st_mode) for path in (now, former)} == {0o600}
    kept = [line.split('"')[1] for path in (former, now) for line in path.read_text(encoding="ascii").splitlines()]
    assert kept == [str(number) for number in range(200 - len(kept), 200)]


def test_a_log_that_cannot_be_written_is_said_once_and_stops_nobody(
    phone: Phone, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / FILE).mkdir()
    phone.paired()
    assert phone.ask("/").status_code == 200
    assert Phone(phone.app).ask("/").status_code == 401
    assert capsys.readouterr().err.count("cannot be written") == 1


def test_the_forms_key_is_for_its_owner_alone(app: Flask, tmp_path: Path) -> None:
    assert stat.S_IMODE((tmp_path / "form-key").stat().st_mode) == 0o600


def test_a_wrong_host_at_the_shops_door_is_written(shop: Bench) -> None:
    assert shop.ask("/", headers={"Host": 'x"\tnone.example'})[0] == 400
    assert lines(shop.folder) == ['refused why="wrong host" door="shop" client="127.0.0.1" host="x\\"\\tnone.example"']
