"""JSON from outside: read only after its size and depth are known, and only what the program itself writes."""

import json
import re
from typing import Any, NoReturn

from webapp.store.errors import Unreadable

MOST_BYTES = 1024 * 1024
DEEPEST = 24
LONGEST_INTEGER = 16  # digits: 2**53 has sixteen

# Never fails, so never goes back: an open string ends with the text.
STRING = re.compile(r'"(?:[^"\\]+|\\.?)*"?', re.DOTALL)
BRACKET = re.compile(r"[\[\]{}]")


def parse_body(data: bytes, most: int = MOST_BYTES) -> dict[str, Any]:
    """Return the object that `data` holds as JSON; raise Unreadable with a sentence on anything else."""
    if len(data) > most:
        raise Unreadable(f"This is too large: at most {most // 1024} KiB are taken at once.")
    text = _decoded(data)
    _measure_depth(text)
    value = _parsed(text)
    _refuse_half_characters(value)
    if not isinstance(value, dict):
        raise Unreadable("The body must be a JSON object.")
    return value


def _decoded(data: bytes) -> str:
    try:
        return data.decode("utf-8")
    except UnicodeDecodeError as e:
        raise Unreadable("The body is not UTF-8.") from e


def _measure_depth(text: str) -> None:
    """Refuse deep nesting before anything walks down into it."""
    deep = 0
    for bracket in BRACKET.findall(STRING.sub("", text)):
        deep += 1 if bracket in "[{" else -1
        if deep > DEEPEST:
            raise Unreadable(f"The body is nested too deep: {DEEPEST} is the most.")


def _parsed(text: str) -> Any:
    try:
        return json.loads(
            text,
            object_pairs_hook=_each_once,
            parse_int=_integer,
            parse_float=_no_float,
            parse_constant=_no_constant,
        )
    except json.JSONDecodeError as e:
        raise Unreadable(f"The body is not JSON: {e.msg} at line {e.lineno}, column {e.colno}.") from e


def _each_once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    found = dict(pairs)
    if len(found) < len(pairs):
        raise Unreadable("The body has an object in which one name stands twice.")
    return found


def _integer(text: str) -> int:
    if len(text.lstrip("-")) > LONGEST_INTEGER:
        raise Unreadable("The body has a number that is too large; lengths are sent as text.")
    return int(text)


def _no_float(text: str) -> NoReturn:
    raise Unreadable("The body has a number that is not whole; lengths are sent as text.")


def _no_constant(text: str) -> NoReturn:
    raise Unreadable(f"{text} is no number.")


def _refuse_half_characters(value: Any) -> None:
    try:
        json.dumps(value, ensure_ascii=False).encode("utf-8")
    except UnicodeEncodeError as e:
        raise Unreadable("The body has half a character: a surrogate that stands alone.") from e
