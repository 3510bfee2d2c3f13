"""Each tool's vectors, in CPython and in the browser's engine: a new tool brings its file of them, and nothing else."""

import json
from typing import Any

import pytest

from tests.both import in_browser, in_python
from tests.engine import Engine
from tests.vectors import cases
from tests.vectors.look import look
from webapp.core.working import work
from webapp.tools import TOOLS
from webapp.units import FACTORS

VECTORS = [(name, case) for name in TOOLS for case in cases(name)]
every_vector = pytest.mark.parametrize(("name", "case"), VECTORS, ids=[f"{n}: {c['title']}" for n, c in VECTORS])
Case = dict[str, Any]


@pytest.fixture(scope="module")
def answers(engine: Engine) -> dict[tuple[str, str], str]:
    """What the browser's engine answers to every vector of every tool."""
    found = {}
    for name, tool in TOOLS.items():
        said = in_browser(engine, tool, [case["typed"] for case in cases(name)])
        found |= {(name, case["title"]): text for case, text in zip(cases(name), said, strict=True)}
    return found


def holds(outcome: dict[str, Any], case: Case) -> None:
    if "errors" in case:
        assert outcome == {"errors": case["errors"]}
    else:
        assert {path: look(outcome["sheet"], path) for path in case["sheet"]} == case["sheet"]


@every_vector
def test_a_vector_holds(name: str, case: Case) -> None:
    holds(work(TOOLS[name], case["typed"], FACTORS), case)


@pytest.mark.browser
@every_vector
def test_a_vector_holds_in_the_browsers_engine(name: str, case: Case, answers: dict[tuple[str, str], str]) -> None:
    text = answers[name, case["title"]]
    holds(json.loads(text), case)
    assert [text] == in_python(TOOLS[name], [case["typed"]])


@pytest.mark.browser
def test_each_vector_has_a_title_of_its_own(answers: dict[tuple[str, str], str]) -> None:
    assert len(answers) == len(VECTORS)


@pytest.mark.parametrize("name", TOOLS)
def test_every_tool_has_vectors_good_and_bad_with_their_source(name: str) -> None:
    assert all(case["source"] for case in cases(name))
    assert {"sheet" in case for case in cases(name)} == {True, False}
