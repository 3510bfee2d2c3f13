"""The one list of what can be on a screen: each kept screen of the URL map, in each of its states.

To add a screen: a key in `states()` with an address for each state it has; tests/everything.py makes what it shows.
`test_every_screen_of_the_url_map_has_a_state` fails until that is done. What has to be pressed first (an error at a
field, the pad) goes into `pressed()`. The walks for axe, for 320 px and for 200 % take all from here.
"""

from dataclasses import dataclass
from urllib.parse import urlencode

from playwright.sync_api import Page, expect

from tests.everything import everything
from tests.fitted import sent
from tests.look import press
from tests.serving import Serving
from webapp.tools import TOOLS

ROOT = "/projects/{project}"
OTHERS = ("failing", "devices")  # screens that the phone does not keep
LINKED = "span {span} reading 935/16\ncount {sheet-holds} count 9"
TYPED = {"span": "935/16 in", "slat": "2 3/4", "count": "9"}
SPACED = {"span": "58 3/8", "slat": "2 3/4", "count": "9"}
ACCENTED = ("reading, rivals", "sheet, sheet-stale", "sheet, sheet-rival", "tool, spacing, error")
HAIR = {"span": "1500.05", "slat": "70", "count": "9", "unit": "mm", "graduation": "1 mm"}


@dataclass(frozen=True)
class State:
    """One state of a screen: where it is, and what is pressed there first (as in tests/look.py)."""

    screen: str
    name: str
    address: str
    presses: tuple[str, ...] = ()

    def __str__(self) -> str:
        return f"{self.screen}, {self.name}"


Addresses = dict[str, dict[str, str]]


def asked(page: str, **query: str) -> str:
    """Write an address; what stands in braces is filled in by `states`."""
    return f"{page}?{urlencode(query, safe='{}')}"


def of_things(kind: str, *names: str) -> dict[str, str]:
    return {name: f"{ROOT}/{kind}/{{{name}}}" for name in (*names, "nothing")}


def of_tools() -> dict[str, Addresses]:
    """Return the tools' states: each tool empty, answering and with an error; the others once, by turns."""
    tool, source, explained = {}, {}, {}
    for name, made in TOOLS.items():
        first, example = made.fields[0].name, dict(made.example)
        tool[f"{name}, empty"] = f"/work/{name}"
        tool[f"{name}, answer"] = asked(f"/work/{name}", **example)
        tool[f"{name}, error"] = asked(f"/work/{name}", **example | {first: "<b>3/0</b>"})
        kinds = {field.kind: field.name for field in made.fields if field.kind != "choice"}
        source |= {
            f"{name}, {kind}": asked(f"/from/{name}", into=field, project="{project}") for kind, field in kinds.items()
        }
        explained[name] = asked(f"/help/{name}", project="{project}")
    tool["linked"] = asked("/work/spacing", project="{project}", links=LINKED, **TYPED)
    tool["in a project, empty"] = asked("/work/gauge", project="{blank}")
    tool["nothing"] = asked("/work/spacing", project="nothing", **SPACED)
    tool["millimetres, a hair"] = asked("/work/spacing", **HAIR)
    source["linked"] = asked("/from/spacing", project="{project}", into="span", links=LINKED, **TYPED)
    source["all of a sheet"] = asked("/from/spacing", project="{project}", into="span", at="{sheet-holds}")
    source["nothing to take"] = asked("/from/spacing", project="{blank}", into="span")
    source["nothing"] = asked("/from/spacing", into="span")
    return {"tool": tool, "source": source, "help": explained}


def addresses() -> Addresses:
    """Return every screen's addresses by state, with names of `everything()` in braces."""
    kinds = ("holds", "stale", "waits", "cut", "rival", "gone")
    return {
        "home": {"projects": "/"},
        "project": {
            "everything": ROOT,
            "empty": "/projects/{blank}",
            "put away": "/projects/{away}",
            "nothing": "/projects/x",
        },
        "reading": of_things("readings", "held", "span", "rivals", "gone", "long"),
        "sheet": of_things("sheets", *(f"sheet-{kind}" for kind in kinds)),
        "part": of_things("parts", "part", "part-rival", "part-gone"),
        "round": of_things("rounds", "round-half", "round", "round-begun"),
        "glue": {"everything": f"{ROOT}/glue", "empty": "/projects/{blank}/glue", "nothing": "/projects/x/glue"},
        "origin": {
            "reading": f"{ROOT}/origin/{{held}}/reading",
            "stale": f"{ROOT}/origin/{{sheet-stale}}/gap",
            "cut": f"{ROOT}/origin/{{sheet-cut}}/slat-2-left",
            "nothing": f"{ROOT}/origin/nothing/gap",
        },
        "diagnostics": {"this phone": "/diagnostics"},
        **of_tools(),
    }


def states(ids: dict[str, str]) -> list[State]:
    """Return every state that an address alone shows."""
    found = addresses()
    return [
        State(screen, name, address.format(**ids)) for screen, named in found.items() for name, address in named.items()
    ]


def pressed(ids: dict[str, str]) -> list[State]:
    """Return the states that a press makes."""
    project, sheet = f"/projects/{ids['project']}", f"/projects/{ids['project']}/sheets/{ids['sheet-holds']}"
    worked = asked("/work/spacing", project=ids["project"], **SPACED)
    measure, measured = "#reading button:not([type])", "#reading-reading"
    return [
        State("home", "error at a field", "/", ("#project button",)),
        State("project", "error at a field", project, (measured, "=17 11/1", "Escape", measure)),
        State("sheet", "error at a field", sheet, ("#cut-measured", "=x", "Escape", 'button[form="cut"] >> nth=0')),
        State("tool", "pad", worked, ("#span",)),
        State("tool", "pad, more keys", worked, ("#span", '#pad [data-do="more"]')),
        State("tool", "the last answer stands", worked, ("#slat", "=2 3/", '#pad [data-do="next"]')),
        State("tool", "error where it is kept", worked, ("#sheet-called", "=" + "x" * 90, "Escape", "#sheet button")),
    ]


def others(ids: dict[str, str]) -> list[State]:
    """Return the screens that belong to the server alone."""
    return [State("failing", "404", "/nothing"), State("devices", "none", "/devices")]


def brief(all_states: list[State]) -> list[State]:
    """Return the richest state of each screen, each tool's answer, and those that the accent is for."""
    first = {state.screen: state for state in reversed(all_states)}
    answers = [state for state in all_states if state.name.endswith("answer")]
    accents = [state for state in all_states if str(state) in ACCENTED]
    return list(dict.fromkeys([*first.values(), *answers, *accents]))


def filled(serving: Serving) -> dict[str, str]:
    """Let a server have everything, and return the ids."""
    entries, ids = everything()
    sent(serving.address, entries)
    return ids


def shown(page: Page, serving: Serving, state: State) -> None:
    """Open a state."""
    page.goto(serving.address + state.address)
    if state.screen not in OTHERS:
        expect(page.locator("html.ready")).to_be_attached()
    for word in state.presses:
        press(page, word)
