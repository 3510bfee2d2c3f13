"""The piece: its stages, the next thing to do, the room that trims leave, the list before the glue."""

from collections.abc import Callable

import pytest

from tests.core.pieces import Shop, headboard
from webapp.core.piece_glue import glue_list, open_ticks, tick_words
from webapp.core.piece_known import known, missing, stale
from webapp.core.piece_next import next_thing
from webapp.core.piece_room import rail_rooms, room_warnings
from webapp.core.piece_slats import cuttable
from webapp.core.piece_stages import KEYS, STAGES, passed, reached
from webapp.core.piece_stages_next import WORDS
from webapp.core.view_piece import piece_view
from webapp.tools import TOOLS
from webapp.units import FACTORS

# One rail lacks 1/16 strong (9/128) at both ends: two passes of 1/32, and 1/128 for a light one.
LACKS = "upper rail, left: lacks 9/128\nupper rail, right: lacks 9/128\nlower rail, left: fits"


def gauged(shop: Shop | None = None) -> Shop:
    made = shop or headboard()
    made.gauge(LACKS, keep="13 1/16", fit="0")
    return made


def cut(shop: Shop) -> Shop:
    (sheet,) = [head["entry"] for thing in shop.summary["sheets"] for head in thing["heads"]]
    shop.cut(sheet, "rail-1")
    return shop


def jointed(shop: Shop | None = None) -> Shop:
    made = shop or headboard()
    made.joint("1", "Upper rail", "Post", "through", "pinned")
    made.joint("2", "Slat", "Upper rail", "blind")
    return made


def through(shop: Shop, stage: str) -> Shop:
    shop.tick(*[each.step for each in STAGES[: KEYS.index(stage)]])
    return shop


def spaced() -> Shop:
    shop = headboard()
    shop.keep("sheet", tool="spacing", called="Spacing", span="58 3/8", slat="2 3/4", count="9")
    return shop


def rivalled() -> Shop:
    shop = headboard()
    shop.read("Span", "58 3/8")
    body = shop.history.entries[-1]["body"]
    shop.history.add("reading", {**body, "text": "58 1/2", "inches": "117/2"})
    return shop


def parts_rivalled() -> Shop:
    shop = headboard()
    first = shop.history.entries[1]
    shop.history.add("part", {**first["body"], "count": 3}, [first["id"]])
    shop.history.add("part", {**first["body"], "count": 4}, [first["id"]])
    return shop


def stale_shop() -> Shop:
    shop = gauged()
    reading = shop.read("Span", "30")
    typed = {"tool": "spacing", "called": "Slats", "span": "30 in", "slat": "2 1/2", "count": "7"}
    shop.keep("sheet", **typed, links=f"span {reading} reading 30")
    shop.read("Span", "31")
    return shop


def rounded(*read: str) -> Shop:
    shop = headboard()
    begun = shop.round("Round 1", "upper rail, left", "upper rail, right")
    for place in read:
        shop.read(place, "13", round=begun)
    return shop


def bare_glue() -> Shop:
    shop = through(jointed(), "glue-up")
    shop.tick(*[tick.step for tick in open_ticks(shop.summary)])
    return shop


def bare_part() -> Shop:
    shop = Shop()
    shop.part("Post")
    return shop


NEXT: dict[str, tuple[Callable[[], Shop], str]] = {
    "nothing yet": (Shop, "Measure the clear span of the rail"),
    "rivals": (rivalled, "Two readings stand for Span: say which one holds"),
    "rival parts": (parts_rivalled, "Two parts stand for Post: say which one holds"),
    "stale before trims": (stale_shop, "Work again what no longer holds: 1 sheet"),
    "a trim": (gauged, "Joint the lower edge of the upper rail: two passes, then a light one"),
    "the tenon's room": (
        lambda: cut(gauged(jointed())),
        "Before the slats are cut: deepen the slat mortises of the upper rail",
    ),
    "a round begun": (lambda: rounded("upper rail, left"), "Go on with Round 1: measure upper rail, right"),
    "a round through": (
        lambda: rounded("upper rail, left", "upper rail, right"),
        "Work the gauge stick from the openings of the dry fit",
    ),
    "stock": (headboard, "Get out the stock for the post"),
    "sizes first": (bare_part, "Say the sizes of the post"),
    "rough milling": (lambda: through(headboard(), "rough-milling"), "Rough mill the post"),
    "rest": (
        lambda: through(headboard(), "rest"),
        "Let the post and the rest of the stock lie, then read its moisture",
    ),
    "finish milling": (lambda: through(headboard(), "finish-milling"), "Finish mill the post"),
    "layout": (lambda: through(headboard(), "layout"), "Lay out the post"),
    "no joints": (lambda: through(headboard(), "mortises"), "Number the joints, then cut their mortises"),
    "mortises": (lambda: through(jointed(), "mortises"), "Cut the mortises of the post"),
    "tenons": (lambda: through(headboard(), "tenons"), "Cut the tenons of the upper rail"),
    "slats unspaced": (lambda: through(headboard(), "slat-mortises"), "Space the slats along the upper rail"),
    "slat mortises": (lambda: through(spaced(), "slat-mortises"), "Cut the slat mortises of the upper rail"),
    "dry fit": (lambda: through(headboard(), "dry-fit"), "Put the piece together dry, and read every opening"),
    "no gauge": (
        lambda: through(headboard(), "trim"),
        "Work the gauge stick from the openings of the dry fit",
    ),
    "trimmed": (lambda: cut(gauged()), "Put the piece together dry once more, and try the stick in every place"),
    "slats": (lambda: through(headboard(), "slats"), "Cut the slats"),
    "ease": (lambda: through(jointed(), "ease"), "Round the ends of joint 1, the upper rail and the post"),
    "before the glue": (
        lambda: through(jointed(), "glue-up"),
        "Before the glue: round the ends of joint 1, the upper rail and the post",
    ),
    "the glue-up": (bare_glue, "Glue it up, a dry run first"),
    "the finish": (lambda: through(headboard(), "finish"), "Put the finish on"),
}


