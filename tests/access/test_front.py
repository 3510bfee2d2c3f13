"""Under an https host in front: its own host and https alone, and only then is its word taken."""

import re
from pathlib import Path

import pytest
from click.testing import CliRunner

from tests.access.test_serving_the_shop import HERE, Start, ask, start
from webapp.access.front import FrontError, checked
from webapp.cli import main

__all__ = ["start"]

HOST = "bench.example"
PASSED_ON = {"X_Forwarded_Proto": "https", "X_Forwarded_For": "203.0.113.9"}
REFUSED: tuple[tuple[str, dict[str, str]], ...] = (
    (HOST, {}),
    (HOST, {"X_Forwarded_Proto": "http"}),
    ("elsewhere.example", PASSED_ON),
    (HERE, PASSED_ON),
    ("localhost", PASSED_ON),
    (f"{HOST}:8080", PASSED_ON),
    (HOST, {**PASSED_ON, "X_Forwarded_Host": HERE}),
    (HOST, {**PASSED_ON, "X_Forwarded_Host": "elsewhere.example"}),
)


def test_under_a_host_in_front_that_host_is_answered_and_nothing_else(
    start: Start, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("SHOULDERLINE_BEHIND", f"https://{HOST}")
    port = int(start("--behind-port", "0").says(rf"{HOST}/, .* requests on to http://{HERE}:(\d+)")[1])
    for host, more in ((HOST, {}), (f"{HOST}:443", {}), (f"{HERE}:{port}", {"X_Forwarded_Host": HOST})):
        status, headers, _ = ask(port, host, **PASSED_ON, **more)
        assert status in (200, 401)
        assert "Content-Security-Policy" in headers
    for host, said in REFUSED:
        status, _, body = ask(port, host, **said)
        assert (host, said, status) == (host, said, 400)
        assert b"X-Forwarded-Proto" in body


def test_without_a_host_in_front_nothing_that_a_request_says_of_another_is_believed(start: Start) -> None:
    server = start()
    for named in ({"X_Forwarded_Host": HOST}, {"Forwarded": f"host={HOST};proto=https"}, PASSED_ON):
        status, headers, body = ask(server.port, f"{HERE}:{server.port}", "/", **named)
        assert status == 200
        assert HOST not in body.decode() + str(headers)
    assert ask(server.port, HOST, **PASSED_ON)[0] == 400


@pytest.mark.parametrize(
    ("typed", "origin"),
    [
        ("https://bench.example", "https://bench.example"),
        ("HTTPS://Bench.Example/", "https://bench.example"),
        ("https://bench.example:443", "https://bench.example"),
        ("https://bench.example:8443", "https://bench.example:8443"),
    ],
)
def test_an_https_host_is_taken(typed: str, origin: str) -> None:
    assert checked(typed) == origin


@pytest.mark.parametrize(
    "typed", ["bench.example", "http://bench.example", "https://bench.example/shop", "https://a@b.example", "https://"]
)
def test_what_is_no_https_host_is_said(typed: str, tmp_path: Path) -> None:
    with pytest.raises(FrontError, match=re.escape(typed)):
        checked(typed)
    said = CliRunner().invoke(main, ["serve", "--behind", typed, "--data", str(tmp_path)])
    assert said.exit_code == 2
