"""A headboard by thumb at 360 x 740, from an empty project to the trimmed slats: alone, and on two phones.

The numbers by hand, in inches; "strong" is a quarter of 1/32 more, 1/128.

    posts, as they finished  3 7/16 strong            = 3 57/128
    clear of the rails       65 3/8 - 2 x 3 57/128     = 58 31/64
    the gap of nine slats    58 31/64 - 9 x 2 3/4      = 33 47/64;  a tenth of it: 3 239/640
    ninth slat, right        58 31/64 - 3 239/640      = 55 71/640
    posts, read again        3 7/16: 65 3/8 - 6 7/8    = 58 1/2 clear;  33 3/4 / 10 = 3 3/8;  58 1/2 - 3 3/8 = 55 1/8
    the trim                 the stick is 13 1/16 strong = 13 9/128, the openings 13: 9/128, twice 1/32 and 1/128
    slat mortises after it   1 - 9/128 = 119/128: a tenon of 15/16 = 120/128 is 1/128 too long;
                             with 1/16 = 8/128 to spare they go 9/128 deeper
    with the rail at 58 3/8  58 3/8 - 24 3/4 = 33 5/8;  a tenth of it: 3 29/80;  58 3/8 - 3 29/80 = 55 1/80
    slats                    between the shoulders 13 9/128, as the openings are trimmed;
                             over all 13 9/128 + 2 x 15/16 = 14 121/128
"""

from fractions import Fraction

import pytest
from playwright.sync_api import Page, expect

from tests.hand import in_hand
from tests.serving import Serving
from tests.static.maker import Maker, begun
from tests.static.test_piece_by_thumb import same_there

pytestmark = pytest.mark.browser

hand = pytest.fixture(in_hand, name="page")
RAILS, SLATS, STICK, GAUGE, TRIMMED = "Rails", "Slats", "Stick", "Gauge, Dry fit 1", "Gauge, Dry fit 2"
RAIL = "Upper rail, shoulder to shoulder"
ENDS = [f"Upper rail, {end}" for end in ("left", "middle", "right")]
THIRTEEN = ("13", "1/16", "strong")
LONG = "14 15/16 strong over all, 13 1/16 strong shoulder to shoulder"
BOTTOMS = "the tenon bottoms: a hair (0.008 in) longer than the mortise is deep now"
MORTISES = ("Cut the slat mortises of the upper rail", "1 deep")
FIRST = {
    (RAILS, "clear"): Fraction(58) + Fraction(31, 64),
    (SLATS, "gap"): Fraction(3) + Fraction(239, 640),
    (SLATS, "slat-9-right"): Fraction(55) + Fraction(71, 640),
    (STICK, "mark-18"): Fraction(55) + Fraction(71, 640),
}
AGAIN = {
    (RAILS, "clear"): Fraction(58) + Fraction(1, 2),
    (SLATS, "gap"): Fraction(3) + Fraction(3, 8),
    (SLATS, "slat-9-right"): Fraction(55) + Fraction(1, 8),
    (STICK, "mark-18"): Fraction(55) + Fraction(1, 8),
}
SAWN = {
    (SLATS, "gap"): Fraction(3) + Fraction(29, 80),
    (SLATS, "slat-9-right"): Fraction(55) + Fraction(1, 80),
    (STICK, "mark-18"): Fraction(55) + Fraction(1, 80),
}
CUT = {
    (GAUGE, "gauge"): Fraction(13) + Fraction(9, 128),
    (TRIMMED, "longest"): Fraction(13) + Fraction(9, 128),
    (TRIMMED, "shoulder"): Fraction(13) + Fraction(9, 128),
    (TRIMMED, "overall"): Fraction(14) + Fraction(121, 128),
}


other = pytest.fixture(in_hand, name="other")


def draw(maker: Maker) -> None:
    """Name the parts as they are drawn, and number two joints."""
    maker.next_is("Measure the clear span of the rail")
    maker.page.get_by_text("or name the parts of the piece, the posts first").tap()
    maker.name("Head post", count="2", thickness="3 1/2")
    maker.follow("Name another part")
    maker.name("Upper rail", width="5 1/2", shoulder="58 3/8", mortise="1")
    maker.follow("Name another part")
    maker.name("Lower rail", shoulder="58 3/8")
    maker.follow("Name another part")
    maker.name("Slat", count="9", spare="1", width="2 3/4", tenon="15/16")
    maker.follow("Headboard")
    maker.next_is("Get out the stock for the head post", "14 pieces in all, spares too")
    maker.page.get_by_text("Number a joint", exact=True).tap()
    maker.joint("1", "Upper rail", "Head post", "through")
    maker.joint("2", "Slat", "Upper rail", "blind")


