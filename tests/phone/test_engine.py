"""The harness itself: that it runs the real core, and that it would notice a difference."""

from fractions import Fraction

import pytest

from tests.engine import Engine, Raised

pytestmark = pytest.mark.browser


def test_a_call_gives_what_cpython_gives(engine: Engine) -> None:
    assert engine.call("mark", "exact", Fraction(43, 24)) == "43/24"


def test_an_error_arrives_with_its_name_and_attributes(engine: Engine) -> None:
    with pytest.raises(Raised) as found:
        engine.call("setting", "setting", "ell", "", {"in": Fraction(1), "mm": Fraction(5, 127)})
    assert (found.value.name, found.value.has["field"]) == ("SettingError", "unit")


def test_a_difference_is_noticed(engine: Engine, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("webapp.core.setting.one_of", " or ".join)
    with pytest.raises(AssertionError, match="the phone"):
        engine.check([("setting", "one_of", (["a", "b", "c"],))])
