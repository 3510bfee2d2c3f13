"""The run-time is held to CPython's behaviour, construct by construct."""

from typing import Any

import pytest

from tests.engine import Engine
from tests.static.twice import EXPRESSIONS, HEAD, agree, twice
from tests.static.twice import programs as read_programs

pytestmark = pytest.mark.browser
PROGRAMS = read_programs()
Both = tuple[dict[str, Any], dict[str, Any]]


@pytest.fixture(scope="module")
def expressions(engine: Engine, tmp_path_factory: pytest.TempPathFactory) -> list[Both]:
    source = HEAD + "".join(f"def case_{i}():\n  return {text}\n" for i, text in enumerate(EXPRESSIONS))
    calls = [("expressions", f"case_{i}", ()) for i in range(len(EXPRESSIONS))]
    return twice(engine, tmp_path_factory.mktemp("expressions"), {"expressions": source}, calls)


@pytest.fixture(scope="module")
def programs(engine: Engine, tmp_path_factory: pytest.TempPathFactory) -> dict[str, Both]:
    sources = {f"program_{i}": HEAD + text + "\n" for i, text in enumerate(PROGRAMS.values())}
    found = twice(engine, tmp_path_factory.mktemp("programs"), sources, [(name, "case", ()) for name in sources])
    return dict(zip(PROGRAMS, found, strict=True))


@pytest.mark.parametrize("number", range(len(EXPRESSIONS)), ids=lambda i: EXPRESSIONS[i])
def test_an_expression_gives_what_cpython_gives(expressions: list[Both], number: int) -> None:
    agree(*expressions[number])


@pytest.mark.parametrize("name", PROGRAMS)
def test_a_program_gives_what_cpython_gives(programs: dict[str, Both], name: str) -> None:
    agree(*programs[name])
