"""Where the core meets what is around it: plain data in and out, and JSON to the character."""

import json
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.engine import Engine, plain

pytestmark = pytest.mark.browser

TO_PYTHON = """async (values) => {
    const $ = await import("/static/engine/python.js");
    const { written } = await import("/static/engine/engine.js");
    return values.map((value) => JSON.stringify(written($.toPython(value))));
}"""
THERE_AND_BACK = """async (values) => {
    const $ = await import("/static/engine/python.js");
    return values.map((value) => [JSON.stringify(value), JSON.stringify($.fromPython($.toPython(value)))]);
}"""
JSON = """async (values) => {
    const $ = await import("/static/engine/python.js");
    const engine = await import("/static/engine/engine.js");
    const found = [];
    for (const value of JSON.parse(values)) found.push($.json(await engine.taken(value, "")));
    return found;
}"""

texts = st.text(st.characters(exclude_categories=["Cs"]), max_size=6)
atoms = st.one_of(st.none(), st.booleans(), st.integers(-(2**53) + 1, 2**53 - 1), texts)
data = st.recursive(
    atoms, lambda inner: st.one_of(st.lists(inner, max_size=3), st.dictionaries(texts, inner, max_size=3))
)
# More than JSON can hold as it is: any int, tuples, keys that are ints or None.
keys = st.one_of(texts, st.integers(), st.none())
values = st.recursive(
    st.one_of(atoms, st.integers(-(2**80), 2**80)),
    lambda inner: st.one_of(
        st.lists(inner, max_size=3), st.lists(inner, max_size=3).map(tuple), st.dictionaries(keys, inner, max_size=3)
    ),
)
bulk = settings(max_examples=10, suppress_health_check=list(HealthCheck))


@bulk
@given(st.lists(values, min_size=30, max_size=30))
def test_json_has_the_characters_that_python_writes(engine: Engine, drawn: list[Any]) -> None:
    here = [json.dumps(value, ensure_ascii=False, separators=(",", ":")) for value in drawn]
    assert engine.run(JSON, json.dumps([plain(value) for value in drawn])) == here


@bulk
@given(st.lists(data, min_size=30, max_size=30))
def test_plain_data_arrives_as_python_has_it(engine: Engine, drawn: list[Any]) -> None:
    there = [json.loads(text) for text in engine.run(TO_PYTHON, drawn)]
    assert [in_order(value) for value in there] == [in_order(plain(value)) for value in drawn]


def in_order(value: Any) -> Any:
    """Forget the order of keys: JavaScript puts keys that look like numbers first before the core sees them."""
    if isinstance(value, list):
        return [in_order(item) for item in value]
    if isinstance(value, dict) and "dict" in value:
        return {"dict": sorted(([key, in_order(item)] for key, item in value["dict"]), key=lambda pair: pair[0])}
    return value


@bulk
@given(st.lists(data, min_size=30, max_size=30))
def test_plain_data_comes_back_as_it_was(engine: Engine, drawn: list[Any]) -> None:
    for before, after in engine.run(THERE_AND_BACK, drawn):
        assert after == before


@pytest.mark.parametrize("value", ["0.5", "NaN", "Infinity", "2 ** 60", "new Fraction(1, 2)", "() => 1"])
def test_what_json_cannot_say_is_no_json(engine: Engine, value: str) -> None:
    script = f"""async () => {{
        const $ = await import("/static/engine/python.js");
        const {{ Fraction }} = await import("/static/engine/fraction.js");
        try {{ return $.json({value}); }} catch (error) {{ return error.constructor.name; }}
    }}"""
    assert engine.run(script) in ("Outside", "TypeError")


def test_nothing_and_what_is_not_there_arrive_as_none(engine: Engine) -> None:
    script = """async () => {
        const $ = await import("/static/engine/python.js");
        return $.json($.toPython([undefined, null, { a: undefined, b: null }]));
    }"""
    assert engine.run(script) == '[null,null,{"b":null}]'
