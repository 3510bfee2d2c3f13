"""Numbers, texts, rows and comparisons drawn at random, worked in CPython and in the browser's engine."""

from fractions import Fraction
from typing import Any

import pytest
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st

from tests.engine import Call, Engine
from tests.static.twice import HEAD, agree, module, outcome, written
from webapp.phone.translate import translate

pytestmark = pytest.mark.browser

SOURCE = f"""{HEAD}
def arithmetic(a, b):
    return [tried(OPERATIONS[name], a, b) for name in OPERATIONS]

OPERATIONS = {{
    "+": lambda a, b: a + b, "-": lambda a, b: a - b, "*": lambda a, b: a * b, "//": lambda a, b: a // b,
    "%": lambda a, b: a % b, "divmod": lambda a, b: divmod(a, b), "over": lambda a, b: Fraction(a, b),
    "<": lambda a, b: a < b, "<=": lambda a, b: a <= b, ">": lambda a, b: a > b, ">=": lambda a, b: a >= b,
    "==": lambda a, b: a == b, "!=": lambda a, b: a != b, "-a": lambda a, b: -a, "abs": lambda a, b: abs(b),
    "int": lambda a, b: int(a), "str": lambda a, b: f"{{a}} {{b}}", "whole": lambda a, b: a // b * b + a % b == a,
}}

def tried(work, a, b):
    try:
        return work(a, b)
    except ZeroDivisionError:
        return "nothing over nothing"

def compared(a, b):
    return [said(lambda: a < b), said(lambda: a <= b), a == b, a != b, said(lambda: min(a, b)), said(lambda: a + b)]

def said(work):
    try:
        return work()
    except TypeError:
        return "no order"

def cut(row, low, high):
    return [row[low:high], row[low:], row[:high], said_at(row, low), said_at(row, high)]

def said_at(row, i):
    try:
        return row[i]
    except IndexError:
        return "not there"

def looked(text, part):
    out = [text.find(part), text.rfind(part), text.count(part), text.split(part), part in text]
    ends = [text.startswith(part), text.endswith(part), text.strip(part), text.lstrip(part), text.rstrip(part)]
    return [*out, *ends, text.replace(part, "<>"), len(text), [ord(c) for c in text], part < text, text * 2]

def ordered(rows):
    by = [sorted(rows), sorted(rows, reverse=True), sorted(rows, key=lambda r: r % 3)]
    return [*by, min(rows), max(rows), sum(rows)]
"""

whole = st.one_of(
    st.integers(-20, 20),
    st.integers(-(2**54), 2**54),
    st.integers(-(2**130), 2**130),
    st.builds(lambda sign, n, step: sign * (n + step), st.sampled_from([1, -1]), st.just(2**53), st.integers(-3, 3)),
)
number = st.one_of(whole, st.booleans(), st.builds(Fraction, whole, whole.filter(bool)))
letters = st.text(st.sampled_from("ab/ \u00a0\uffff\ue000\U0001f600\U00010000"), max_size=8)
value = st.recursive(
    st.one_of(st.none(), number, letters),
    lambda inner: st.one_of(st.lists(inner, max_size=3), st.lists(inner, max_size=3).map(tuple)),
    max_leaves=5,
)
bound = st.one_of(st.integers(-9, 9), st.just(2**60), st.booleans())
row = st.one_of(letters, st.lists(whole, max_size=6), st.lists(whole, max_size=6).map(tuple))
call = st.one_of(
    st.tuples(st.just("arithmetic"), st.tuples(number, number)),
    st.tuples(st.just("compared"), st.tuples(value, value)),
    st.tuples(
        st.just("cut"), st.tuples(row, bound.filter(lambda b: b is not None), bound.filter(lambda b: b is not None))
    ),
    st.tuples(st.just("looked"), st.tuples(letters, st.text(st.sampled_from("ab/\U0001f600"), min_size=1, max_size=2))),
    st.tuples(st.just("ordered"), st.tuples(st.lists(number, min_size=1, max_size=8))),
)


@pytest.fixture(scope="module")
def drawn(engine: Engine, tmp_path_factory: pytest.TempPathFactory) -> Any:
    folder = written(tmp_path_factory.mktemp("drawn"), {"drawn": SOURCE})
    engine.add(folder.name, translate(folder))
    return engine, folder.name, module(folder, "drawn")


@settings(
    max_examples=20,
    phases=[Phase.explicit, Phase.generate, Phase.shrink],
    suppress_health_check=list(HealthCheck),
)
@given(st.lists(call, min_size=50, max_size=50))
def test_what_is_drawn_comes_out_the_same(drawn: Any, draws: list[tuple[str, tuple[Any, ...]]]) -> None:
    engine, core, here = drawn
    calls: list[Call] = [("drawn", name, arguments) for name, arguments in draws]
    for (_, name, arguments), seen in zip(calls, engine.outcomes(calls, core), strict=True):
        agree(outcome(getattr(here, name), arguments), seen)
