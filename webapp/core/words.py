"""The words that lengths are said in: numbers to ninety-nine and the parts of an inch."""

SMALL_NUMBERS = {
    "zero": 0, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8,
    "nine": 9, "ten": 10, "eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15,
    "sixteen": 16, "seventeen": 17, "eighteen": 18, "nineteen": 19,
}  # fmt: skip
TENS = {
    "twenty": 20, "thirty": 30, "forty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80,
    "ninety": 90,
}  # fmt: skip
# One part, several parts, and into how many an inch is cut.
SINGULAR = {"half": 2, "quarter": 4, "fourth": 4, "eighth": 8, "sixteenth": 16}
PLURAL = {"halves": 2, "quarters": 4, "fourths": 4, "eighths": 8, "sixteenths": 16}
# Parts of two words: what follows the tens word.
AFTER_TENS = {
    "thirty": {"second": 32, "seconds": 32},
    "sixty": {"fourth": 64, "fourths": 64},
}
SAID_ONE = {
    2: "a half", 4: "a quarter", 8: "an eighth", 16: "a sixteenth", 32: "a thirty-second", 64: "a sixty-fourth",
}  # fmt: skip
SAID_PLURAL = {
    2: "halves", 4: "quarters", 8: "eighths", 16: "sixteenths", 32: "thirty-seconds", 64: "sixty-fourths",
}  # fmt: skip
ARTICLES = ["a", "an"]
JOINING = ["and", "hair", "second", "seconds"]
LEANS = {"strong": 1, "full": 1, "heavy": 1, "scant": -1, "light": -1, "shy": -1}
UNIT_NAMES = {
    "in": "in", "inch": "in", "inches": "in", "ft": "ft", "foot": "ft", "feet": "ft", "mm": "mm", "cm": "cm",
    "m": "m",
}  # fmt: skip
SAID_SMALL = {number: word for word, number in SMALL_NUMBERS.items()}
SAID_TENS = {number: word for word, number in TENS.items()}


def is_number_word(word: str) -> bool:
    """Tell whether a word has a place in a number or a fraction."""
    return (
        word in SMALL_NUMBERS
        or word in TENS
        or word in SINGULAR
        or word in PLURAL
        or word in ARTICLES
        or word in JOINING
    )


def say_number(digits: str) -> str:
    """Say a whole number in words to ninety-nine; a greater one keeps its digits."""
    number = int(digits)
    if number in SAID_SMALL:
        return SAID_SMALL[number]
    if number > 99:
        return digits
    tens, ones = number - number % 10, number % 10
    return SAID_TENS[tens] if ones == 0 else f"{SAID_TENS[tens]}-{SAID_SMALL[ones]}"


def say_fraction(top: str, bottom: str) -> str:
    """Say a fraction in words; one of parts that have no word keeps its digits."""
    parts = int(bottom)
    if parts not in SAID_PLURAL:
        return f"{top}/{bottom}"
    return SAID_ONE[parts] if top == "1" else f"{say_number(top)} {SAID_PLURAL[parts]}"