@pytest.mark.parametrize("name", NEXT)
def test_the_next_thing(name: str) -> None:
    make, words = NEXT[name]
    assert next_thing(make().piece()).words == words


def test_all_done_and_what_was_passed_over_is_named() -> None:
    shop = headboard()
    shop.tick(*[stage.step for stage in STAGES if stage.key != "rest"])
    found = next_thing(shop.piece())
    assert (found.words, found.more) == ("All is done", "passed over without a tick: Rest")


def test_every_stage_has_its_words() -> None:
    assert list(WORDS) == KEYS


def test_every_tool_belongs_to_a_stage() -> None:
    assert {tool.name: tool.stage for tool in TOOLS.values() if tool.stage not in KEYS} == {}


def test_a_trim_says_how_much_where_it_is_from_and_which_line_it_cuts() -> None:
    shop = gauged()
    found = next_thing(shop.piece())
    assert (found.more, found.key) == ("1/16 strong comes off; from Dry fit, first", "rail-1")
    shop.cut(found.entry, found.key)
    assert next_thing(shop.piece()).words != found.words


@pytest.mark.parametrize(
    ("name", "faces", "words"),
    [
        ("Upper rail", "", "Joint the lower edge of the upper rail: one pass"),
        ("Top rail", "", "Joint the lower edge of the top rail: one pass"),
        ("Rail, bottom", "", "Joint the upper edge of the rail: one pass"),
        ("Back rail", "", "Joint the edge of the back rail that faces the opening: one pass"),
        ("Back rail", "upper", "Joint the upper edge of the back rail: one pass"),
        ("Upper rail", "upper", "Joint the upper edge of the upper rail: one pass"),
        ("R1", "lower", "Joint the lower edge of the R1: one pass"),
    ],
)
def test_the_edge_comes_from_the_part_else_from_the_name(name: str, faces: str, words: str) -> None:
    shop = Shop()
    shop.part(name.replace(",", ""), faces=faces)
    shop.gauge(f"{name.replace(',', '')}: lacks 1/32", keep="13")
    assert next_thing(shop.piece()).words == words.replace("rail:", f"{'rail bottom' if 'bottom' in name else 'rail'}:")


def test_a_taper_names_the_edge_too() -> None:
    shop = headboard()
    shop.gauge("Lower rail, left: lacks 1/8\nLower rail, right: lacks 1/16", keep="13")
    assert next_thing(shop.piece()).words == (
        "Joint the upper edge of the lower rail: two passes; then strike a line, 1/16 at left, nothing at right, "
        "and plane to it"
    )


def test_in_millimetres_the_amount_is_not_said_twice() -> None:
    shop = Shop(unit="mm", graduation="0.5 mm")
    shop.part("Upper rail")
    shop.gauge("upper rail: lacks 2", keep="330")
    found = next_thing(shop.piece())
    assert found.words == "Joint the lower edge of the upper rail: two passes"
    assert found.more.startswith("2.0 mm comes off")


def test_who_ticks_a_late_stage_is_not_asked_for_the_early_ones() -> None:
    shop = headboard()
    shop.tick("stage slat-mortises")
    assert KEYS[reached(shop.piece())] == "dry-fit"
    assert [stage.key for stage in passed(shop.piece())] == KEYS[:7]


