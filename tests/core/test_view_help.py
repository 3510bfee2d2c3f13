"""What a tool's help says, from nothing but its declaration; the same in the browser's engine."""

import pytest

from tests.engine import Engine
from tests.trial import TOOL
from webapp.core.tool import Tool
from webapp.core.view import help as help_screen
from webapp.core.view_help import help_view
from webapp.tools import TOOLS

PROJECT = {"id": "019abc00-5a5b-7000-8000-000000000001", "name": "Bed in ash"}


def test_each_field_says_what_it_takes_and_what_stands_for_a_blank() -> None:
    words = {field["label"]: field["words"] for field in help_view(TOOL, None)["fields"]}
    assert words == {
        "Planks": "One width each. Rows of a name and a reading; a row without a name goes by its number. "
        "It cannot be left out.",
        "Size of the top": "As wide x as long.",
        "Keep": "There are words for it too: the widest.",
        "Least width": "What your planer takes. Left out, it is 1 in; metric, 25 mm. "
        "A project remembers it as the shop's.",
        "One turn of the wheel": "A project remembers it as the shop's.",
        "Faces": "One of these: both; one only.",
    }


def test_the_example_fills_the_form_and_stays_in_the_project() -> None:
    view = help_view(TOOL, PROJECT)
    assert view["fill"] == (
        "/work/trial?planks=left%3A%205%201%2F2%0Aright%3A%205%201%2F4%20strong&size=30%20x%2060"
        f"&project={PROJECT['id']}"
    )
    assert view["form"] == f"/work/trial?project={PROJECT['id']}"
    assert view["project"] == {"name": "Bed in ash", "href": f"/projects/{PROJECT['id']}"}
    assert [line["label"] for line in view["example"]] == ["Planks", "Size of the top"]


def test_without_a_project_no_way_leads_into_one() -> None:
    view = help_screen({"tool": TOOL, "project": None})
    assert (view["project"], view["form"]) == (None, "/work/trial")
    assert "project=" not in view["fill"]


@pytest.mark.parametrize("tool", TOOLS.values(), ids=list(TOOLS))
def test_every_tool_has_help_worth_a_screen(tool: Tool) -> None:
    view = help_view(tool, None)
    assert view["words"], "no paragraph says how the tool is used"
    assert view["example"]
    assert all(field["words"].endswith((".", "?")) or not field["words"] for field in view["fields"])


@pytest.mark.browser
def test_help_is_the_same_on_the_phone(engine: Engine) -> None:
    calls = [("view_help", "help_view", (tool, project)) for tool in TOOLS.values() for project in (None, PROJECT)]
    assert len(engine.check(calls)) == 2 * len(TOOLS)
