"""The reader against chance: texts drawn from its alphabet and lengths with edits, held to another reader."""

import re
from collections import Counter
from fractions import Fraction

import pytest

from tests.core.drawn_readings import DRAWS, draws
from tests.core.other_reader import judge
from tests.core.places import setting_of
from tests.vectors import cases, name_of
from webapp.core.reading import ReadingError, read

GOOD = [case for case in cases("readings") if case.get("read", "length") == "length" and "inches" in case]
OWN_WORDS = (
    r'"\w+" |(?<=point), .*|^Say \w+ |twenty-one |twenty and one|(?<=at )(sixty|halves)|(?<=space before )strong'
)
# What the vectors want said of a length, without the words of one text: each a kind of error.
KINDS = {
    re.sub(OWN_WORDS, "", case["says"])
    for case in cases("readings")
    if case.get("read", "length") == "length" and "at" in case and "sign" not in case and case["unit"] == "in"
} | {"A fraction needs its unit in a millimetre project"}


def tried(text, how):
    """What the core makes of a text: a length, or its own error; any other error is a fault."""
    try:
        return read(text, how)
    except ReadingError as error:
        return error


@pytest.mark.parametrize("case", GOOD, ids=name_of)
def test_the_other_reader_knows_the_vectors(case):
    how = setting_of(case)
    assert judge(case["text"], how.unit, how.graduation) == Fraction(case["inches"])


def test_drawn_readings_are_what_another_reader_makes_of_them(capsys):
    reasons: Counter[str] = Counter()
    for text, how in draws(DRAWS, seed=1909):
        result = tried(text, how)
        if isinstance(result, ReadingError):
            assert 0 <= result.position <= len(text), text
            reasons[result.reason] += 1
        else:
            assert result == judge(text, how.unit, how.graduation), (text, how.unit, how.graduation)
    accepted = DRAWS - reasons.total()
    met = {kind for kind in KINDS if any(kind in reason for reason in reasons)}
    with capsys.disabled():
        print(f"\nreadings drawn {DRAWS}, accepted {accepted} ({accepted / DRAWS:.0%})")
        print(f"kinds of error met {len(met)} of {len(KINDS)}")
    assert accepted >= DRAWS * 0.3
    assert DRAWS < 5000 or met == KINDS