def test_the_issues_case_the_tenon_bottoms_and_is_said_before_the_slats_are_cut() -> None:
    for shop, words in (
        (gauged(jointed()), "once 1/16 strong is off"),
        (cut(gauged(jointed())), "1/16 strong is off"),
    ):
        (said,) = room_warnings(shop.summary, shop.worked, FACTORS)
        assert said.startswith(f"The upper rail: {words}, its slat mortises are 15/16 scant deep. ")
        assert "With 15/16 on the slat, the tenon bottoms: a hair (0.008 in) longer" in said
        assert "Before the slats are cut: 1/16 strong deeper, or off each tenon's end." in said


def test_a_mortise_read_after_the_trim_is_what_counts() -> None:
    shop = cut(gauged(jointed()))
    shop.read("Upper rail, mortise depth", "1")
    assert room_warnings(shop.summary, shop.worked, FACTORS) == []
    assert [found.room.standing for found in rail_rooms(shop.summary, shop.worked)] == ["fits"]


def test_a_shorter_tenon_has_room_and_the_gauges_own_tenon_counts_where_no_joint_names_one() -> None:
    shop = headboard()
    shop.gauge(LACKS, keep="13 1/16", fit="0", tenon="7/8")
    assert [(r.other, r.room.standing) for r in rail_rooms(shop.summary, shop.worked)] == [("the slats", "tight")]
    shop.joint("2", "Slat", "Upper rail")
    assert [r.other for r in rail_rooms(shop.summary, shop.worked)] == ["the slat"]
    shop.keep("part", entry=shop.summary["parts"][3]["heads"][0]["entry"], tenon="3/4")
    assert room_warnings(shop.summary, shop.worked, FACTORS) == []


def test_a_rail_that_is_not_trimmed_is_not_spoken_of() -> None:
    shop = jointed()
    shop.keep("part", entry=shop.summary["parts"][3]["heads"][0]["entry"], tenon="1 1/2")
    assert rail_rooms(shop.summary, shop.worked) == []


def test_what_is_known_and_missing_by_stage() -> None:
    shop = gauged(jointed(rounded("upper rail, left")))
    shop.read("Post, thickness", "3 7/16")
    here = shop.piece()
    said = {key: (known(here, key), missing(here, key)) for key in KEYS}
    assert said["stock"] == (["4 parts, 13 pieces", "1 spare"], [])
    assert said["finish-milling"] == (
        ["1 of 4 sizes read off the wood"],
        ["Post, width not read, and 2 more"],
    )
    assert said["mortises"] == (["2 joints numbered"], [])
    assert said["tenons"][0] == ["the upper rail 2 1/2", "the lower rail 2 1/2"]
    assert said["dry-fit"] == (["Round 1: 1 of 2 read"], ["upper rail, right not read"])
    assert said["trim"] == (["1 sheet"], ["the upper rail to cut"])
    assert said["glue-up"] == ([], ["12 of 12 open before the glue"])
    assert known(cut(shop).piece(), "trim")[0] == "the upper rail cut, 1/16 strong off"


def test_what_is_stale_is_said_at_its_stage() -> None:
    shop = stale_shop()
    assert stale(shop.piece(), "slat-mortises") == ["Slats no longer holds"]
    sheet = shop.summary["sheets"][1]["heads"][0]["entry"]
    shop.cut(sheet, "")
    assert stale(shop.piece(), "slat-mortises") == ["Slats is cut, and its numbers have changed"]


def test_the_page_says_what_no_longer_holds_what_waits_and_what_a_press_works_again() -> None:
    shop = stale_shop()
    held = piece_view(shop.summary, list(TOOLS.values()), shop.worked, FACTORS)["held"]
    assert (held["words"], held["press"], held["waits"]) == ("1 sheet no longer holds", "Work it again", [])
    shop.cut(shop.summary["sheets"][1]["heads"][0]["entry"], "")
    held = piece_view(shop.summary, list(TOOLS.values()), shop.worked, FACTORS)["held"]
    assert (held["press"], held["stale"][0]["words"]) == ("", "is cut: it is not worked again")
    shop.keep("withdrawal", entry=shop.summary["places"][0]["heads"][0]["entry"])
    held = piece_view(shop.summary, list(TOOLS.values()), shop.worked, FACTORS)["held"]
    assert (held["words"], held["press"]) == ("", "")
    assert [(line["title"], line["words"]) for line in held["waits"]] == [("Slats", "waits: its source was withdrawn")]


