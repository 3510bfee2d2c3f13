"""What there is to do at the dry fit and the trim: the round laid out, measured, gauged, and measured once more."""

from webapp.core.address import form_address, round_address, work_address
from webapp.core.piece import Piece
from webapp.core.piece_rails import gauge, rails


def fit_next(here: Piece) -> tuple[str, str, str]:
    """Return what there is to do at the dry fit, what there is to know beside it, and where it is done."""
    if here.rounds:
        return trim_next(here)
    way = form_address(here.summary["id"], "round")
    return "Put the piece together dry, and read every opening", "at both ends of its rails", way


def trim_next(here: Piece) -> tuple[str, str, str]:
    """Return the gauge stick's sheet where there is none yet; the rails that are to be cut come before all stages."""
    if gauge(here.summary, here.worked) is None:
        empty = work_address("gauge", {"project": here.summary["id"]})
        return "Work the gauge stick from the openings of the dry fit", "", _last(here) or empty
    if rails(here.summary, here.worked):
        again = f"{_last(here)}#after" if here.rounds else ""
        return "Put the piece together dry once more, and try the stick in every place", "", again
    return "Tick the trim: nothing comes off any rail", "", ""


def _last(here: Piece) -> str:
    """Return where the last round is: its gauge sheet is worked from there, and it is measured once more from there."""
    return round_address(here.summary["id"], here.rounds[-1]["entry"]) if here.rounds else ""
