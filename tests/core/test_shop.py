"""What belongs to the shop: said once in a project, it stands for the blank fields of every tool."""

from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.core.histories import History
from tests.trial import TOOL
from webapp.core import entries, fold
from webapp.core.mark import mark
from webapp.core.reading import read
from webapp.core.setting import GRADUATIONS, setting
from webapp.core.shop import called, shop_fields
from webapp.core.tool import Field, Tool
from webapp.core.view_stands import project_stands
from webapp.core.view_tool import spoken_in, tool_view
from webapp.core.working import work
from webapp.tools import TOOLS
from webapp.units import FACTORS

LENGTH = Field("least", "Least width", "length", shop=True)
OTHER = Tool("other", "Other", "Another.", (Field("least", "Mine", "length", shop=True),), lambda values, how: {})
ALL = {"trial": TOOL, "other": OTHER}
SPOKEN = [(unit, graduation) for unit, names in GRADUATIONS.items() for graduation in names]


class Bench:
    """A project whose settings are changed by what a maker types."""

    def __init__(self, unit: str = "in", graduation: str = "1/32") -> None:
        self.history = History()
        self.history.project(unit=unit, graduation=graduation)

    @property
    def summary(self) -> dict[str, Any]:
        return fold.summary_of(self.history.entries)

    def draft(self, **typed: str) -> dict[str, Any]:
        return entries.draft("settings", typed, self.summary, ALL, FACTORS)

    def change(self, **typed: str) -> dict[str, Any]:
        drafted = self.draft(**typed)
        assert "errors" not in drafted, drafted
        self.history.add("settings", drafted["body"])
        assert entries.check(self.history.entries[-1], ALL, FACTORS) == ""
        return self.summary

    def gathered(self) -> dict[str, Any]:
        return {"project": self.summary, "projects": [], "tool": TOOL, "tools": [TOOL], "factors": FACTORS}


def said(text: str, unit: str = "in", graduation: str = "1/32") -> dict[str, str]:
    return {"text": text, "unit": unit, "graduation": graduation}


def test_each_name_is_a_setting_once_as_the_first_tool_declares_it() -> None:
    assert [(f.name, f.label) for f in shop_fields([TOOL, OTHER])] == [
        ("least", "Least width"),
        ("turn", "One turn of the wheel"),
    ]
    names = [field.name for field in shop_fields(list(TOOLS.values()))]
    assert len(names) == len(set(names))


def test_a_field_of_the_shop_is_remembered_as_it_was_said() -> None:
    bench = Bench()
    assert bench.change(**{"shop-least": " 2 1/2 "})["shop"] == {"least": said("2 1/2")}
    assert bench.change(**{"shop-turn": "1/16", "name": "Settle"})["shop"] == {
        "least": said("2 1/2"),
        "turn": said("1/16"),
    }
    assert [sorted(change) for change in bench.summary["settings"]] == [
        ["by", "entry", "made_at", "sent", "shop"],
        ["by", "entry", "made_at", "name", "sent", "shop"],
    ]


def test_blank_leaves_it_as_it_is_and_none_forgets_it() -> None:
    bench = Bench()
    bench.change(**{"shop-least": "2", "shop-turn": "1/16"})
    assert bench.change(name="Settle", **{"shop-least": ""})["shop"]["least"] == said("2")
    assert list(bench.change(**{"shop-least": "None"})["shop"]) == ["turn"]


@pytest.mark.parametrize("typed", [{"shop-least": "2"}, {"shop-turn": "none"}, {}])
def test_what_stands_already_is_no_change(typed: dict[str, str]) -> None:
    bench = Bench()
    bench.change(**{"shop-least": "2"})
    assert bench.draft(**typed) == {"errors": {"name": "Nothing is changed here."}}


def test_a_text_that_no_tool_can_read_is_an_error_at_its_field() -> None:
    assert list(Bench().draft(**{"shop-least": "2 1/0", "shop-turn": "1/16"})["errors"]) == ["shop-least"]
    assert list(Bench("mm", "1 mm").draft(**{"shop-least": "2 1/2"})["errors"]) == ["shop-least"]


