"""How the translated core looks, and that the real one is all inside the subset."""

from pathlib import Path

import pytest

from tests.engine import CORE, Engine
from tests.static.twice import HEAD, twice, written
from webapp.phone.translate import translate

SOURCE = '''"""Widths, added up.

More is said here.
"""

from fractions import Fraction

from webapp.core.other import THERE, Row, new

ZERO = Fraction(0)


def total(
    widths: list[Fraction], start: Fraction = ZERO
) -> Fraction:
    """Add up widths."""
    found = start
    for width in widths:
        # A comment stays behind.
        if width != 0 and found is not None:
            found += width
        elif THERE:
            found = new(found, size=2)
        else:
            return start
    return found
'''
OTHER = '''"""Others."""

from typing import Any, TypeAlias

Row: TypeAlias = dict[str, Any]
THERE = True


def new(x: Any, size: int) -> Any:
    """Make it new."""
    return x * size
'''
TEXT = """\
function total(a, b = ZERO) { let c, d;
  c = b;
  for (d of $.iter(a)) {
    if ($.ne(d, 0) && (c !== null)) {
      c = $.grow(c, d);
    } else if ($.t(THERE)) {
      c = new$other(c, 2); } else {
      return b; } }
  return c; }
"""


def test_the_output_reads_as_its_source_does(tmp_path: Path) -> None:
    pieces = translate(written(tmp_path, {"sums": SOURCE, "other": OTHER}))
    assert [*pieces] == [("other", "THERE"), ("other", "new"), ("sums", "ZERO"), ("sums", "total")]
    assert pieces["sums", "ZERO"].text == "const ZERO = new Fraction(0);\n"
    assert pieces["sums", "total"].text == TEXT
    assert pieces["sums", "total"].needs == {("sums", "ZERO"), ("other", "THERE"), ("other", "new")}


def test_a_name_says_its_module_where_another_has_it_or_javascript(tmp_path: Path) -> None:
    here = "def case():\n    return total()\n\n\ndef total():\n    return 1\n\n\nMap = 2\n"
    there = "from webapp.core.here import total as other\n\n\ndef total():\n    return other()\n"
    pieces = translate(written(tmp_path, {"here": here, "there": there}))
    assert {key: piece.called for key, piece in pieces.items()} == {
        ("here", "case"): "case$here",
        ("here", "total"): "total$here",
        ("here", "Map"): "Map$here",
        ("there", "total"): "total$there",
    }
    assert pieces["there", "total"].text == "function total$there() {\n  return total$here(); }\n"


def test_a_variable_takes_no_name_that_stands_at_a_top(tmp_path: Path) -> None:
    source = "b = 1\n\n\ndef case(first, second):\n    return [first, second, b]\n"
    [_, case] = translate(written(tmp_path, {"here": source})).values()
    assert case.text == "function case$here(a, c) {\n  return [a, c, b]; }\n"


@pytest.mark.browser
def test_a_default_that_is_worked_before_its_function_is_no_other_modules(engine: Engine, tmp_path: Path) -> None:
    source = HEAD + "def case(x=Fraction({0}, 2)):\n    return x\n"
    written(tmp_path, {name: source.format(number) for name, number in (("one", 1), ("two", 2))})
    engine.add(tmp_path.name, translate(tmp_path))
    calls = [("one", "case", ()), ("two", "case", ())]
    assert engine.outcomes(calls, tmp_path.name) == [
        {"gives": {"fraction": ["1", "2"]}},
        {"gives": {"fraction": ["1", "1"]}},
    ]


@pytest.mark.browser
def test_names_of_other_modules_arrive_by_any_name(engine: Engine, tmp_path: Path) -> None:
    there = "def new(x):\n    return [x]\n\n\ndef plain():\n    return new(1)\n"
    written(tmp_path, {"there": there, "here": "from webapp.core.there import new as delete, plain\n\n\n"
                       "def case():\n    return [delete(2), plain()]\n"})  # fmt: skip
    engine.add(tmp_path.name, translate(tmp_path))
    assert engine.outcomes([("here", "case", ())], tmp_path.name) == [{"gives": [[2], [1]]}]


def test_the_real_core_is_inside_the_subset() -> None:
    pieces = translate(CORE)
    assert {path.stem for path in CORE.glob("*.py")} - {"__init__"} >= {module for module, _ in pieces}
    assert {piece.called for piece in pieces.values()} >= {"read_count", "TOOL$spacing"}


@pytest.mark.browser
def test_every_module_of_the_real_core_loads(engine: Engine) -> None:
    names = sorted({module for module, _ in translate(CORE)})
    script = "async (names) => { for (const name of names) await import(`/static/engine/core/${name}.js`); }"
    engine.run(script, names)


@pytest.mark.browser
def test_a_row_given_by_a_caller_is_not_changed_by_a_default(engine: Engine, tmp_path: Path) -> None:
    source = HEAD + "def kept(n, seen=(1, 2)):\n    return [*seen, n]\n\n\ndef case():\n    return [kept(3), kept(4)]\n"
    [(here, there)] = twice(engine, tmp_path, {"defaults": source}, [("defaults", "case", ())])
    assert there == here == {"gives": [[1, 2, 3], [1, 2, 4]]}
