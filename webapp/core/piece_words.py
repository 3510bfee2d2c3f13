"""How parts are named in a sentence."""

from webapp.core.sums import counted
from webapp.core.text import CAPITALS, SMALL, SMALL_OF

CAPITAL_OF = {SMALL[place]: CAPITALS[place] for place in range(len(CAPITALS))}


def counted_words(sheets: int, parts: int) -> str:
    """Return how many sheets and parts there are: "2 sheets and 1 part"."""
    return " and ".join([counted(n, noun) for n, noun in ((sheets, "sheet"), (parts, "part")) if n])


def the(name: str) -> str:
    """Return a part's name in a sentence: "the upper rail"; a letter or a short form keeps its capitals."""
    plain = len(name) > 1 and name[0] in SMALL_OF and name[1] in CAPITAL_OF
    return f"the {SMALL_OF[name[0]]}{name[1:]}" if plain else f"the {name}"


def capital(text: str) -> str:
    """Return a text that begins a sentence."""
    return CAPITAL_OF.get(text[:1], text[:1]) + text[1:]
