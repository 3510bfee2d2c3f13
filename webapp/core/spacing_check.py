"""What cannot be laid out, refused at the last field concerned: how much is wrong, and what would be right."""

from webapp.core.sentence import sentence
from webapp.core.setting import Setting
from webapp.core.spacing_refusal import last_of, refuse, room_said
from webapp.core.spacing_said import MOST, Said, shares, total
from webapp.core.spacing_solve import Layout, layout, missed
from webapp.core.spacing_words import ENDS, REMEDIES
from webapp.core.sums import amount, counted, widths_text


def check_said(said: Said) -> None:
    """Refuse what asks for nothing, or for two things at once."""
    if said.margin is not None and said.ends != "margin":
        refuse("margin", "margin-unasked", {})
    if not said.slat and said.count == 0:
        if said.gap is None:
            refuse("count", "slat-or-count", {})
        refuse("gap", "gap-alone", {})
    if said.frees_margin and not (said.slat and said.count and said.gap is not None):
        refuse("margin", "margin-wanted", {})
    if said.count and said.count < said.least:
        refuse("ends", "one-slat", {"ends": dict(ENDS)[said.ends]})


def check_margins(said: Said, how: Setting) -> None:
    """Refuse two margins that leave no room between them."""
    if said.margin is not None and said.room <= 0:
        margin, both = amount(said.margin, how), amount(2 * said.margin, how)
        span, under = amount(said.span, how), amount(said.span / 2, how)
        refuse("margin", "margins-fill", {"margin": margin, "both": both, "span": span, "under": under})


def check_slats(said: Said, n: int, field: str, how: Setting) -> None:
    """Refuse n slats that leave nothing for a gap."""
    wood = total(said.slat, n)
    if wood >= said.room:
        key = "slats-fill" if wood == said.room else "slats-over"
        refuse(
            last_of(said, field),
            key,
            {
                "slats": counted(n, "slat"),
                "widths": widths_text(said.slat, how),
                "wood": amount(wood, how),
                "room": room_said(said, how),
                "over": amount(wood - said.room, how),
                "remedy": remedy(said, n, how),
            },
        )


def remedy(said: Said, n: int, how: Setting) -> str:
    """Return what would go in where n slats do not: fewer of them, or narrower ones."""
    most = n
    wood = total(said.slat, n)
    while most >= said.least and wood >= said.room:
        most -= 1
        wood -= said.slat[most % said.turns]
    if most >= said.least:
        return sentence(REMEDIES["fewer"], {"most": str(most)})
    if said.turns > 1:
        return REMEDIES["narrower-in-turn"]
    return sentence(REMEDIES["narrower"], {"under": amount(said.room / n, how)})


def check_most(said: Said, found: Layout) -> None:
    """Refuse a count that was only found because the search ends at the most that are worked."""
    if found.count < MOST:
        return
    further = layout(said, MOST + 1)
    if further.stands and missed(said, further) <= missed(said, found):
        refuse(last_of(said, "slat" if said.gap is None else "gap"), "too-many", {})


def check_gaps(said: Said, made: Layout, how: Setting) -> None:
    """Refuse gaps, said together with a count, that leave no wood."""
    if said.slat or said.gap is None or made.stands:
        return
    u = shares(said.ends, said.count)
    air = u * said.gap
    refuse(
        last_of(said, "gap"),
        "gaps-fill" if air == said.room else "gaps-over",
        {
            "count": str(said.count),
            "gaps": counted(u, "gap"),
            "gap": amount(said.gap, how),
            "air": amount(air, how),
            "room": room_said(said, how),
            "over": amount(air - said.room, how),
            "under": amount(said.room / u, how),
        },
    )


def check_shoulder(said: Said, made: Layout, how: Setting) -> None:
    """Refuse edge shoulders that leave no tenon on the narrowest slat."""
    width = min(made.widths)
    if said.shoulder is not None and 2 * said.shoulder >= width:
        shoulder, under = amount(said.shoulder, how), amount(width / 2, how)
        refuse("shoulder", "shoulder-wide", {"shoulder": shoulder, "width": amount(width, how), "under": under})
