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
/* sums.py, line for line */ import * as $ from "../python.js";




import { Fraction } from "../fraction.js";

import { THERE, new as new$ } from "./other.js";

export const ZERO = new Fraction(0);


export function total(widths, start = ZERO) { let found, width;



  found = start;
  for (width of $.iter(widths)) {

    if ($.ne(width, 0) && (found !== null)) {
      found = $.grow(found, width);
    } else if ($.t(THERE)) {
      found = new$(found, 2); } else {

      return start; } }
  return found; }
"""


def squeezed(text: str) -> list[str]:
    return [line.strip() for line in text.splitlines()]


def test_the_output_reads_as_its_source_does(tmp_path: Path) -> None:
    modules = translate(written(tmp_path, {"sums": SOURCE, "other": OTHER}))
    assert squeezed(modules["sums"]) == squeezed(TEXT)
    assert modules["other"].endswith("export { new$ as new };\n")


def test_every_statement_stands_on_its_own_line_of_the_source(tmp_path: Path) -> None:
    modules = translate(written(tmp_path, {"sums": SOURCE, "other": OTHER}))
    python, javascript = SOURCE.splitlines(), modules["sums"].splitlines()
    for number, line in enumerate(python):
        if line.strip().startswith(("found =", "return", "for", "if", "elif")):
            assert javascript[number].strip() != "", f"line {number + 1}: {line}"
    assert len(javascript) <= len(python)


@pytest.mark.browser
def test_an_error_in_the_engine_names_the_line_of_the_source(engine: Engine, tmp_path: Path) -> None:
    source = HEAD + "def case(x):\n    y = [\n        x\n    ]\n\n    return y[5]\n"
    written(tmp_path, {"lined": source})
    engine.add(tmp_path.name, translate(tmp_path))
    script = """async (core) => {
        const { case: work } = await import(`/static/${core}/core/lined.js`);
        try { work(1); } catch (error) { return error.stack; }
    }"""
    stack = engine.run(script, tmp_path.name)
    assert f"core/lined.js:{source.splitlines().index('    return y[5]') + 1}:" in stack


@pytest.mark.browser
def test_names_of_other_modules_arrive_by_any_name(engine: Engine, tmp_path: Path) -> None:
    there = "def new(x):\n    return [x]\n\n\ndef plain():\n    return new(1)\n"
    written(tmp_path, {"there": there, "here": "from webapp.core.there import new as delete, plain\n\n\n"
                       "def case():\n    return [delete(2), plain()]\n"})  # fmt: skip
    engine.add(tmp_path.name, translate(tmp_path))
    assert engine.outcomes([("here", "case", ())], tmp_path.name) == [{"gives": [[2], [1]]}]


def test_the_real_core_is_inside_the_subset() -> None:
    modules = translate(CORE)
    assert {path.stem for path in CORE.glob("*.py")} - {"__init__"} == set(modules)


@pytest.mark.browser
def test_every_module_of_the_real_core_loads(engine: Engine) -> None:
    names = sorted(translate(CORE))
    script = "async (names) => { for (const name of names) await import(`/static/engine/core/${name}.js`); }"
    engine.run(script, names)


@pytest.mark.browser
def test_a_row_given_by_a_caller_is_not_changed_by_a_default(engine: Engine, tmp_path: Path) -> None:
    source = HEAD + "def kept(n, seen=(1, 2)):\n    return [*seen, n]\n\n\ndef case():\n    return [kept(3), kept(4)]\n"
    [(here, there)] = twice(engine, tmp_path, {"defaults": source}, [("defaults", "case", ())])
    assert there == here == {"gives": [[1, 2, 3], [1, 2, 4]]}