def test_the_list_before_the_glue() -> None:
    shop = jointed()
    shop.joint("3", "Lower rail", "Post", "floating", "dowelled")
    ticks = glue_list(shop.summary)
    assert [(tick.group, tick.what) for tick in ticks if tick.group not in ("eased", "sanded")] == [
        ("ends", "joint 1, the upper rail and the post"),
        ("finished", "the lower rail"),
        ("pins", "the pins of joint 1, the upper rail and the post"),
        ("pins", "the dowels of joint 3, the lower rail and the post"),
        ("numbered", "joint 1, the upper rail and the post"),
        ("numbered", "joint 2, the slat and the upper rail"),
        ("numbered", "joint 3, the lower rail and the post"),
    ]
    assert [tick.what for tick in ticks if tick.group == "eased"] == [
        "the post, 2 pieces",
        "the upper rail",
        "the lower rail",
        "the slat, 9 pieces",
    ]
    assert len({tick.step for tick in ticks}) == len(ticks)
    assert all(len(tick.step) <= 80 for tick in ticks)


def test_a_tick_is_kept_through_a_change_of_its_part_and_taken_back() -> None:
    shop = jointed()
    first = glue_list(shop.summary)[1]
    assert tick_words(first) == "ease the arrises of the post, 2 pieces"
    shop.tick(first.step)
    shop.keep("part", entry=shop.summary["parts"][0]["heads"][0]["entry"], name="Posts")
    again = next(tick for tick in glue_list(shop.summary) if tick.step == first.step)
    assert again.what == "the posts, 2 pieces"
    assert again.done
    shop.keep("withdrawal", entry=again.done)
    assert first.step in [tick.step for tick in open_ticks(shop.summary)]


def test_the_last_press_can_be_taken_back() -> None:
    shop = gauged()
    view = piece_view(shop.summary, list(TOOLS.values()), shop.worked, FACTORS)
    assert view["last"] is None
    shop.tick("stage stock")
    cut(shop)
    view = piece_view(shop.summary, list(TOOLS.values()), shop.worked, FACTORS)
    assert view["last"]["words"] == "upper rail cut"
    shop.keep("withdrawal", entry=view["last"]["entry"])
    view = piece_view(shop.summary, list(TOOLS.values()), shop.worked, FACTORS)
    assert view["last"]["words"] == "Stock done"
    assert view["next"]["key"] == "rail-1"


@pytest.mark.parametrize(
    ("make", "way"),
    [
        (Shop, "#reading"),
        (headboard, "#stage-stock"),
        (lambda: through(headboard(), "mortises"), "#joint"),
        (lambda: through(headboard(), "dry-fit"), "#round"),
        (lambda: cut(gauged(rounded("upper rail, left", "upper rail, right"))), "#after"),
    ],
)
def test_the_next_thing_leads_to_where_it_is_done(make: Callable[[], Shop], way: str) -> None:
    assert next_thing(make().piece()).href.endswith(way)


def test_the_gauge_sheet_is_worked_from_the_round_that_was_measured() -> None:
    shop = rounded("upper rail, left", "upper rail, right")
    assert next_thing(shop.piece()).href.endswith(f"/rounds/{shop.summary['rounds'][0]['heads'][0]['entry']}")


def slats(shop: Shop) -> Shop:
    """Rails that all fit the stick, and the trim ticked: 13 1/16 between the shoulders, 14 15/16 over all."""
    shop.gauge("upper rail, left: fits\nupper rail, right: fits", keep="13 1/16", tenon="15/16")
    shop.tick("stage trim")
    return shop


def test_slats_are_the_next_thing_with_their_lengths_and_are_marked_as_cut_there() -> None:
    shop = slats(headboard())
    found = next_thing(shop.piece())
    assert found.words == "Cut the slat to length"
    assert found.more == ("9 pieces and 1 spare: 14 15/16 over all, 13 1/16 shoulder to shoulder; from Dry fit, first")
    shop.cut(found.entry, found.key)
    assert next_thing(shop.piece()).words == "Tick the slats: they are cut"
    assert known(shop.piece(), "slats") == ["cut, 14 15/16 over all, 13 1/16 shoulder to shoulder"]
    assert piece_view(shop.summary, list(TOOLS.values()), shop.worked, FACTORS)["last"]["words"] == "Slats cut"


def test_slats_that_are_cut_say_how_far_the_work_is() -> None:
    shop = headboard()
    shop.gauge("upper rail, left: fits", keep="13 1/16", tenon="15/16")
    sheet = shop.summary["sheets"][0]["heads"][0]["entry"]
    assert KEYS[reached(shop.piece())] == "trim"
    shop.cut(sheet, "overall")
    assert KEYS[reached(shop.piece())] == "slats"


def test_what_can_be_cut_is_rails_that_something_comes_off_and_the_slats() -> None:
    shop = gauged()
    [worked] = shop.worked.values()
    assert [line["key"] for line in cuttable(worked["sheet"])] == ["rail-1", "shoulder"]
