"""The sheet of a gauge stick, and each place as data."""

from webapp.core.gauge_figures import answer, figures
from webapp.core.gauge_notes import cautions, notes
from webapp.core.gauge_solve import ZERO, Fitted, Place
from webapp.core.gauge_steps import rail_parts, steps
from webapp.core.gauge_strips import strips
from webapp.core.gauge_sums import sums
from webapp.core.mark import length
from webapp.core.setting import Setting
from webapp.core.sheet import Length, Part


def sheet_parts(made: Fitted, jointer: list[str], how: Setting) -> Part:
    """Return the parts of the sheet, the tool's own after the common ones; `jointer` is what to mind there."""
    overall = {} if made.tenon is None else {"overall": length(made.gauge + 2 * made.tenon, how)}
    nothing = length(ZERO, how)
    return {
        "answer": answer(made, how),
        "figures": figures(made, how),
        "steps": steps(made.rails, how),
        "strips": strips(made, how),
        "sums": sums(made, how),
        "cautions": cautions(made, jointer, how),
        "notes": notes(made, how),
        "places": [place_part(place, nothing, how) for place in made.places],
        "rails": rail_parts(made.rails, how),
        "shoulder": length(made.gauge, how),
        **overall,
    }


def place_part(place: Place, nothing: Length, how: Setting) -> Part:
    """Return one place as data; what is nothing is made once."""
    return {
        "place": place.said.name,
        "opening": length(place.opening, how),
        "difference": length(place.difference, how),
        "fits": place.fits,
        "trim": length(place.trim, how) if place.trim > 0 else nothing,
        "passes": place.jointing.passes,
    }
