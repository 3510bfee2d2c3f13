"""A round of dry fit: the places to measure, laid out beforehand, and the stick that is held against them."""

from fractions import Fraction
from typing import Any, TypeAlias

from webapp.core.built import exact_of, reading_of
from webapp.core.entries_cut import measure_error
from webapp.core.entries_facts import NOT_HERE, reading_error
from webapp.core.entries_text import NAME, is_identity, line_error, tidy
from webapp.core.mark import exact
from webapp.core.reading import read
from webapp.core.setting import Setting, setting
from webapp.core.text import fold_name, lines, small, trim
from webapp.core.tool import Tool

Tools: TypeAlias = dict[str, Tool]
Factors: TypeAlias = dict[str, Fraction]
Outcome: TypeAlias = dict[str, Any]
Body: TypeAlias = dict[str, Any]
Item: TypeAlias = dict[str, Any]

MOST_PLACES = 200
LONG = 36  # inches: rails over 3 ft are read in three places, because they bow (rule 8)
RAIL = "rail"
OVER = {"lower": "upper", "bottom": "top"}  # a word of a rail's name, and of the rail's over it
FORGET = "none"  # what is typed where a second round is to do without the first one's stick
FRAME = ("diagonal, rising", "diagonal, falling", "side, along", "side, up")  # what the square sheet is worked from
ASK_PLACES = "Write the places to measure, one on a line, as back rail, left; or add the rails to the parts first."
TOO_MANY = f"A round has from 1 to {MOST_PLACES} places."
TWICE = "Two of these places are the same; each stands on one line."


def draft_round(typed: dict[str, str], summary: Any, tools: Tools, factors: Factors) -> Outcome:
    """Lay a round out: its places, or the usual ones of the parts; `like` names a round to measure once more."""
    if summary is None:
        return {"errors": {"called": NOT_HERE}}
    before = round_of(summary, tidy(typed, "like"))
    places = [trim(line) for line in lines(typed.get("places", "")) if trim(line)]
    places = places or (before["places"] if before else usual_places(summary))
    how = setting(summary["unit"], summary["graduation"], factors)
    stick = tidy(typed, "stick")
    found = {
        "called": line_error(tidy(typed, "called"), NAME),
        "places": places_error(places) if places else ASK_PLACES,
        "stick": reading_error(stick, how) if stick and small(stick) != FORGET else "",
    }
    errors = {name: wrong for name, wrong in found.items() if wrong}
    if errors:
        return {"errors": errors}
    body: Body = {"called": tidy(typed, "called") or _next_name(summary), "places": places}
    if before is not None:
        body["like"] = before["entry"]
    return {"body": {**body, **_stick(stick, before, how)}, "replaces": []}


def round_of(summary: Any, entry: str) -> Item | None:
    """Return the round that an entry is."""
    rounds = [item for thing in summary["rounds"] for item in thing["heads"] + thing["past"]]
    found = [item for item in rounds if item["entry"] == entry]
    return found[0] if found else None


def _next_name(summary: Any) -> str:
    return f"Dry fit {len(summary['rounds']) + 1}"


def _stick(text: str, before: Item | None, how: Setting) -> Body:
    """Return the stick as a body holds it: what is said, else the one of the round before."""
    if text and small(text) != FORGET:
        said = {"text": text, "inches": exact(read(text, how))}
        return {"stick": {**said, "unit": how.unit, "graduation": how.graduation}}
    return {"stick": before["stick"]} if not text and before is not None and "stick" in before else {}


def usual_places(summary: Any) -> list[str]:
    """Return the places that the parts give: each opening by rail and end, the frame, each shoulder line."""
    rails = [part for thing in summary["parts"] for part in thing["heads"] if is_rail(part)]
    named = [(name, part) for part in rails for name in _each(part)]
    above = [fold_name(part["name"]) for part in rails]
    own = [(name, part) for name, part in named if _over(part["name"]) not in above]
    openings = [place for name, part in own for place in _openings(summary, name, part)]
    return [*openings, *FRAME, *[f"shoulder line, {name}" for name, part in named]] if rails else []


def _over(name: str) -> str:
    """Return the name of the rail over a lower one: the opening between the two is read once, and trimmed once."""
    words = fold_name(name).split(" ")
    found = " ".join([OVER.get(word, word) for word in words])
    return "" if found == fold_name(name) else found


def is_rail(part: Item) -> bool:
    """Say whether slats stand on a part: an edge of it faces the opening, or its name says so."""
    return part["faces"] != "" or RAIL in fold_name(part["name"]).split(" ")


def _each(part: Item) -> list[str]:
    """Return the names of a part's pieces: its own, numbered where there are several."""
    count = part["count"]
    return [part["name"]] if count < 2 else [f"{part['name']} {n + 1}" for n in range(count)]


def _openings(summary: Any, name: str, part: Item) -> list[str]:
    ends = ["left", "middle", "right"] if _length(summary, part) > LONG else ["left", "right"]
    return [f"{name}, {end}" for end in ends]


def _length(summary: Any, part: Item) -> Fraction:
    """Return how long a rail is, as read off the wood, else as drawn; 0 where neither is known."""
    for key in ("shoulder", "overall"):
        said = reading_of(summary, part["name"], key) or part["measures"].get(key)
        if said is not None:
            return exact_of(said["inches"])
    return Fraction(0)


def places_error(places: list[str]) -> str:
    """Return what is wrong with the places of a round, or nothing."""
    if not 0 < len(places) <= MOST_PLACES:
        return TOO_MANY
    wrong = [line_error(place, NAME) for place in places if line_error(place, NAME)]
    same = len({fold_name(place): True for place in places}) != len(places)
    return wrong[0] if wrong else (TWICE if same else "")


def round_error(body: Body, replaces: list[str], factors: Factors) -> str:
    """Return why a round cannot be kept, or nothing."""
    places = body.get("places")
    if not isinstance(places, list) or not all(isinstance(place, str) and trim(place) for place in places):
        return "Each place of a round is a line of text."
    like = body.get("like", "")
    if "like" in body and not (isinstance(like, str) and is_identity(like)):
        return "like must be an id, a UUIDv7 in lower case."
    wrong = measure_error(body["stick"], factors) if "stick" in body else ""
    return places_error(places) or line_error(body["called"], NAME) or wrong
