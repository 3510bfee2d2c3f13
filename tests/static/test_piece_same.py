"""The piece's screens, in CPython and in the browser's engine: every state of the next thing, to the character."""

from typing import Any

from tests.core.pieces import Shop
from tests.core.test_piece import NEXT, gauged, jointed
from tests.engine import Engine
from webapp.tools import TOOLS
from webapp.units import FACTORS


def gathered(shop: Shop, entry: str = "") -> dict[str, Any]:
    base = {"tools": list(TOOLS.values()), "factors": dict(FACTORS), "projects": []}
    return {**base, "project": shop.summary, "worked": shop.worked, "entry": entry}


def metric() -> Shop:
    shop = Shop(unit="mm", graduation="0.5 mm")
    shop.part("Upper rail", mortise="25", width="140")
    shop.part("Slat", tenon="24")
    shop.joint("1", "Slat", "Upper rail", "floating", "dowelled")
    shop.gauge("Upper rail, left: lacks 2\nUpper rail, right: lacks 1.2", keep="330")
    return shop


def test_the_pages_are_the_same_on_the_phone(engine: Engine) -> None:
    shops = [make() for make, _words in NEXT.values()] + [gauged(jointed()), metric()]
    calls: list[Any] = [("view", name, (gathered(shop),)) for shop in shops for name in ("project", "glue")]
    for shop in shops[-2:]:
        entries = [head["entry"] for thing in shop.summary["parts"] for head in thing["heads"]]
        calls += [("view", "part", (gathered(shop, entry),)) for entry in entries]
    assert len(engine.check(calls)) == len(calls)
