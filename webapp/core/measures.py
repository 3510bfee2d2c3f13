"""The measures of a part, each with its name; and the place at which it is read off the wood."""

MEASURES = (
    ("thickness", "thickness"),
    ("width", "width"),
    ("shoulder", "shoulder to shoulder"),
    ("overall", "over all"),
    ("tenon", "tenon length"),
    ("edge", "edge shoulder"),
    ("mortise", "mortise depth"),
)
LABELS = dict(MEASURES)


def measure_place(name: str, key: str) -> str:
    """Return the place at which a part's measure is read off the wood: "upper rail, width"."""
    return f"{name}, {LABELS[key]}"
