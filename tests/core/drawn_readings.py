"""Texts drawn by chance: from the grammar's own alphabet, and lengths with one to three edits."""

import os
import random
from collections.abc import Iterator

from tests.core.other_reader import NUMBERS, ONES, TENS
from tests.core.places import SETTINGS
from webapp.core.setting import Setting

DRAWS = int(os.environ.get("SHOULDERLINE_FUZZ", "5000"))
LETTERS = list("0123456789") * 3 + list("  /-+.,x*×÷()'\"′″’”¼½¾⅜⅞\u00a0\t") + ["\u202f"]
# Characters that stand for one another, and some that do not quite.
FAMILIES = [
    list("0123456789"),
    [" ", "  ", "\u00a0", "\t", " - ", "-", " + "],
    list("'′’\"″”"),
    list("¼½¾⅜⅞⅓"),
    list(".,"),
]
UNITS = ["in", "ft", "mm", "cm", "m", "inches", "foot", "feet"]
PARTS = ["half", "halves", "quarter", "three-quarters", "eighths", "sixteenth", "thirty-seconds", "sixty fourths"]
LEANS = ["strong", "scant", "full", "heavy", "light", "shy"]
WORDS = [*NUMBERS, *UNITS, *PARTS, *LEANS, "and", "a", "an", "a hair", "plus", "minus"]
STRANGERS = ["é", "%", "foo", "∅"]
SNIPPETS = [" + ", " - ", " x ", " / ", "3/16", "17", "2-17/64", " 1/2", "2.5", "45,5", "5' 2\""]
PIECES = LETTERS * 2 + WORDS + SNIPPETS * 3 + STRANGERS


def draws(count: int, seed: int) -> Iterator[tuple[str, Setting]]:
    """Draw texts, each with the setting it is read in."""
    chance = random.Random(seed)
    for _ in range(count):
        how = chance.choice(SETTINGS)
        if chance.random() < 0.2:
            yield "".join(chance.choices(PIECES, k=chance.randint(1, 6))), how
        else:
            yield edited(chance, a_reading(chance, how), chance.choice([1, 1, 1, 2, 2, 3])), how


def edited(chance: random.Random, text: str, edits: int) -> str:
    """Change a text in so many places."""
    for _ in range(edits):
        at = chance.randrange(len(text) + 1)
        text = chance.choice([likely, likely, rough])(chance, text, at)
    return text


def likely(chance: random.Random, text: str, at: int) -> str:
    """Change a character into one of its own kind, as a slip of the thumb or another habit would."""
    old = text[at : at + 1]
    for family in FAMILIES:
        if old and old in family:
            return text[:at] + chance.choice(family) + text[at + 1 :]
    return text[:at] + chance.choice([old.upper(), old.lower()]) + text[at + 1 :]


def rough(chance: random.Random, text: str, at: int) -> str:
    """Put in, take out, put in place of another, or let two change places."""
    after = at + chance.randint(0, 1)
    kind = chance.random()
    if kind < 0.15:
        return text[:at] + text[at + 1 : at + 2] + text[at : at + 1] + text[at + 2 :]
    if kind < 0.3:
        return text[:at] + text[after:]
    return text[:at] + chance.choice(LETTERS if kind < 0.9 else PIECES) + text[after:]


def a_reading(chance: random.Random, how: Setting) -> str:
    """Draw a length as somebody would type or say it."""
    if chance.random() < 0.02:
        return a_large_sum(chance)
    terms = chance.choice([1, 1, 1, 2, 3, 5])
    text = a_term(chance, how)
    for _ in range(terms - 1):
        sign = chance.choice([" + ", " - ", " + ", " x ", " / ", "x", "*", "÷"])
        plain = str(chance.randint(1, 12)) if sign not in (" + ", " - ") else a_term(chance, how)
        text = f"{text}{sign}{plain}" if chance.random() < 0.8 else f"({text}){sign}{plain}"
    return chance.choice(["", "", "", "-"]) * (chance.random() < 0.2) + text + a_lean(chance)


def a_large_sum(chance: random.Random) -> str:
    """Draw a sum of about as many terms, or about as deep, as a sum may be."""
    if chance.random() < 0.5:
        return " + ".join(str(chance.randint(0, 99)) for _ in range(chance.randint(14, 18)))
    deep = chance.randint(3, 6)
    return "(" * deep + "1" + " + 2)" * deep


def a_lean(chance: random.Random) -> str:
    return chance.choice(["", "", "", "+", "-", " ", ", "]).replace(" ", " " + chance.choice(LEANS))


def a_term(chance: random.Random, how: Setting) -> str:
    kind = chance.random()
    if kind < 0.15:
        foot, inch = chance.choice([("'", '"'), (" ft", ""), (" ft", " in"), ("′", "″"), (" feet", "")])
        return f"{chance.randint(0, 12)}{foot}{chance.choice([' ', '-', ''])}{an_amount(chance)}{inch}"
    if kind < 0.5 and not how.metric:
        return an_amount(chance) + chance.choice(["", "", '"', " in", "in", "”"])
    if kind < 0.6:
        return said_in_words(chance) + ("" if not how.metric else " in")
    unit = chance.choice(["", "", " mm", "mm", " cm"] if how.metric else [" mm", " cm", "mm"])
    return f"{chance.randint(0, 900)}{chance.choice(['', '.5', ',5', '.25'])}{unit}"


def an_amount(chance: random.Random) -> str:
    whole, bottom = chance.randint(0, 99), chance.choice([2, 4, 8, 16, 32, 64, 3, 10])
    fraction = f"{chance.randint(1, bottom)}/{bottom}"
    forms = [
        f"{whole}",
        fraction,
        f"{whole} {fraction}",
        f"{whole}-{fraction}",
        f"{whole}¾",
        f"{whole} ⅜",
        f"{whole}.25",
        ".5",
    ]
    return chance.choice(forms)


def said_in_words(chance: random.Random) -> str:
    joined = chance.choice(["-", "-", " "])
    whole = chance.choice([*NUMBERS, "12", f"{chance.choice(TENS)}{joined}{chance.choice(ONES[1:])}"])
    part = chance.choice(["a half", "three quarters", "3/16", "seven eighths", "eleven sixteenths", "7 thirty-seconds"])
    return chance.choice([whole, part, f"{whole} and {part}", f"{whole} {part}", "a hair"])
