"""Typed text: white space, names that compare alike, and lines."""

WHITE = " \t\u00a0\u2009\u202f"
CAPITALS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
SMALL = "abcdefghijklmnopqrstuvwxyz"
SMALL_OF = {CAPITALS[place]: SMALL[place] for place in range(len(CAPITALS))}
FOLDED = {**SMALL_OF, **{letter: " " for letter in WHITE}}


def trim(text: str) -> str:
    """Take the white space off both ends."""
    return text.strip(WHITE)


def indent(text: str) -> int:
    """Count the white space before what is typed; a blank text has nothing that it could be before."""
    for place, letter in enumerate(list(text)):
        if letter not in WHITE:
            return place
    return 0


def small(text: str) -> str:
    """Write ASCII capitals small and leave all other characters alone."""
    return "".join([SMALL_OF.get(letter, letter) for letter in text])


def fold_name(text: str) -> str:
    """Make two spellings of one name equal: ASCII case and runs of white space are folded."""
    plain = "".join([FOLDED.get(letter, letter) for letter in text])
    if "  " not in plain:
        return plain.strip(" ")
    return " ".join([word for word in plain.split(" ") if word != ""])


def lines(text: str) -> list[str]:
    """Part a text into lines, at CR LF and at LF."""
    return text.replace("\r\n", "\n").split("\n")
