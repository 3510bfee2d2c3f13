"""Moisture, temperature and minutes: plain numbers, with errors of their own."""

import pytest

from tests.core.test_entries import Bench, checked, errors


@pytest.mark.parametrize(
    ("quantity", "text", "value", "unit"),
    [
        ("moisture", "8.5", "17/2", "%"),
        ("moisture", "8 %", "8", "%"),
        ("temperature", "68", "68", "F"),
        ("temperature", "20 \u00b0C", "20", "C"),
        ("temperature", "-4f", "-4", "F"),
        ("time", "90", "90", "min"),
        ("time", "90 Minutes", "90", "min"),
    ],
)
def test_a_number_is_kept_with_its_unit(quantity, text, value, unit):
    bench = Bench()
    body = bench.draft("condition", place="Upper rail", quantity=quantity, text=text)["body"]
    assert body == {"place": "Upper rail", "quantity": quantity, "text": text, "value": value, "unit": unit}
    bench.keep("condition", place="Upper rail", quantity=quantity, text=text)
    assert bench.summary["conditions"][0]["heads"][0]["value"] == value


def test_a_comma_is_a_decimal_sign_in_a_metric_project_and_celsius_its_unit():
    bench = Bench()
    assert errors(bench.draft("condition", place="a", quantity="moisture", text="8,5")) == {
        "text": "Write it with a point: 8.5."
    }
    bench.keep("settings", unit="mm")
    assert bench.draft("condition", place="a", quantity="moisture", text="8,5")["body"]["value"] == "17/2"
    assert bench.draft("condition", place="a", quantity="temperature", text="20,5")["body"]["unit"] == "C"


def test_the_newer_stands_for_its_place_and_quantity():
    bench = Bench()
    first = bench.keep("condition", place="Upper rail", quantity="moisture", text="9")
    bench.keep("condition", place="Upper rail", quantity="temperature", text="68")
    again = bench.draft("condition", place="upper  rail", quantity="moisture", text="8")
    assert again["replaces"] == [first]


@pytest.mark.parametrize(
    ("typed", "fields"),
    [
        ({"place": "", "quantity": "moisture", "text": "8"}, ["place"]),
        ({"place": "a", "quantity": "length", "text": "8"}, ["quantity"]),
        ({"place": "", "quantity": "moisture", "text": "x"}, ["place", "text"]),
        ({"place": "a", "quantity": "moisture", "text": ""}, ["text"]),
        ({"place": "a", "quantity": "moisture", "text": "8.5.1"}, ["text"]),
        ({"place": "a", "quantity": "moisture", "text": "8."}, ["text"]),
        ({"place": "a", "quantity": "moisture", "text": "8 F"}, ["text"]),
        ({"place": "a", "quantity": "moisture", "text": "301"}, ["text"]),
        ({"place": "a", "quantity": "moisture", "text": "-1"}, ["text"]),
        ({"place": "a", "quantity": "time", "text": "1" * 21}, ["text"]),
        ({"place": "a", "quantity": "temperature", "text": "\u0663"}, ["text"]),
    ],
)
def test_what_is_wrong_with_a_number_stands_at_its_field(typed, fields):
    assert list(errors(Bench().draft("condition", **typed))) == fields


@pytest.mark.parametrize("change", [{"value": "8"}, {"value": "8.5"}, {"unit": "F"}, {"text": "x"}, {"place": ""}])
def test_a_condition_that_does_not_say_what_it_holds_is_not_kept(change):
    bench = Bench()
    bench.keep("condition", place="a", quantity="moisture", text="8.5")
    entry = bench.history.entries[-1]
    assert checked(entry) == ""
    assert checked({**entry, "body": {**entry["body"], **change}}) != ""
