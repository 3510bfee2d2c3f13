from fractions import Fraction

import pytest

from webapp.core.setting import setting
from webapp.core.sheet import figure
from webapp.core.tool import Field, InputErrors, Tool
from webapp.core.working import check_field, unknown_fields, work
from webapp.units import FACTORS


def echo(values, how):
    if values.get("pick") == "clash":
        raise InputErrors({"many": "These do not go together."})
    said = {name: value for name, value in values.items() if name != "long"}
    return {"own": [1], "notes": [], "answer": figure("said", "Said", str(said)), "sums": [str(values["long"])]}


ECHO = Tool(
    name="echo",
    title="Echo",
    about="Says what it was told.",
    fields=(
        Field("long", "Long", "length", required=True),
        Field("many", "Many", "count"),
        Field("wide", "Wide", "widths"),
        Field("pick", "Pick", "choice", default=("a", "b"), choices=(("a", "A"), ("b", "B"), ("clash", "C"))),
        Field("fit", "Fit", "length", default=("1/64", "0.5"), sign="zero"),
    ),
    work=echo,
)


def test_a_sheet_has_its_keys_in_the_order_of_the_contract_and_nothing_empty():
    sheet = work(ECHO, {"graduation": "1/16", "many": " 3 ", "long": "\t17 3/8 ", "wide": " "}, FACTORS)["sheet"]
    assert list(sheet) == ["format", "tool", "inputs", "unit", "graduation", "answer", "sums", "own"]
    assert list(sheet["inputs"].items()) == [("long", "17 3/8"), ("many", "3")]
    assert (sheet["format"], sheet["tool"], sheet["unit"], sheet["graduation"]) == (1, "echo", "in", "1/16")
    assert sheet["sums"] == ["139/8"]


@pytest.mark.parametrize(("unit", "pick", "fit"), [("in", "a", Fraction(1, 64)), ("mm", "b", FACTORS["mm"] / 2)])
def test_a_default_has_a_value_for_each_system(unit, pick, fit):
    sheet = work(ECHO, {"long": "20", "unit": unit}, FACTORS)["sheet"]
    assert sheet["answer"]["value"] == str({"pick": pick, "fit": fit})
    assert sheet["inputs"] == {"long": "20"}


def test_every_field_that_does_not_read_has_its_error_in_declared_order():
    errors = work(ECHO, {"pick": "c", "fit": "2 - 3", "many": "0", "wide": "-", "long": ""}, FACTORS)["errors"]
    assert list(errors) == ["long", "many", "wide", "pick", "fit"]
    assert errors["pick"] == "This is a, b or clash."
    assert all(errors.values())


def test_checks_across_fields_wait_until_every_field_reads():
    clash = {"long": "2", "pick": "clash"}
    assert work(ECHO, clash, FACTORS) == {"errors": {"many": "These do not go together."}}
    assert list(work(ECHO, {**clash, "fit": "x"}, FACTORS)["errors"]) == ["fit"]


@pytest.mark.parametrize(
    ("typed", "field"),
    [
        ({"unit": "ell"}, "unit"),
        ({"graduation": "1/10"}, "graduation"),
        ({"unit": "mm", "graduation": "1/8"}, "graduation"),
    ],
)
def test_a_setting_that_is_not_had_is_an_error_at_its_field(typed, field):
    assert list(work(ECHO, {"long": "2", **typed}, FACTORS)["errors"]) == [field]


def test_an_error_says_the_place_in_the_text():
    assert work(ECHO, {"long": "17 3/0"}, FACTORS)["errors"]["long"].endswith("(At character 6.)")


@pytest.mark.parametrize(
    ("name", "text", "wrong"),
    [
        ("long", "17 3/8", False),
        ("long", " ", False),
        ("long", "0", True),
        ("fit", "0", False),
        ("pick", "c", True),
        ("pick", "b", False),
        ("none", "x", False),
    ],
)
def test_a_field_that_is_left_is_checked_by_itself(name, text, wrong):
    assert bool(check_field(ECHO, name, text, setting("in", "", FACTORS))) == wrong


def test_a_name_that_is_no_field_is_an_error_that_gives_the_fields():
    errors = unknown_fields(ECHO, {"long": "2", "unit": "in", "graduation": "", "lenght": "2"})
    assert errors == {"lenght": "echo has no field of this name; it has long, many, wide, pick, fit, unit, graduation."}
    assert "sheet" in work(ECHO, {"long": "2", "lenght": "2"}, FACTORS)
