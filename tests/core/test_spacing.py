from fractions import Fraction
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from tests.vectors.look import look
from webapp.core.mark import mark
from webapp.core.setting import Setting, setting
from webapp.core.spacing import TOOL
from webapp.core.spacing_said import LEAST, shares
from webapp.core.sums import amount
from webapp.core.working import work
from webapp.units import FACTORS

lengths = st.fractions(min_value=Fraction(1, 16), max_value=120, max_denominator=96)
said_in = st.sampled_from([("in", "1/8"), ("in", "1/64"), ("ft", "1/16"), ("mm", "1 mm"), ("mm", "0.5 mm")])
ends = st.sampled_from(list(LEAST))


def typed(**fields: Any) -> dict[str, str]:
    return {name: f"{value} in" if isinstance(value, Fraction) else str(value) for name, value in fields.items()}


def worked(**fields: Any) -> Any:
    return work(TOOL, typed(**fields), FACTORS)


def inches(found: Any) -> Fraction:
    return Fraction(found["inches"])


def exact_spans(strip: Any, kind: str) -> Fraction:
    return sum((inches(s["to"]) - inches(s["from"]) for s in strip["spans"] if s["kind"] == kind), Fraction(0))


@st.composite
def rows(draw, at=ends):
    """Good input: slats that leave a gap, at whichever ends."""
    how = draw(at)
    count = draw(st.integers(LEAST[how], 30))
    widths = draw(st.lists(lengths, min_size=1, max_size=4))
    margin = draw(lengths) if how == "margin" else Fraction(0)
    wood = sum((widths[i % len(widths)] for i in range(count)), Fraction(0))
    air = draw(lengths) * shares(how, count)
    unit, graduation = draw(said_in)
    fields = {"span": wood + air + 2 * margin, "slat": "; ".join(f"{w} in" for w in widths), "count": count}
    extra = {"margin": margin} if how == "margin" else {}
    offset = {"offset": draw(lengths)} if draw(st.booleans()) else {}
    return {**fields, **extra, **offset, "ends": how, "unit": unit, "graduation": graduation}


@given(rows())
def test_slats_and_gaps_fill_the_span(fields):
    sheet = worked(**fields)["sheet"]
    wood = sum((inches(slat["width"]) for slat in sheet["slats"]), Fraction(0))
    assert wood + sum(map(inches, sheet["gaps"]), Fraction(0)) == fields["span"]
    for strip in sheet["strips"]:
        assert exact_spans(strip, "wood") + exact_spans(strip, "air") == fields["span"]
        places = [(inches(span["from"]), inches(span["to"])) for span in strip["spans"]]
        assert all(before[1] == after[0] for before, after in pairwise(places))
        assert places[0][0] == 0
        assert places[-1][1] == inches(strip["length"])


@given(rows())
def test_the_sheet_reads_the_same_from_either_way_of_adding_up(fields):
    """Places run along by whole numbers; worked one by one from rule 2 they are the same."""
    sheet = worked(**fields)["sheet"]
    gap, lead = inches(sheet["answer"]["value"]), Fraction(0)
    if fields["ends"] != "slat":
        lead = inches(sheet["gaps"][0])
    widths = [inches(slat["width"]) for slat in sheet["slats"]]
    start = fields.get("offset", Fraction(0)) + lead
    for i, slat in enumerate(sheet["slats"]):
        left = start + sum(widths[:i], Fraction(0)) + i * gap
        assert (inches(slat["left"]), inches(slat["right"])) == (left, left + widths[i])
        assert slat["left"]["mark"] == mark(left, setting(fields["unit"], fields["graduation"], FACTORS))


def size_of(text: str, how: Setting) -> Fraction:
    """Read the number of a mark, without its lean, by the test's own means."""
    inches_text = text.replace(" strong", "").replace(" scant", "").replace('"', "")
    feet, _, rest = inches_text.rpartition("'")
    number = sum((Fraction(part) for part in rest.split()), Fraction(0)) + 12 * Fraction(feet or 0)
    return number * FACTORS["mm"] if how.metric else number


@given(rows())
def test_no_mark_is_off_by_more_than_half_a_graduation(fields):
    how = setting(fields["unit"], fields["graduation"], FACTORS)
    for place in worked(**fields)["sheet"]["marks"]:
        if place["at"]["mark"] != "a hair":
            off = abs(size_of(place["at"]["mark"], how) - inches(place["at"]))
            assert off <= how.division / 2


