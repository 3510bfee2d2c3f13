"""Marks and strips as they are drawn."""

import re
from fractions import Fraction
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from webapp.core.drawing import EDGE, MARGIN, NICK, WIDTH, mark_view, strip_view
from webapp.core.mark import mark
from webapp.core.mark_shape import is_mark
from webapp.core.setting import setting
from webapp.units import FACTORS

HUNDREDTH = Fraction(1, 100)
BOX = re.compile(r"M([0-9.]+) 10h([0-9.]+)v36h-([0-9.]+)z")
NICKS = re.compile(r"M([0-9.]+) ")


@pytest.mark.parametrize(
    ("text", "drawn"),
    [
        ("1 25/32 strong", {"whole": "1", "top": "25", "bottom": "32", "lean": "strong", "minus": ""}),
        ("-1/16 strong", {"minus": "-", "whole": "", "top": "1", "bottom": "16", "lean": "strong"}),
        ("5' 2 3/16\"", {"feet": "5", "whole": "2", "top": "3", "bottom": "16", "inch": '"', "lean": ""}),
        ("5' 0\"", {"feet": "5", "whole": "0", "top": "", "inch": '"'}),
        ("45.0 scant", {"whole": "45.0", "top": "", "lean": "scant", "inch": ""}),
        ("a hair", {"hair": True, "whole": "", "top": "", "spoken": "a hair"}),
        ("0", {"whole": "0", "top": "", "lean": ""}),
    ],
)
def test_a_mark_is_drawn_in_its_parts(text: str, drawn: dict[str, str]) -> None:
    view = mark_view(text)
    assert not view["plain"]
    assert {name: view[name] for name in drawn} == drawn


@pytest.mark.parametrize(
    "text",
    ["17 3/8+", "58 3/8 + 2", "seventeen and eleven sixteenths", "5' 200 mm", "3/4/5", "strong", "", " ", "/", "1¾",
     "5\" 3/8", "17  3/8", "1.2.3", "3/", "'", "-", "٣", "2 3/8 1/2", "17 3/8 full"],
)  # fmt: skip
def test_what_is_not_worded_as_a_mark_is_drawn_as_it_was_said(text: str) -> None:
    assert mark_view(text) == {"text": text, "plain": True, "long": len(text) > 6}


@given(
    st.fractions(min_value=-2000, max_value=2000, max_denominator=4096),
    st.sampled_from([("in", "1/32"), ("ft", "1/64"), ("mm", "0.5 mm"), ("mm", "1 mm"), ("in", "1/8")]),
)
def test_every_mark_has_the_shape_of_one(x: Fraction, said: tuple[str, str]) -> None:
    text = mark(x, setting(*said, FACTORS))
    assert is_mark(text)
    view = mark_view(text)
    fraction = f"{view['top']}/{view['bottom']}" if view["top"] else ""
    feet = f"{view['feet']}'" if view["feet"] else ""
    number = " ".join(word for word in (feet, view["whole"], fraction) if word) or "a hair"
    assert f"{view['minus']}{number}{view['inch']}{' ' if view['lean'] else ''}{view['lean']}" == text


@given(st.text("0123456789 /.'\"-stronga hircx", max_size=12))
def test_no_text_stops_the_drawing(text: str) -> None:
    assert mark_view(text)["text"] == text


def at(x: Fraction) -> dict[str, str]:
    return {"inches": str(x), "mark": str(x), "mm": ""}


def row(count: int, offset: Fraction = Fraction(0)) -> dict[str, Any]:
    """A row of slats of 2 3/4 with a gap at both ends in 58 3/8."""
    length, slat = Fraction(467, 8), Fraction(11, 4) * 9 / count
    gap = (length - count * slat) / (count + 1)
    lefts = [gap + i * (gap + slat) for i in range(count)]
    spans = []
    for i, left in enumerate(lefts):
        spans.append({"from": at(left - gap), "to": at(left), "label": "", "kind": "air"})
        spans.append({"from": at(left), "to": at(left + slat), "label": f"Slat {i + 1}", "kind": "wood"})
    spans.append({"from": at(length - gap), "to": at(length), "label": "", "kind": "air"})
    ticks = [{"at": at(left), "label": str(i + 1)} for i, left in enumerate(lefts)]
    return {"label": f"{count} slats", "length": at(length), "spans": spans, "ticks": ticks}


