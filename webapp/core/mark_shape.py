"""Whether a text has the shape of a mark, so that it can be drawn as one: readings are kept as they were said."""

DIGITS = "0123456789"
LEANS = ["strong", "scant"]
HAIRS = ["a hair", "-a hair"]
# Of the words of a mark: feet, number, fraction ("quotient").
SHAPES = ["n", "q", "nq", "fn", "fnq"]


def is_mark(text: str) -> bool:
    """Tell whether `text` is worded as the program words a mark: `17 11/16 strong`, `5' 2 3/16"`, `45.5`."""
    number = without_lean(text)
    if number in HAIRS:
        return True
    bare = number[:-1] if number.endswith('"') else number
    unsigned = bare[1:] if bare.startswith("-") else bare
    return "".join([shape(word) for word in unsigned.split(" ")]) in SHAPES


def without_lean(text: str) -> str:
    """Leave out a lean in words at the end."""
    for lean in LEANS:
        if text.endswith(" " + lean):
            return text[: -len(lean) - 1]
    return text


def shape(word: str) -> str:
    """Name one word's shape: n, q, f, or x for what a mark has not."""
    if word.endswith("'"):
        return "f" if is_whole(word[:-1]) else "x"
    for sign, name in [("/", "q"), (".", "n")]:
        if sign in word:
            parts = word.split(sign)
            return name if len(parts) == 2 and all(is_whole(part) for part in parts) else "x"
    return "n" if is_whole(word) else "x"


def is_whole(word: str) -> bool:
    """Tell whether a word is digits and nothing else."""
    return word != "" and all(c in DIGITS for c in word)
