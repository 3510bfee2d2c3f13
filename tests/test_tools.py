from importlib import import_module

import pytest

from webapp.core.setting import setting
from webapp.core.working import default, value, work
from webapp.tools import TOOLS
from webapp.units import FACTORS

every_tool = pytest.mark.parametrize("tool", TOOLS.values(), ids=lambda tool: tool.name)


def test_tools_are_found_by_name_in_the_order_of_their_modules():
    assert list(TOOLS) == sorted(TOOLS)
    assert "spacing" in TOOLS


@every_tool
def test_a_tool_is_the_one_its_module_declares(tool):
    assert import_module(f"webapp.core.{tool.name}").TOOL is tool


@every_tool
def test_a_declaration_holds_together(tool):
    names = [field.name for field in tool.fields]
    assert len(set(names)) == len(names)
    assert not {"unit", "graduation", "tool"} & set(names)
    for field in tool.fields:
        assert field.kind in ("length", "widths", "count", "choice", "pair", "lines")
        assert field.sign in ("positive", "zero", "any")
        assert bool(field.choices) or field.kind != "choice"
        assert not field.choices or field.kind == "choice" or field.read  # words beside lengths are read by its own
        assert len(field.default) in (0, 2)


@every_tool
@pytest.mark.parametrize("unit", ["in", "ft", "mm"])
def test_a_default_reads_in_its_system(tool, unit):
    how = setting(unit, "", FACTORS)
    for field in tool.fields:
        if field.default:
            assert value(field, default(field, how), how) is not None


@every_tool
def test_the_example_works(tool):
    assert "sheet" in work(tool, dict(tool.example), FACTORS)
