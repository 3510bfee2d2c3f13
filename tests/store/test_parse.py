import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from webapp.store.parse import DEEPEST, MOST_BYTES, parse_body
from webapp.store.sync import Unreadable

ROOM = MOST_BYTES - len('{"x":""}')


def nested(deep: int) -> bytes:
    return b'{"x":' + b"[" * (deep - 1) + b"]" * (deep - 1) + b"}"


@pytest.mark.parametrize(
    ("data", "value"),
    [
        (b"{}", {}),
        (b' {"a": [1, -2, true, null, "\xe2\x80\xa8"]}\n', {"a": [1, -2, True, None, "\u2028"]}),
        (b'{"a": "\\ud835\\udd18"}', {"a": "𝔘"}),
        (b'{"a": "[[[[{{{{\\"[[[[ \\\\"}', {"a": '[[[[{{{{"[[[[ \\'}),
        (b'{"a": 9007199254740991}', {"a": 2**53 - 1}),
        (b'{"x":"' + b"x" * ROOM + b'"}', {"x": "x" * ROOM}),
    ],
)
def test_what_the_program_writes_is_read(data, value):
    assert parse_body(data) == value


@pytest.mark.parametrize(
    ("data", "said"),
    [
        (b'{"x":"' + b"x" * (ROOM + 1) + b'"}', "too large"),
        (b"\xff{}", "UTF-8"),
        (b'{"a": "\xed\xa0\x80"}', "UTF-8"),
        (b"", "not JSON"),
        (b"{", "not JSON"),
        (b"{}{}", "not JSON"),
        (b"{'a': 1}", "not JSON"),
        (b'{"a": 01}', "not JSON"),
        (b'{"a": "\x01"}', "not JSON"),
        (b"\xef\xbb\xbf{}", "not JSON"),
        (b"[]", "object"),
        (b"null", "object"),
        (b'"x"', "object"),
        (nested(DEEPEST + 1), "too deep"),
        (b"[" * 500_000, "too deep"),
        (b'{"a":' * 100_000, "too deep"),
        (b'{"a": NaN}', "no number"),
        (b'{"a": Infinity}', "no number"),
        (b'{"a": -Infinity}', "no number"),
        (b'{"a": 1.0}', "not whole"),
        (b'{"a": 1e3}', "not whole"),
        (b'{"a": 1E400}', "not whole"),
        (b'{"a": ' + b"9" * 17 + b"}", "too large"),
        (b'{"a": ' + b"9" * 1_000_000 + b"}", "too large"),
        (b'{"a": 1, "a": 1}', "twice"),
        (b'{"a": {"b": 1, "\\u0062": 1}}', "twice"),
        (b'{"a": "\\ud800"}', "surrogate"),
        (b'{"\\udc00": 1}', "surrogate"),
        (b'{"a": "\\udc00\\ud800"}', "surrogate"),
    ],
    ids=range(29),
)
def test_all_else_is_refused_with_a_sentence(data, said):
    with pytest.raises(Unreadable, match=said):
        parse_body(data)


def test_the_deepest_that_is_taken():
    assert list(parse_body(nested(DEEPEST))) == ["x"]


@pytest.mark.parametrize("text", ['"' * 1_000_000, '\\"' * 500_000, '"\\' * 500_000, '"a\\' + "\\" * 999_000])
def test_a_wall_of_quotes_takes_no_time_to_speak_of(text):
    with pytest.raises(Unreadable):
        parse_body(text.encode())


def taken(data: bytes) -> object:
    try:
        return parse_body(data)
    except Unreadable as e:
        return e


@given(st.binary(max_size=60) | st.text(alphabet='{}[]":,\\u0dD8cC.eE+-19 tnaN\x00é', max_size=60).map(str.encode))
def test_no_bytes_at_all_raise_anything_else(data):
    assert isinstance(taken(data), dict | Unreadable)


json_values = st.recursive(
    st.none() | st.booleans() | st.integers(-(2**53) + 1, 2**53 - 1) | st.text(max_size=8),
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.text(max_size=4), inner, max_size=4),
    max_leaves=12,
)


@given(st.dictionaries(st.text(max_size=4), json_values, max_size=4), st.booleans())
def test_what_json_can_say_without_a_float_comes_back(value, ascii_only):
    assert parse_body(json.dumps(value, ensure_ascii=ascii_only).encode()) == value
