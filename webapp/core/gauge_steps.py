"""What is done rail by rail, as it is said in a shop."""

from webapp.core.gauge_solve import Rail
from webapp.core.gauge_words import FITS, LOOSE, STEPS
from webapp.core.mark import length
from webapp.core.sentence import sentence
from webapp.core.setting import Setting
from webapp.core.sheet import Part, figure
from webapp.core.sums import amount


def steps(rails: list[Rail], how: Setting) -> list[Part]:
    """Return a step for each rail."""
    return [figure(f"rail-{i + 1}", rail.name, rail_words(rail, how)) for i, rail in enumerate(rails)]


def rail_words(rail: Rail, how: Setting) -> str:
    """Return what is done to one rail's edge, and what stays loose."""
    parts = {"cut": amount(rail.parallel, how), "passes": rail.jointing.words, "line": line_words(rail, how)}
    step = sentence(STEPS[doing(rail)], parts)
    if all(place.fits for place in rail.places):
        return sentence(FITS, {"step": step})
    loose = loose_words(rail, how)
    return sentence(LOOSE, {"step": step, "size": loose}) if loose else step


def doing(rail: Rail) -> str:
    """Return which of the words fit a rail."""
    if rail.cut == 0:
        return "none"
    if not rail.taper:
        return "parallel"
    return "both" if rail.parallel > 0 else "taper"


def line_words(rail: Rail, how: Setting) -> str:
    """Return where the line of a taper runs: `1/16 at left, nothing at right`."""
    cuts = [amount(cut, how) if cut > 0 else "nothing" for cut in rail.taper]
    return ", ".join([f"{cuts[i]} at {rail.places[i].said.end}" for i in range(len(cuts))])


def loose_words(rail: Rail, how: Setting) -> str:
    """Return by how much a rail is loose, and at which of its ends."""
    found = []
    for place in rail.places:
        if place.loose:
            where = f" at {place.said.end}" if place.said.end else ""
            found.append(amount(-place.difference, how) + where)
    return ", ".join(found)


def rail_parts(rails: list[Rail], how: Setting) -> list[Part]:
    """Return the rails as data: the parallel cut and the taper."""
    return [
        {
            "rail": rail.name,
            "parallel": length(rail.parallel, how),
            "passes": rail.jointing.passes,
            "taper": [{"place": rail.places[i].said.name, "cut": length(cut, how)} for i, cut in enumerate(rail.taper)],
            "cut": length(rail.cut, how),
        }
        for rail in rails
    ]
