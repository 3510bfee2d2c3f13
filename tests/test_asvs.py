"""The table of the OWASP ASVS in DEVELOPERS.md names tests that there are."""

import re
from pathlib import Path

ROOT = Path(__file__).parent.parent
HEADING = "## OWASP ASVS 5.0"
ROW = re.compile(r"^\| V(\d+\.[\dx.]+) \| ([12, ]+) \| (.+?) \| (.+) \|$", re.MULTILINE)
NAMED = re.compile(r"`(test_\w+)`")
DEFINED = re.compile(r"^\s*def (test_\w+)\(", re.MULTILINE)
FILE = re.compile(r"\b(tests/[\w/]+\.py)\b")


def section() -> str:
    """The table's section, up to the next heading."""
    after = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8").partition(HEADING)[2]
    return re.split(r"^## ", after, maxsplit=1, flags=re.MULTILINE)[0]


def test_every_test_that_the_table_names_exists() -> None:
    there = {
        name
        for file in (ROOT / "tests").rglob("test_*.py")
        for name in DEFINED.findall(file.read_text(encoding="utf-8"))
    }
    named = set(NAMED.findall(section()))
    assert len(named) > 40
    assert named - there == set()
    assert [file for file in FILE.findall(section()) if not (ROOT / file).exists()] == []


def test_every_row_has_a_number_of_its_own_a_level_and_an_answer() -> None:
    lines = [line for line in section().splitlines() if line.startswith("| V")]
    rows = ROW.findall(section())
    assert len(rows) == len(lines) > 80
    assert len({number for number, *_ in rows}) == len(rows)
