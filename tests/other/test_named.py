"""Which browsers are asked for: the words of the variable, and the reasons of what is skipped."""

import pytest

from tests.other.named import NAME, NEEDS, asked, lacking
from tests.other.phones import PHONES


@pytest.mark.parametrize(
    ("said", "names"),
    [
        ("", []),
        (" , ", []),
        ("firefox", ["firefox"]),
        ("webkit,firefox", ["webkit", "firefox"]),
        (" firefox , webkit , firefox ", ["firefox", "webkit"]),
    ],
)
def test_the_variable_names_browsers_with_commas_between(said: str, names: list[str]) -> None:
    assert asked({NAME: said}) == names


def test_nothing_is_asked_for_where_it_is_not_set() -> None:
    assert asked({}) == []


@pytest.mark.parametrize("said", ["Firefox", "firefox;webkit", "safari", "firefox,webkitgtk", "1"])
def test_a_name_that_there_is_not_is_an_error_and_not_a_quiet_pass(said: str) -> None:
    with pytest.raises(ValueError, match=NAME):
        asked({NAME: said})


def test_what_is_skipped_says_why(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(NEEDS, "firefox", {"firefox-esr": lambda: False, "xvfb": lambda: True})
    assert lacking("firefox", {}) == f"{NAME} does not name firefox"
    assert lacking("firefox", {NAME: "firefox"}) == "firefox needs Debian's firefox-esr"
    monkeypatch.setitem(NEEDS, "firefox", {"firefox-esr": lambda: True})
    assert lacking("firefox", {NAME: "firefox"}) == ""


def test_there_is_a_phone_for_each_name() -> None:
    assert list(NEEDS) == list(PHONES)
