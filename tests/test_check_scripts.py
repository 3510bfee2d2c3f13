"""The check of the scripts' types finds what it is there to find."""

import re
from pathlib import Path

import pytest

from tests import check_scripts

GOOD = "/** @param {string} text */\nexport const twice = (text) => text + text;\n"
CORE_USED = 'import { work } from "./core/working.js";\nexport const answer = work(1, 2, 3);\n'


WRONG = {
    "a wrong type": GOOD + "twice(5);\n",
    "no type": "export const twice = (text) => text + text;\n",
    "no module": CORE_USED.replace("working", "nowhere"),
    "no name": CORE_USED.replace("work", "werk").replace("werking", "working"),
    "too few arguments": CORE_USED.replace(", 3", ""),
    "nothing made": 'import { NOTHING } from "./made.js";\nexport const nothing = NOTHING;\n',
}


def status(folder: Path, monkeypatch: pytest.MonkeyPatch, scripts: dict[str, str]) -> int:
    (folder / "static").mkdir()
    (folder / "made").mkdir()
    for name, script in scripts.items():
        (folder / "static" / f"{name}.js").write_text(script, encoding="utf-8")
    for name in check_scripts.WORKERS:
        (folder / "static" / name).write_text("self.caches.keys();\n", encoding="utf-8")
    monkeypatch.setattr(check_scripts, "STATIC", folder / "static")
    node = check_scripts.node_folder()
    check_scripts.install(node)
    check_scripts.declare(folder / "made")
    return check_scripts.check(node, folder / "made")


def test_what_is_right_passes(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    assert status(tmp_path, monkeypatch, {"a script": GOOD, "a use of the core": CORE_USED}) == 0


def test_what_is_wrong_is_found(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]
) -> None:
    """Each wrong script beside the others and beside those that are right: the compiler names all of the wrong."""
    right = {"a script": GOOD, "a use of the core": CORE_USED}
    assert status(tmp_path, monkeypatch, WRONG | right) != 0
    named = re.findall(r"^.*/([^/]*)\.js\(\d+,\d+\): error ", capfd.readouterr().out, re.MULTILINE)
    assert set(named) == set(WRONG)
