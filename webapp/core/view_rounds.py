"""What a project's page says of its rounds of dry fit, and of readings that are no lengths."""

from fractions import Fraction
from typing import Any, TypeAlias

from webapp.core.address import round_address
from webapp.core.rounds import places_of
from webapp.core.setting import Setting, setting

Summary: TypeAlias = dict[str, Any]
View: TypeAlias = dict[str, Any]


def rounds_view(summary: Summary, factors: dict[str, Fraction]) -> View:
    """Give the rounds of a project, the last one first, and its conditions."""
    how = setting(summary["unit"], summary["graduation"], factors)
    rounds = [_round_line(summary, head, how) for thing in summary["rounds"] for head in thing["heads"]]
    heads = [head for thing in summary["conditions"] for head in thing["heads"]]
    return {"rounds": list(reversed(rounds)), "conditions": [_condition(head) for head in heads]}


def _round_line(summary: Summary, item: dict[str, Any], how: Setting) -> View:
    places = places_of(summary, item, how)
    left = len([place for place in places if place.wanted])
    read = len([place for place in places if place.taken])
    return {
        "title": item["called"],
        "href": round_address(summary["id"], item["entry"]),
        "holds": f"{read} of {len(places)} places measured, {left} to measure" if left else f"{read} places measured",
    }


def _condition(head: dict[str, Any]) -> View:
    bare = head["text"][-1:] in "0123456789"
    return {
        "place": head["place"],
        "quantity": head["quantity"],
        "said": f"{head['text']} {head['unit']}" if bare else head["text"],
    }