def test_the_last_one_said_wins_by_its_seq() -> None:
    bench = Bench()
    for text in ("2", "3"):
        bench.history.add("settings", {"shop": {"least": said(text)}})
    assert bench.summary["shop"]["least"]["text"] == "3"
    assert fold.summary_of(bench.history.entries[::-1])["shop"]["least"]["text"] == "3"


BAD_SHOPS = (
    {},
    [],
    "2",
    {"least": "2"},
    {"least": {"text": "2", "unit": "in"}},
    {"least": said("2", "cubit")},
    {"least": said("2", "mm", "1/32")},
    {"least": said("2 1/0")},
    {"least": said("x" * 81)},
    {"least": said("2\x00")},
    {"turn": said("none")},
)


@pytest.mark.parametrize("shop", BAD_SHOPS, ids=str)
def test_what_is_no_shop_is_refused(shop: Any) -> None:
    bench = Bench()
    bench.history.add("settings", {"shop": shop})
    assert entries.check(bench.history.entries[-1], ALL, FACTORS)


def test_a_field_that_only_a_newer_version_knows_is_kept_and_told() -> None:
    bench = Bench()
    bench.history.add("settings", {"shop": {"bend": said("any words")}})
    assert entries.check(bench.history.entries[-1], ALL, FACTORS) == ""
    assert bench.summary["shop"] == {"bend": said("any words")}
    assert tool_view({**bench.gathered(), "typed": {"planks": "5"}})["sheet"]


def test_it_stands_for_a_blank_field_and_is_in_the_sheets_inputs() -> None:
    bench = Bench()
    bench.change(**{"shop-least": "2 1/2"})
    typed = spoken_in(bench.gathered(), {"planks": "5", "least": " "})
    assert work(TOOL, typed, FACTORS)["sheet"]["inputs"] == {"planks": "5", "least": "2 1/2"}
    own = spoken_in(bench.gathered(), {"planks": "5", "least": "3"})
    assert work(TOOL, own, FACTORS)["sheet"]["inputs"]["least"] == "3"


def test_a_blank_form_stays_blank() -> None:
    bench = Bench()
    bench.change(**{"shop-least": "2 1/2"})
    assert tool_view({**bench.gathered(), "typed": {}})["blank"] is True


def test_it_keeps_its_size_when_the_project_goes_over_to_another_unit() -> None:
    bench = Bench()
    bench.change(**{"shop-least": "2 1/2"})
    bench.change(unit="mm")
    assert spoken_in(bench.gathered(), {"planks": "500"})["least"] == "5/2 in"
    assert bench.summary["shop"]["least"] == said("2 1/2")
    assert spoken_in(bench.gathered(), {"planks": "5", "unit": "in"})["least"] == "2 1/2"


def test_what_is_typed_beside_a_new_unit_is_said_in_that_unit() -> None:
    bench = Bench()
    bench.change(unit="mm", **{"shop-least": "60"})
    assert bench.summary["shop"]["least"] == said("60", "mm", "0.5 mm")


@given(st.sampled_from(SPOKEN), st.sampled_from(SPOKEN), st.integers(1, 4000))
def test_in_whichever_setting_it_is_called_it_means_what_was_said(
    then: tuple[str, str], now: tuple[str, str], parts: int
) -> None:
    how, today = setting(*then, FACTORS), setting(*now, FACTORS)
    text = mark(how.division * Fraction(parts, 4), how)
    assert read(called(LENGTH, said(text, *then), today), today) == read(text, how)
    assert called(LENGTH, said(text, *then), how) == text


def test_each_field_says_what_stands_for_it() -> None:
    bench = Bench()
    blank = tool_view({**bench.gathered(), "typed": {}})["stands"]
    assert blank == {"size": "", "keep": "", "least": "usually 1 in", "turn": ""}
    bench.change(**{"shop-least": "2 1/2"})
    assert tool_view({**bench.gathered(), "typed": {}})["stands"]["least"] == "2 1/2, your shop's"
    assert tool_view({**bench.gathered(), "typed": {"unit": "mm"}})["stands"]["least"] == "5/2 in, your shop's"
    assert tool_view({**bench.gathered(), "typed": {"unit": "x"}})["stands"] == {}
    assert project_stands(bench.summary, [TOOL], FACTORS) == {
        "settings-name": "Bed in ash",
        "settings-shop-least": "2 1/2",
        "settings-shop-turn": "",
    }