def placed(strip: dict[str, Any], x: str) -> Fraction:
    length = Fraction(strip["length"]["inches"])
    return MARGIN + Fraction(x) * (WIDTH - 2 * MARGIN) / length


@pytest.mark.parametrize("count", [1, 2, 9, 40, 1000])
def test_the_strip_keeps_true_proportions(count: int) -> None:
    strip = row(count)
    view = strip_view(strip)
    wood = [span for span in strip["spans"] if span["kind"] == "wood"]
    (shape,) = view["shapes"]
    boxes = BOX.findall(shape["d"])
    assert (shape["kind"], len(boxes), len(wood)) == ("wood" if count < 40 else "wood thin", count, count)
    for (x, width, back), span in zip(boxes, wood, strict=True):
        left, right = placed(strip, span["from"]["inches"]), placed(strip, span["to"]["inches"])
        assert abs(Fraction(x) - left) <= HUNDREDTH / 2
        assert abs(Fraction(x) + Fraction(width) - right) <= HUNDREDTH / 2
        assert width == back


@pytest.mark.parametrize("count", [1, 9, 40, 1000])
def test_ticks_are_thinned_when_crowded_and_never_moved(count: int) -> None:
    strip = row(count)
    view = strip_view(strip)
    exact = {tick["label"]: placed(strip, tick["at"]["inches"]) for tick in strip["ticks"]}
    points = [Fraction(x) for x in NICKS.findall(view["nicks"])]
    assert all(min(abs(point - place) for place in exact.values()) <= HUNDREDTH / 2 for point in points)
    assert all(b - a >= NICK for a, b in pairwise(points))
    assert all(abs(Fraction(label["x"]) - exact[label["text"]]) <= HUNDREDTH / 2 for label in view["labels"])
    assert (len(points) == count) == (count < 50)
    assert view["labels"][0]["text"] == "1"


def test_a_crowded_strip_says_so() -> None:
    assert [strip_view(row(count))["crowded"] for count in (9, 30, 60, 1000)] == [False, False, True, True]


def test_what_is_too_thin_for_an_outline_is_a_shape_of_its_own() -> None:
    """A blank of 3 1/2 with a pass of 1/32 over it: the blank keeps its hatch."""
    blank, whole = at(Fraction(7, 2)), at(Fraction(113, 32))
    spans = [{"from": at(Fraction(0)), "to": blank, "kind": "wood"}, {"from": blank, "to": whole, "kind": "waste"}]
    view = strip_view({"label": "", "length": whole, "spans": spans, "ticks": []})
    assert [(shape["kind"], shape["fill"]) for shape in view["shapes"]] == [
        ("wood", "url(#hatch)"),
        ("waste thin", "none"),
    ]


def test_labels_do_not_touch() -> None:
    labels = strip_view(row(200))["labels"]
    edges = [
        (Fraction(label["x"]) - 3 * len(label["text"]), Fraction(label["x"]) + 3 * len(label["text"]))
        for label in labels
    ]
    assert len(labels) > 10
    assert all(right < left for (_, right), (left, _) in pairwise(edges))


def test_every_place_is_text_with_two_decimals() -> None:
    view = strip_view(row(9))
    texts = re.findall(r"[0-9.]+", view["shapes"][0]["d"] + view["nicks"])
    decimals = [text.split(".")[1] for text in texts if "." in text]
    assert len(decimals) == 27 + 27
    assert {len(part) for part in decimals} == {2}
    assert view["edge"] == f"M{MARGIN} {EDGE}H{WIDTH - MARGIN}"


@pytest.mark.parametrize(("place", "x"), [(Fraction(1, 200), "8.01"), (Fraction(-1), "7.00"), (Fraction(-9), "-1.00")])
def test_places_are_rounded_half_to_the_right(place: Fraction, x: str) -> None:
    whole = at(Fraction(WIDTH - 2 * MARGIN))
    view = strip_view({"label": "", "length": whole, "spans": [], "ticks": [{"at": at(place), "label": "a"}]})
    assert view["labels"][0]["x"] == x
