"""Whatever is outside the subset is refused with file, line, what was found and what to write instead."""

import ast
import traceback
from pathlib import Path

import pytest

from webapp.phone.translate import Refused, translate

HERE = Path(__file__).parent
PHONE = HERE.parent.parent / "webapp" / "phone"
# What case.py may import in a case.
OTHER = "from fractions import Fraction\n\nthere = Fraction(1)\n"


def cases() -> list[tuple[str, str]]:
    """Read the expected text of each refusal and its source."""
    parts = (HERE / "refusals.txt").read_text(encoding="utf-8").removeprefix("## ").split("\n## ")
    return [(head, source) for head, source in (part.split("\n", 1) for part in parts)]


def refusal(folder: Path, source: str) -> Refused:
    (folder / "case.py").write_text(source, encoding="utf-8")
    (folder / "other.py").write_text(OTHER, encoding="utf-8")
    with pytest.raises(Refused) as found:
        translate(folder)
    return found.value


@pytest.mark.parametrize(("text", "source"), cases())
def test_it_is_refused_with_its_line_and_advice(tmp_path: Path, text: str, source: str) -> None:
    assert str(refusal(tmp_path, source)) == text


@pytest.mark.parametrize("text", [text for text, _ in cases()])
def test_each_refusal_says_where_what_and_what_instead(text: str) -> None:
    place, _, rest = text.partition(": ")
    found, _, instead = rest.partition("; write ")
    assert place.startswith("case.py:")
    assert place.removeprefix("case.py:").isdigit()
    assert found
    assert instead.endswith(" instead")
    assert len(instead) > len(" instead")


def test_a_package_that_does_something_is_refused(tmp_path: Path) -> None:
    (tmp_path / "__init__.py").write_text('"""Only said."""\n\nA = 1\n', encoding="utf-8")
    with pytest.raises(Refused, match=r"__init__.py:3: a statement in the package's own file; write it in a module"):
        translate(tmp_path)


def test_every_place_that_refuses_has_a_case(tmp_path: Path) -> None:
    met = set()
    for _, source in cases():
        frame = traceback.extract_tb(refusal(tmp_path, source).__traceback__)[-1]
        met.add((Path(frame.filename).name, frame.lineno))
    assert [(file, lines[0]) for file, lines in places() if not met & {(file, line) for line in lines}] == []


def places() -> list[tuple[str, range]]:
    """Find every raise of a refusal in what translate.py stands on, by file and lines."""
    return [
        (path.name, range(node.lineno, (node.end_lineno or node.lineno) + 1))
        for path in [PHONE / "declared.py", *sorted(PHONE.glob("translate_*.py"))]
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.Raise)
        and isinstance(node.exc, ast.Call)
        and ast.unparse(node.exc.func) in ("refused", "self.refused", "self.outside")
    ]