@given(rows())
def test_a_neighbouring_count_is_what_that_count_gives(fields):
    sheet = worked(**fields)["sheet"]
    n, how = fields["count"], setting(fields["unit"], fields["graduation"], FACTORS)
    counts = [other["count"] for other in sheet.get("alternatives", [])]
    possible = [k for k in range(max(1, n - 3), n + 4) if "sheet" in worked(**{**fields, "count": k})]
    assert counts == [k for k in possible if n - 2 <= k < n] + [k for k in possible if n < k <= n + 2]
    for other, strip in zip(sheet.get("alternatives", []), sheet["strips"][1:], strict=True):
        there = worked(**{**fields, "count": other["count"]})["sheet"]
        assert other["gap"] == there["answer"]["value"]
        assert strip["spans"] == there["strips"][0]["spans"]
        assert f"gap {amount(inches(other['gap']), how)}" in strip["label"]


@given(lengths, lengths, st.sampled_from(["gap", "slat", "half"]))
def test_a_slat_alone_takes_the_nearest_count_and_more_slats_in_a_tie(width, span, how):
    found = worked(span=span, slat=width, ends=how)
    gaps = {}
    for n in range(LEAST[how], 1001):
        gap = (span - n * width) / shares(how, n)
        if gap <= 0:
            break
        gaps[n] = abs(gap - width)
    if not gaps:
        assert list(found["errors"]) == ["slat" if LEAST[how] == 1 else "ends"]
        return
    best = min(gaps, key=lambda n: (gaps[n], -n))
    assert look(found["sheet"], "figures.count.value") == str(best)


@given(rows(), st.fractions(min_value=-2, max_value=2, max_denominator=64))
def test_all_three_close_within_half_a_graduation_a_slat(fields, share):
    n, how = fields["count"], setting(fields["unit"], fields["graduation"], FACTORS)
    true = inches(worked(**fields)["sheet"]["answer"]["value"])
    over = share * n * how.division / 2
    said = true + over / shares(fields["ends"], n)
    assume(said > 0)
    found = worked(**fields, gap=said)
    if abs(share) <= 1:
        assert inches(found["sheet"]["answer"]["value"]) == true
        figures = [figure for figure in found["sheet"]["figures"] if figure["key"] == "over"]
        assert [inches(figure["value"]) for figure in figures] == ([-over] if over else [])
    else:
        assert list(found["errors"]) == ["margin" if fields["ends"] == "margin" else "gap"]


@given(rows(st.just("margin")))
def test_a_solved_margin_comes_back_as_the_gap_it_came_from(fields):
    gap = inches(worked(**fields)["sheet"]["answer"]["value"])
    open_margin = {name: value for name, value in fields.items() if name != "margin"}
    sheet = worked(**open_margin, gap=gap)["sheet"]
    assert Fraction(look(sheet, "figures.margin.value.inches")) == fields["margin"]


def test_mortises_lie_an_edge_shoulder_within_their_slats():
    sheet = worked(span=30, slat="2 1/2", count=7, shoulder="3/8")["sheet"]
    for slat in sheet["slats"]:
        assert inches(slat["mortise_left"]) - inches(slat["left"]) == Fraction(3, 8)
        assert inches(slat["right"]) - inches(slat["mortise_right"]) == Fraction(3, 8)
    assert [place["key"] for place in sheet["marks"]][:5] == [
        "slat-1-left",
        "mortise-1-left",
        "mortise-1-right",
        "slat-1-right",
        "slat-2-left",
    ]


def test_marks_stand_in_the_order_in_which_the_rule_meets_them():
    sheet = worked(span=58, slat="2; 3", count=9, shoulder="1/4", offset="1 1/2")["sheet"]
    places = [inches(place["at"]) for place in sheet["marks"]]
    assert places == sorted(places)
    assert len({place["key"] for place in sheet["marks"]}) == len(places) == 36


@pytest.mark.parametrize(("span", "warned"), [("120 mm", False), ("120.02 mm", True)])
def test_a_gap_over_60_mm_is_said_to_be_no_cots(span, warned):
    # 16 CFR 1508.4, as carried into 16 CFR 1219: 60 mm at most; here the one slat of 20 leaves two gaps.
    sheet = worked(span=f"20 mm + {span}", slat="20 mm", count=1)["sheet"]
    assert any("16 CFR 1508.4" in caution for caution in sheet["cautions"])
    assert any("not for a cot" in caution for caution in sheet["cautions"]) == warned


def test_a_thousand_slats_are_worked_and_a_thousand_and_one_refused():
    sheet = worked(span=3000, slat="2", count=1000)["sheet"]
    assert len(sheet["slats"]) == 1000
    assert [other["count"] for other in sheet["alternatives"]] == [998, 999]
    assert list(worked(span=3000, slat="2", count=1001)["errors"]) == ["count"]
