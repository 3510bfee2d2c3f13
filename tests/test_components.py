"""What the program runs on is listed, with its versions; what is missing, too old or long not looked at is said."""

from datetime import date, timedelta

import pytest
from packaging.requirements import Requirement

from tests import components
from tests.components import LOOK_AGAIN, Component, asked, due, line, main


def test_every_component_is_installed_as_pyproject_and_the_others_ask() -> None:
    found = components.components(asked())
    assert [line(each, {}) for each in found if not each.fine] == []
    assert {components.plain(each.name) for each in asked()} < {each.name for each in found}


def test_each_of_ours_has_a_version_below_which_it_is_not_taken() -> None:
    assert [str(each) for each in asked() if not any(part.operator == ">=" for part in each.specifier)] == []


@pytest.mark.parametrize(
    ("version", "wanted", "said"),
    [("1.0", "x>=1", ""), ("0.9", "x>=1", "NOT >=1"), ("", "x", "NOT installed"), ("1.0", "x==1.1", "NOT ==1.1")],
)
def test_what_is_missing_or_too_old_is_said(version: str, wanted: str, said: str) -> None:
    each = Component("x", version, "pyproject.toml", Requirement(wanted))
    assert each.fine == (said == "")
    assert line(each, {}).endswith(said or "for pyproject.toml")
    assert line(each, {"x": "9.9"}).endswith("newer: 9.9")


def test_the_list_is_due_half_a_year_after_it_was_looked_at() -> None:
    looked = date(2026, 1, 1)
    assert not due(looked + LOOK_AGAIN, looked)
    assert due(looked + LOOK_AGAIN + timedelta(days=1), looked)


def test_the_command_says_what_is_wrong(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    monkeypatch.setattr(components, "asked", lambda: [Requirement("click>=8"), Requirement("no-such-component>=1")])
    monkeypatch.setattr(components, "newer", lambda: {"click": "99"})
    assert main(["--newer"]) == 1
    said = capsys.readouterr().out
    assert "no-such-component        missing      for pyproject.toml  NOT >=1" in said
    assert "newer: 99" in said
