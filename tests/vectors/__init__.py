"""Cases as data: each file holds groups, each group its rule and its cases; numbers stand as text."""

import json
from functools import cache
from pathlib import Path
from typing import Any

FOLDER = Path(__file__).parent


@cache
def load(name: str) -> dict[str, Any]:
    """Return one file of vectors, `readings` for readings.json."""
    return json.loads((FOLDER / f"{name}.json").read_text(encoding="utf-8"))


def cases(name: str) -> list[dict[str, Any]]:
    """Return every case of a file; what its group says (rule, unit, graduation) holds for each."""
    return [
        {key: value for key, value in group.items() if key != "cases"} | case
        for group in load(name)["groups"]
        for case in group["cases"]
    ]


def name_of(case: dict[str, Any]) -> str:
    """Name a case for a test's id."""
    return " ".join(str(case[key]) for key in ("unit", "graduation", "text", "inches") if key in case)
