"""The check of the scripts' types finds what it is there to find."""

from pathlib import Path

import pytest

from tests import check_scripts

GOOD = "/** @param {string} text */\nexport const twice = (text) => text + text;\n"
CORE_USED = 'import { work } from "./core/working.js";\nexport const answer = work(1, 2, 3);\n'


def status(folder: Path, monkeypatch: pytest.MonkeyPatch, script: str) -> int:
    (folder / "static").mkdir()
    (folder / "made").mkdir()
    (folder / "static" / "page.js").write_text(script, encoding="utf-8")
    for name in check_scripts.WORKERS:
        (folder / "static" / name).write_text("self.caches.keys();\n", encoding="utf-8")
    monkeypatch.setattr(check_scripts, "STATIC", folder / "static")
    node = check_scripts.node_folder()
    check_scripts.install(node)
    check_scripts.declare(folder / "made")
    return check_scripts.check(node, folder / "made")


@pytest.mark.parametrize("script", [GOOD, CORE_USED], ids=["a script", "a use of the core"])
def test_what_is_right_passes(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, script: str) -> None:
    assert status(tmp_path, monkeypatch, script) == 0


@pytest.mark.parametrize(
    "script",
    [
        GOOD + "twice(5);\n",
        "export const twice = (text) => text + text;\n",
        CORE_USED.replace("working", "nowhere"),
        CORE_USED.replace("work", "werk").replace("werking", "working"),
        CORE_USED.replace(", 3", ""),
        'import { NOTHING } from "./made.js";\nexport const nothing = NOTHING;\n',
    ],
    ids=["a wrong type", "no type", "no module", "no name", "too few arguments", "nothing made"],
)
def test_what_is_wrong_is_found(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, script: str) -> None:
    assert status(tmp_path, monkeypatch, script) != 0