def mill(maker: Maker) -> None:
    """Tick the first stages, and read the posts as they finished."""
    maker.tick("stock", "rough-milling", "rest")
    maker.next_is("Finish mill the head post", "to 3 1/2, its thickness; then read it off the wood")
    maker.read("Head post", "thickness", "3", "7/16", "strong")
    maker.next_is("Finish mill the upper rail", "to 5 1/2, its width; then read it off the wood")
    maker.tick("finish-milling")
    maker.next_is("Lay out the head post")


def lay_out(maker: Maker) -> None:
    """Work the rails' length from what is over all, and give it to the upper rail."""
    maker.follow("Parts from over-all sizes")
    maker.type("#overall", "65", "3/8")
    maker.take("Post", "Head post, thickness, as built")
    maker.keep(RAILS)
    maker.follow("Headboard")
    maker.follow("Upper rail")
    maker.page.get_by_text("Take a measure from a sheet").tap()
    clear = maker.page.locator("#sources .item", has_text="Clear, shoulder to shoulder").get_by_role("button")
    clear.tap()
    expect(maker.page.locator("#part-measure-error")).to_contain_text("Say which measure")
    maker.page.locator("#part-measure").select_option("shoulder")
    clear.tap()
    expect(maker.page.get_by_role("row", name="shoulder to shoulder")).to_contain_text("58 15/32 strong")
    maker.follow("Headboard")


def space(maker: Maker, rail: str, said: str) -> None:
    """Space the slats along the rail, whose length is picked, and put their marks on a stick."""
    maker.next_is("Space the slats along the upper rail", "then mark out its slat mortises, and cut them 1 deep")
    maker.go_on()
    maker.take("Clear span", rail)
    expect(maker.page.locator("#span-source")).to_have_text(f"from {rail}: {said}")
    maker.take("Slat width", "Slat, width")
    maker.take("How many slats", "Slat, how many")
    maker.keep(SLATS)
    maker.follow("Headboard")
    maker.next_is(*MORTISES)
    maker.follow("Story stick")
    maker.take("Marks", f"{SLATS}: Take all 18 marks")
    expect(maker.page.locator(".wrong")).to_have_text("No answer yet: see the line under Length of the stick.")
    maker.take("Length of the stick", rail)
    maker.keep(STICK)
    maker.follow("Headboard")


def fit(maker: Maker) -> None:
    """Measure the dry fit, and work the gauge stick from it: the slats' tenon comes along."""
    maker.tick("slat-mortises")
    maker.next_is("Put the piece together dry, and read every opening", "at both ends of its rails")
    maker.go_on()
    maker.lay_out(ENDS)
    for place in ENDS:
        maker.measure(place, "13")
    maker.follow("Headboard")
    maker.next_is("Work the gauge stick from the openings of the dry fit")
    maker.go_on()
    maker.follow("Gauge sheet of this round")
    expect(maker.page.locator("#tenon-source")).to_have_text("from Slat, tenon length: 15/16")
    maker.type("#keep", *THIRTEEN)
    maker.keep()
    expect(maker.page.locator(".warnings")).to_contain_text(BOTTOMS)
    maker.follow("Headboard")


def trim(maker: Maker) -> None:
    """Joint the rail, be told that the slats' tenons bottom, and deepen its slat mortises."""
    comes = f"1/16 strong comes off; from {GAUGE}"
    maker.next_is("Joint the lower edge of the upper rail: two passes, then a light one", comes)
    expect(maker.page.locator(".warnings")).to_contain_text(f"With 15/16 on the slat, {BOTTOMS}")
    maker.cut()
    deeper = "by 1/16 strong, or take that much off each tenon's end of the slat"
    maker.next_is("Before the slats are cut: deepen the slat mortises of the upper rail", deeper)
    maker.read("Upper rail", "mortise depth", "1")
    expect(maker.page.locator(".warnings")).to_have_count(0)


def try_stick(maker: Maker) -> None:
    """Try the stick in every place after the trim, and keep the gauge sheet that this leads to."""
    maker.next_is("Put the piece together dry once more, and try the stick in every place")
    maker.go_on()
    maker.type("#round-stick", *THIRTEEN)
    maker.press_button("Measure again after trimming")
    for place in ENDS:
        maker.fits(place)
    expect(maker.page.locator(".hero-value")).to_have_text("All is measured")
    expect(maker.page.locator("li.place").first).to_contain_text("more by 1/16 in strong")
    maker.follow("Gauge sheet of this round")
    maker.keep()
    maker.follow("Headboard")


