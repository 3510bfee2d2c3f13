import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from webapp.core.mark import length
from webapp.core.setting import setting
from webapp.core.sheet import mark_at, sheet, span, strip, tick, to_json
from webapp.units import FACTORS

FEET = setting("ft", "", FACTORS)
text = st.text(st.characters(exclude_categories=["Cs"]))
documents = st.recursive(
    st.one_of(text, st.integers(), st.booleans()),
    lambda inner: st.one_of(st.lists(inner), st.dictionaries(text, inner)),
)


@given(documents)
def test_a_document_is_written_as_compact_json_with_its_characters_as_they_are(document):
    assert to_json(document) == json.dumps(document, ensure_ascii=False, separators=(",", ":"))


@pytest.mark.parametrize("code", range(32))
def test_every_control_character_is_escaped(code):
    document = {f"a{chr(code)}b": [f"{chr(code)}"]}
    assert json.loads(to_json(document)) == document
    assert chr(code) not in to_json(document)


def test_lengths_and_spans_are_written_as_any_other_object():
    start, end = length(FACTORS["ft"] * 5, FEET), length(FACTORS["ft"] * 6, FEET, FACTORS["in"] / 100)
    assert "graduation" in end
    document = strip('a "strip"', end, [span(start, end, 'slat "1"', "wood")], [tick(start, "1")])
    assert to_json(document) == json.dumps(document, ensure_ascii=False, separators=(",", ":"))


def test_what_only_looks_like_a_length_is_written_in_its_own_order():
    for document in ({"mm": "1", "a": 2, "b": 3}, {"from": 1, "to": 2, "x": 3, "kind": 4}, {"mm": "1"}):
        assert to_json(document) == json.dumps(document, separators=(",", ":"))


def test_a_sheet_keeps_the_contracts_order_and_leaves_out_what_is_empty():
    made = sheet({"tool": "x"}, {"slats": [1], "notes": ["n"], "marks": [], "answer": {"key": "k"}, "gaps": []})
    assert list(made.items()) == [
        ("format", 1),
        ("tool", "x"),
        ("answer", {"key": "k"}),
        ("notes", ["n"]),
        ("slats", [1]),
    ]


def test_a_number_of_the_tools_own_is_kept_though_it_is_0():
    assert list(sheet({}, {"full": 0, "none": ""}).items()) == [("format", 1), ("full", 0)]


def test_a_mark_is_at_a_length():
    assert mark_at("slat-1-left", "Slat 1, left", FACTORS["ft"], FEET) == {
        "key": "slat-1-left",
        "label": "Slat 1, left",
        "at": {"inches": "12", "mark": "1' 0\"", "mm": "304.80"},
    }
