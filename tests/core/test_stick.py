from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from webapp.core.stick import TOOL
from webapp.core.working import work
from webapp.units import FACTORS

places = st.lists(st.fractions(min_value=0, max_value=100, max_denominator=64), min_size=1, max_size=30, unique=True)


def inches(found: dict) -> Fraction:
    return Fraction(found["inches"])


@given(places)
def test_the_distances_between_neighbours_fill_the_stick(found):
    marks = "\n".join(f"m{i}: {place} in" for i, place in enumerate(found))
    sheet = work(TOOL, {"marks": marks, "length": "100 in"}, FACTORS)["sheet"]
    between = [f for f in sheet["figures"] if not f["key"].startswith("far")]
    assert sum((inches(f["value"]) for f in between), Fraction(0)) == 100
    at = [inches(mark["at"]) for mark in sheet["marks"]]
    assert at == sorted(found)
    far = {f["key"].removeprefix("far-"): inches(f["value"]) for f in sheet["figures"] if f["key"].startswith("far")}
    assert all(far[m["key"].removeprefix("mark-")] + inches(m["at"]) == 100 for m in sheet["marks"])


@given(places)
def test_the_order_in_which_marks_are_said_moves_none(found):
    def said(order):
        marks = "\n".join(f"at {place}: {place} in" for place in order)
        return work(TOOL, {"marks": marks, "length": "100 in"}, FACTORS)["sheet"]

    one, other = said(found), said(list(reversed(found)))
    assert [(m["label"], m["at"]) for m in one["marks"]] == [(m["label"], m["at"]) for m in other["marks"]]