def cut_slats(maker: Maker) -> None:
    """Cut the slats to what the trimmed openings say."""
    maker.next_is("Tick the trim: nothing comes off any rail")
    maker.go_on()
    expect(maker.page.locator("#stage-trim[open]")).to_be_attached()
    maker.tick("trim")
    maker.next_is("Cut the slat to length", f"9 pieces and 1 spare: {LONG}; from {TRIMMED}")
    maker.cut()
    maker.next_is("Tick the slats: they are cut", LONG)
    maker.tick("slats")


def holds_to(maker: Maker, numbers: dict[tuple[str, str], Fraction]) -> None:
    """Hold the server's numbers against the table, by sheet and key."""
    maker.sent()
    found = maker.lengths()
    assert {name: found[name] for name in numbers} == numbers


def test_from_an_empty_project_to_the_slats_with_the_network_gone_half_way(page: Page, serving: Serving) -> None:
    maker = begun(page, serving.address, "Headboard")
    draw(maker)
    mill(maker)
    lay_out(maker)
    maker.tick("layout", "mortises", "tenons")
    space(maker, RAIL, "58 15/32 strong")
    holds_to(maker, FIRST)
    serving.stop()
    maker.read("Head post", "thickness", "3", "7/16")
    maker.work_again("3 sheets and 1 part")
    maker.next_is(*MORTISES)
    fit(maker)
    trim(maker)
    try_stick(maker)
    cut_slats(maker)
    maker.next_is("Round the ends of joint 1, the upper rail and the head post")
    serving.start()
    maker.at()
    holds_to(maker, AGAIN | CUT)
    maker.follow(GAUGE)
    expect(page.locator(".held-by")).to_contain_text("It is cut, and is not worked again")
    expect(page.locator(".held-by")).to_contain_text("Upper rail, left is now 13 1/16 strong")
    same_there(page, serving, *maker.paths(SLATS, STICK, GAUGE, TRIMMED))


def test_on_two_phones_one_measures_and_trims_and_the_other_spaces_and_cuts(
    page: Page, other: Page, serving: Serving
) -> None:
    bench = begun(page, serving.address, "Headboard")
    saw = bench.on(other, serving.address)
    draw_rail(bench)
    saw.hear(bench)
    space(saw, f"{RAIL}, as built", "58 3/8")
    bench.hear(saw)
    meanwhile(bench, saw, serving)
    fit(bench)
    trim(bench)
    try_stick(bench)
    saw.hear(bench)
    cut_slats(saw)
    bench.hear(saw)
    holds_to(bench, SAWN | CUT)
    for maker in (bench, saw):
        same_there(maker.page, serving, *maker.paths(SLATS, STICK, GAUGE, TRIMMED))


def draw_rail(maker: Maker) -> None:
    """Name a rail and its slats, whose tenons are cut, and read the rail's shoulders."""
    maker.page.get_by_text("or name the parts of the piece").tap()
    maker.name("Upper rail", mortise="1")
    maker.follow("Name another part")
    maker.name("Slat", count="9", spare="1", width="2 3/4", tenon="15/16")
    maker.follow("Headboard")
    maker.page.get_by_text("Number a joint", exact=True).tap()
    maker.joint("1", "Slat", "Upper rail", "blind")
    maker.tick("tenons")
    maker.read_other("Upper rail", "shoulder to shoulder", "58", "3/8")


def meanwhile(bench: Maker, saw: Maker, serving: Serving) -> None:
    """While no network is there one phone works again what the other says is cut: what is cut stands."""
    bench.read("Upper rail", "shoulder to shoulder", "58", "1/4")
    saw.hear(bench)
    saw.next_is("Work again what no longer holds: 2 sheets")
    serving.stop()
    saw.follow(SLATS)
    saw.page.get_by_role("button", name="All of it is cut").tap()
    expect(saw.page.locator("#part-cut")).to_contain_text("all of it: cut")
    bench.work_again("2 sheets")
    serving.start()
    for maker in (bench, saw, bench):
        maker.at()
        maker.sent()
    [late] = [item["entry"] for thing in bench.asked()["sheets"] for item in thing["past"] if item["late"]]
    bench.at(f"{bench.project}/sheets/{late}")
    expect(bench.page.locator("#main")).to_contain_text("Worked again on another phone after it was cut")
    bench.follow("Headboard")
    bench.work_again("1 sheet")  # the stick, back to the marks of the spacing that is cut
