"""The shop's one address: made once, and the same for good once phones know it."""

import re
import stat
from pathlib import Path

import pytest

from webapp.access import private
from webapp.access.authority import AuthorityError
from webapp.access.name import decided, kept, origin, place
from webapp.access.private import is_private


def test_a_name_is_made_once_at_random(tmp_path: Path) -> None:
    first = decided(tmp_path / "a")
    assert re.fullmatch(r"shoulderline-[a-z2-9]{8}\.local", first.name)
    assert first.origin == f"https://{first.name}:8443"
    assert decided(tmp_path / "a") == place(tmp_path / "a") == first
    assert decided(tmp_path / "b").name != first.name
    assert stat.S_IMODE((tmp_path / "a" / "place.json").stat().st_mode) == 0o600


def test_before_a_phone_is_paired_the_number_can_take_the_names_place(tmp_path: Path) -> None:
    first = decided(tmp_path)
    second = decided(tmp_path, number="192.168.1.20")
    assert (second.name, second.origin) == (first.name, "https://192.168.1.20:8443")
    assert decided(tmp_path, settled=True) == second
    assert decided(tmp_path, 8443, "192.168.1.20", settled=True) == second


@pytest.mark.parametrize(("port", "number"), [(9000, ""), (None, "192.168.1.20")])
def test_what_paired_phones_know_is_not_changed(tmp_path: Path, port: int | None, number: str) -> None:
    first = decided(tmp_path)
    with pytest.raises(AuthorityError, match=re.escape(first.origin)):
        decided(tmp_path, port, number, settled=True)
    assert place(tmp_path) == first


@pytest.mark.parametrize("number", ["8.8.8.8", "192.168.1", "shop.local", "127.0.0.1", "2001:db8::1"])
def test_only_a_private_address_can_be_the_number(tmp_path: Path, number: str) -> None:
    with pytest.raises(AuthorityError, match="private network"):
        decided(tmp_path, number=number)


def test_a_free_port_is_kept_when_it_is_known(tmp_path: Path) -> None:
    first = decided(tmp_path, 0)
    assert place(tmp_path) is None
    assert kept(tmp_path, first, 9123) == decided(tmp_path)
    assert decided(tmp_path).port == 9123


def test_a_damaged_place_is_said_and_not_made_anew(tmp_path: Path) -> None:
    decided(tmp_path)
    (tmp_path / "place.json").write_text("{}")
    with pytest.raises(AuthorityError, match="backup"):
        decided(tmp_path)


def test_an_origin_is_written_as_browsers_write_it() -> None:
    assert origin("a.local", 443) == "https://a.local"
    assert origin("fd00::2", 8443) == "https://[fd00::2]:8443"


@pytest.mark.parametrize(
    "text", ["10.0.0.1", "172.31.255.255", "192.168.0.1", "169.254.9.9", "fd00::2", "fe80::1%eth0"]
)
def test_private_addresses(text: str) -> None:
    assert is_private(text)


@pytest.mark.parametrize(
    "text", ["8.8.8.8", "172.32.0.1", "192.0.2.2", "127.0.0.1", "::1", "2001:db8::1", "100.64.0.1"]
)
def test_other_addresses(text: str) -> None:
    assert not is_private(text)


def test_this_machines_addresses_are_private_and_the_one_it_sends_from_comes_first(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    class Ip:
        def __init__(self, ip: object) -> None:
            self.ip = ip

    class Adapter:
        def __init__(self, *ips: object) -> None:
            self.ips = [Ip(ip) for ip in ips]

    found = [
        Adapter("127.0.0.1", ("::1", 0, 0)),
        Adapter("172.17.0.1"),
        Adapter("203.0.113.7", ("fd00::2", 0, 0), ("fe80::1", 0, 2), "192.168.1.20"),
    ]
    monkeypatch.setattr(private.ifaddr, "get_adapters", lambda: found)
    monkeypatch.setattr(private, "_first", lambda: "192.168.1.20")
    assert private.addresses() == ["192.168.1.20", "172.17.0.1", "fd00::2"]
