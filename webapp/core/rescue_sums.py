"""The working where slats are cut and the opening moved."""

from webapp.core.rescue_solve import Rescue
from webapp.core.setting import Setting
from webapp.core.sums import exactly


def sums(made: Rescue, how: Setting) -> list[str]:
    """Return the working."""
    whole, wanted = exactly(made.overall, how), exactly(made.wanted, how)
    lines = []
    if made.shoulder is not None:
        lines += over_sums(made, exactly(made.shoulder, how), how)
    if made.mends:
        lines.append(f"({whole} - {wanted}) / 2 = {exactly(made.tenon, how)}")
    elif made.shoulder is None:
        lines.append(f"{wanted} - {whole} = {exactly(made.short, how)}")
    if made.room is not None:
        lines.append(f"{exactly(made.tenon, how)} + {exactly(made.clearance, how)} = {exactly(made.room.needs, how)}")
    if made.room is not None and made.room.deepen > 0:
        depth, deepen = exactly(made.room.depth, how), exactly(made.room.deepen, how)
        lines.append(f"{exactly(made.room.needs, how)} - {depth} = {deepen}")
    return lines


def over_sums(made: Rescue, shoulder: str, how: Setting) -> list[str]:
    """Return how the slats as cut differ from the opening, and what half of that does."""
    wanted, over = exactly(made.wanted, how), exactly(abs(made.over), how)
    if made.over < 0:
        return [f"{wanted} - {shoulder} = {over}"]
    was = f"({exactly(made.overall, how)} - {shoulder}) / 2 = {exactly(made.was, how)}"
    if made.over == 0:
        return []
    return [f"{shoulder} - {wanted} = {over}", f"{over} / 2 = {exactly(made.recut, how)}", was]
