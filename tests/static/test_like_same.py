"""A project like another one, with parts, joints and links: drafted and numbered the same in both places."""

from tests.core.histories import uid
from tests.core.pieces import Shop, headboard
from tests.engine import Engine
from webapp.core.entries import draft
from webapp.tools import TOOLS
from webapp.units import FACTORS


def chained() -> Shop:
    """A piece whose part takes a measure from a sheet that takes one from another part."""
    shop = headboard()
    shop.joint("1", "Slat", "Upper rail", "floating")
    rail = shop.summary["parts"][1]["heads"][0]["entry"]
    sheet = shop.keep("sheet", tool="trim", called="Trim", depth="1 in", cut="1/16", links=f"depth {rail} mortise 1")
    slat = shop.summary["parts"][3]["heads"][0]["entry"]
    shop.keep("part", entry=slat, measure="tenon", number=f"{sheet} longest 7/8")
    reading = shop.read("Span", "30")
    typed = {"tool": "spacing", "called": "Slats", "span": "30 in", "slat": "2 1/2", "count": "7"}
    shop.keep("sheet", **typed, links=f"span {reading} reading 30")
    return shop


def test_it_is_the_same_on_the_phone(engine: Engine) -> None:
    summary = chained().summary
    drafted = draft("like", {"name": "Bed in oak"}, summary, TOOLS, FACTORS)
    kinds = [each["kind"] for each in drafted["also"]]
    assert kinds == ["part"] * 4 + ["sheet"] * 2 + ["joint"]
    linked = [len(each["body"].get("links", [])) for each in drafted["also"]]
    assert linked == [0, 0, 0, 1, 1, 0, 0]
    like = ("entries", "draft", ("like", {"name": "Bed in oak"}, summary, dict(TOOLS), dict(FACTORS)))
    engine.check([like, ("entries_numbered", "numbered", (drafted, uid(9000)))])
