"""Each tool in both places: what CPython answers and what the browser's engine answers, to the character."""

import json
import os
from collections import Counter
from collections.abc import Iterator

import pytest

from tests.both import Typed, in_browser, in_python
from tests.draws import Drawer
from tests.engine import Engine
from tests.sentences import met, sentences
from webapp.core.tool import Field, Tool
from webapp.core.working import unknown_fields
from webapp.tools import TOOLS

DRAWS = int(os.environ.get("SHOULDERLINE_DRAWS", "1000"))  # 20000 in the slow setting
SEED = int(os.environ.get("SHOULDERLINE_SEED", "1909"))
AT_ONCE = 250
GOOD = 40  # of a hundred drawn, at least
# What working a tool cannot come to: sentences that another path gives.
ELSEWHERE = {
    "Nothing is typed here yet; write a count like 9.": "a count that is left blank is left out, and not read",
    "{tool} has no field of this name; it has {names}.": "unknown_fields gives it; work passes such names over",
}

every_tool = pytest.mark.parametrize("tool", TOOLS.values(), ids=lambda tool: tool.name)


def batches(many: list[Typed]) -> Iterator[list[Typed]]:
    for start in range(0, len(many), AT_ONCE):
        yield many[start : start + AT_ONCE]


def compared(engine: Engine, tool: Tool, many: list[Typed]) -> Counter[str]:
    """Assert that both places answer the same; count sheets, errors by their sentence, and choices."""
    table, counts = sentences(tool), Counter[str]()
    for batch in batches(many):
        here, there = in_python(tool, batch), in_browser(engine, tool, batch)
        for typed, ours, phones in zip(batch, here, there, strict=True):
            assert phones == ours, f"{tool.name} {typed!r}"
            count(tool, table, typed, json.loads(ours), counts)
    return counts


def count(tool: Tool, table: list[str], typed: Typed, answer: dict[str, dict[str, str]], counts: Counter[str]) -> None:
    counts["inputs"] += 1
    if "sheet" in answer:
        counts["sheets"] += 1
        counts.update(f"{f.name}={value}" for f in tool.fields for value in chosen(f, typed.get(f.name, "")))
        counts.update(f"{name}={answer['sheet'][name]}" for name in ("unit", "graduation"))
    for error in answer.get("errors", {}).values():
        known = met(table, error)
        assert known, f"no sentence of the table: {error}"
        counts.update(known)


def chosen(field: Field, text: str) -> list[str]:
    """Return the field's own words that stand in what was typed: as all of it, or in a list on a line."""
    names = [value for value, _ in field.choices]
    if field.kind != "lines":
        return [name for name in names if name == text]
    said = [line.rpartition(":")[2].lstrip() for line in text.split("\n")]
    return [name for name in names if any(line.startswith(name) for line in said)]


def printed(title: str, counts: Counter[str]) -> None:
    print(f"\n{title}: {counts['inputs']} inputs, {counts['sheets']} of them good")
    for name, number in sorted(counts.items()):
        if name not in ("inputs", "sheets"):
            print(f"{number:7} {name}")


@pytest.mark.browser
@every_tool
def test_both_places_answer_the_same_to_the_character(tool, engine):
    drawer = Drawer(tool, SEED)
    swept = compared(engine, tool, list(drawer.swept()))
    drawn = compared(engine, tool, [drawer.drawn() for _ in range(DRAWS)])
    printed(f"{tool.name}, swept", swept)
    printed(f"{tool.name}, drawn", drawn)
    assert drawn["inputs"] == DRAWS
    assert drawn["sheets"] * 100 >= DRAWS * GOOD
    every = swept + drawn
    assert [text for text in sentences(tool) if not every[text] and text not in ELSEWHERE] == []
    assert [text for text in ELSEWHERE if every[text]] == []
    choices = [f"{field.name}={value}" for field in tool.fields for value, _ in field.choices]
    assert [choice for choice in choices if not every[choice]] == []


@every_tool
def test_the_table_of_errors_is_the_cores_own_text(tool):
    table = sentences(tool)
    assert "This bracket is never closed; put ) where it ends." in table
    assert "The unit is in, ft or mm." in table
    assert all(met(table, text) for text in table)


@every_tool
def test_the_same_seed_draws_the_same_inputs(tool):
    one, two, other = [Drawer(tool, seed) for seed in (SEED, SEED, SEED + 1)]
    first = [one.drawn() for _ in range(50)]
    assert first == [two.drawn() for _ in range(50)]
    assert first != [other.drawn() for _ in range(50)]


@every_tool
def test_an_unknown_field_is_said_elsewhere(tool):
    (error,) = unknown_fields(tool, {"no such field": "1"}).values()
    assert met(sentences(tool), error)
