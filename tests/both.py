"""One tool in both places: what was typed, worked in CPython and in the browser's engine, as JSON text."""

from collections.abc import Sequence

from tests.engine import Engine
from webapp.core.sheet import to_json
from webapp.core.tool import Tool
from webapp.core.working import work
from webapp.units import FACTORS

Typed = dict[str, str]

SCRIPT = """async ([tool, factors, many]) => {
    const place = "/static/engine";
    const [{ work }, { to_json }, { TOOL }, { Fraction }, { int }] = await Promise.all([
        import(`${place}/core/working.js`), import(`${place}/core/sheet.js`), import(`${place}/core/${tool}.js`),
        import(`${place}/fraction.js`), import(`${place}/python.js`),
    ]);
    const known = new Map(factors.map(([unit, top, bottom]) => [unit, new Fraction(int(top), int(bottom))]));
    return many.map((typed) => to_json(work(TOOL, new Map(typed), known)));
}"""


def in_python(tool: Tool, many: Sequence[Typed]) -> list[str]:
    """Work each in CPython."""
    return [to_json(work(tool, typed, FACTORS)) for typed in many]


def in_browser(engine: Engine, tool: Tool, many: Sequence[Typed]) -> list[str]:
    """Work each in the browser, all in one go."""
    factors = [[unit, str(f.numerator), str(f.denominator)] for unit, f in FACTORS.items()]
    found: list[str] = engine.run(SCRIPT, [tool.name, factors, [list(typed.items()) for typed in many]])
    return found
