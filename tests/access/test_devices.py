"""Listing and revoking: at the terminal, and on this machine's own page."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from click.testing import CliRunner
from flask import Flask

from tests.access.doors import ORIGIN, Phone
from tests.pages.client import OWN, Forms, forms
from webapp.access.log import FILE
from webapp.access.pairing import paired
from webapp.app import create_app
from webapp.cli import main
from webapp.store import database, restore

SHOWN = re.compile(r'id="code"[^>]*>([A-Z]{4} [A-Z]{4})<')


@pytest.fixture
def app(tmp_path: Path) -> Iterator[Flask]:
    made = create_app(tmp_path)
    made.config["PHONES_AT"] = ORIGIN
    yield made
    made.extensions["shoulderline"].close()


def devices(tmp_path: Path, *words: str) -> tuple[int, str]:
    done = CliRunner().invoke(main, ["devices", "--data", str(tmp_path), *words])
    return done.exit_code, done.output


def test_the_terminal_lists_and_revokes_while_it_is_served(app: Flask, tmp_path: Path) -> None:
    assert devices(tmp_path) == (0, "No phone is paired.\n")
    first, second = Phone(app).paired("Bench"), Phone(app).paired("Saw")
    code, text = devices(tmp_path)
    assert code == 0
    assert [line.split(":")[0] for line in text.splitlines()] == ["Bench", "Saw"]
    assert "paired 20" in text
    assert devices(tmp_path, "--revoke", "Bench") == (0, "Bench is let in no more. To undo that, pair it anew.\n")
    assert first.ask("/").status_code == 401
    assert second.ask("/").status_code == 200
    [left] = paired(app.extensions["shoulderline"])
    assert devices(tmp_path, "--revoke", left.id)[0] == 0
    assert f'revoked device="{left.id}" door="terminal"' in (tmp_path / FILE).read_text(encoding="ascii")
    assert second.ask("/").status_code == 401


def test_the_terminal_says_what_is_paired_where_there_is_no_such_phone(app: Flask, tmp_path: Path) -> None:
    Phone(app).paired("Bench")
    code, text = devices(tmp_path, "--revoke", "Bank")
    assert code == 1
    assert "No phone called Bank is paired." in text
    assert "Bench: paired" in text


def test_the_page_makes_a_code_that_pairs(app: Flask) -> None:
    client = app.test_client()
    form = forms(client.get("/devices", headers=OWN))["make"]
    page = client.post(form["action"], data=form["fields"] | {"called": "Anna's"}, headers=OWN)
    found = SHOWN.search(page.text)
    assert found
    assert 'src="data:image/svg+xml' in page.text
    assert Phone(app).enter(found[1]).status_code == 303
    again = client.get("/devices", headers=OWN).text
    assert found[1] not in again
    assert "<b>Anna&#39;s</b>" in again


def test_the_page_says_where_a_new_phone_begins(app: Flask) -> None:
    app.config["SETUP_AT"] = lambda: "http://192.168.1.20:8480/"
    html = app.test_client().get("/devices", headers=OWN).text
    assert "open http://192.168.1.20:8480/ on it" in html
    assert f"find the shop at {ORIGIN}/" in html


def test_the_terminal_makes_a_code_that_pairs(app: Flask, tmp_path: Path) -> None:
    done, text = devices(tmp_path, "--code")
    found = re.search(r": ([A-Z]{4} [A-Z]{4})\. The one before is void\.$", text)
    assert done == 0
    assert found
    assert Phone(app).enter(found[1]).status_code == 303
    written = (tmp_path / FILE).read_text(encoding="ascii")
    assert 'code made door="terminal"' in written
    assert found[1] not in written


def test_the_page_revokes(app: Flask) -> None:
    phone = Phone(app).paired("Bench")
    client = app.test_client()
    [form] = [form for name, form in forms(client.get("/devices", headers=OWN)).items() if name.startswith("revoke-")]
    assert client.post(form["action"], data=form["fields"], headers=OWN).status_code == 303
    assert phone.ask("/").status_code == 401
    assert "No phone is paired." in client.get("/devices", headers=OWN).text
    assert client.post(form["action"], data=form["fields"], headers=OWN).status_code == 404


@pytest.mark.parametrize("headers", [{}, {"Sec-Fetch-Site": "same-site"}, {"Sec-Fetch-Site": "cross-site"}])
def test_no_other_page_makes_a_code(app: Flask, headers: dict[str, str]) -> None:
    client = app.test_client()
    form = forms(client.get("/devices", headers=OWN))["make"]
    assert client.post(form["action"], data=form["fields"], headers=headers).status_code == 403


def test_a_press_without_its_token_does_nothing(app: Flask) -> None:
    Phone(app).paired("Bench")
    client = app.test_client()
    [device] = paired(app.extensions["shoulderline"])
    for address in ("/devices/code", f"/devices/{device.id}/revoked"):
        answer = client.post(address, headers=OWN)
        assert answer.status_code == 400
        assert "lain too long" in answer.text
        assert SHOWN.search(answer.text) is None
    assert len(paired(app.extensions["shoulderline"])) == 1


def test_a_name_is_shown_as_text(app: Flask) -> None:
    Phone(app).paired("<script>x</script>")
    html = app.test_client().get("/devices", headers=OWN).text
    assert "<script>x" not in html
    assert "&lt;script&gt;x" in html
    assert any(name.startswith("revoke-") for name in Forms(html).found)


def test_a_restore_lets_in_nobody_who_was_revoked_since(app: Flask, tmp_path: Path) -> None:
    Phone(app).paired("Bench")
    file = tmp_path / "kept.backup"
    app.extensions["shoulderline"].backup(file)
    Phone(app).paired("Saw")
    assert devices(tmp_path, "--revoke", "Bench")[0] == 0
    app.extensions["shoulderline"].close()
    restore(file, tmp_path)
    made = create_app(tmp_path)
    try:
        assert [device.name for device in paired(made.extensions["shoulderline"])] == ["Saw"]
    finally:
        made.extensions["shoulderline"].close()


def test_a_restore_over_a_database_that_cannot_be_read_takes_the_backups_devices(app: Flask, tmp_path: Path) -> None:
    Phone(app).paired("Bench")
    file, other = tmp_path / "kept.backup", tmp_path / "other"
    app.extensions["shoulderline"].backup(file)
    other.mkdir()
    (other / database.FILE).write_bytes(b"spoilt" * 1000)
    restore(file, other)
    assert devices(other)[1].startswith("Bench")
    [aside] = other.glob("before-restore-*.db")
    assert aside.read_bytes() == b"spoilt" * 1000
