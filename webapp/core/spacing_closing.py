"""Whether slat, count and gap, all said, close: spoken numbers never do exactly (rule 3)."""

from fractions import Fraction

from webapp.core.setting import Setting
from webapp.core.spacing_refusal import last_of, refuse, room_said
from webapp.core.spacing_said import ZERO, Said, shares, total
from webapp.core.sums import amount, counted, widths_text


def check_closing(said: Said, how: Setting) -> None:
    """Refuse slat, count and gap, all said, that miss the room by more than marks can."""
    over = left_over(said)
    if over < 0 and said.frees_margin:
        refuse("gap", "margins-over", closing_parts(said, over, how))
    if abs(unclosed(said)) > tolerance(said, how):
        refuse(last_of(said, "gap"), "too-much" if over < 0 else "too-little", closing_parts(said, over, how))


def closing_parts(said: Said, over: Fraction, how: Setting) -> dict[str, str]:
    """Return what is said of a row that does not close."""
    u = shares(said.ends, said.count)
    true = (said.room - total(said.slat, said.count)) / u
    return {
        "slats": counted(said.count, "slat"),
        "widths": widths_text(said.slat, how),
        "gaps": counted(u, "gap"),
        "gap": "" if said.gap is None else amount(said.gap, how),
        "come": amount(said.room - over, how),
        "room": room_said(said, how),
        "over": amount(abs(over), how),
        "true": amount(true, how),
    }


def left_over(said: Said) -> Fraction:
    """Return what slat, count and gap, all said, leave of the room; less than 0 where they come to more."""
    if not said.slat or said.count == 0 or said.gap is None:
        return ZERO
    return said.room - total(said.slat, said.count) - shares(said.ends, said.count) * said.gap


def unclosed(said: Said) -> Fraction:
    """Return what is left over where no margin takes it."""
    return ZERO if said.frees_margin else left_over(said)


def tolerance(said: Said, how: Setting) -> Fraction:
    """Return how far spoken numbers may miss the room: half a graduation for every slat."""
    return said.count * how.division / 2
