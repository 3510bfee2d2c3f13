"""The manifest is made of what stands in the static folder, and of the tools."""

import json
from pathlib import Path

import pytest

from webapp.phone.made import MadeError
from webapp.phone.manifest import manifest
from webapp.phone.stamp import PLACEHOLDER
from webapp.tools import TOOLS

HEAD = b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR" + (360).to_bytes(4, "big") + (740).to_bytes(4, "big")


@pytest.fixture
def static(tmp_path: Path) -> Path:
    for name in ["icons/mark.svg", "icons/mark-192.png", "icons/other.png", "screens/project.png"]:
        (tmp_path / name).parent.mkdir(exist_ok=True)
        (tmp_path / name).write_bytes(HEAD)
    return tmp_path


def test_icons_are_named_by_their_sizes(static: Path) -> None:
    found = {icon["src"]: icon for icon in json.loads(manifest(static, {}))["icons"]}
    base = f"/static/{PLACEHOLDER}/icons"
    assert set(found) == {f"{base}/mark.svg", f"{base}/mark-192.png"}
    assert (found[f"{base}/mark-192.png"]["sizes"], found[f"{base}/mark-192.png"]["type"]) == ("192x192", "image/png")
    assert (found[f"{base}/mark.svg"]["sizes"], found[f"{base}/mark.svg"]["type"]) == ("any", "image/svg+xml")


def test_a_screenshot_says_its_size_and_what_is_on_it(static: Path) -> None:
    [shot] = json.loads(manifest(static, {}))["screenshots"]
    assert (shot["sizes"], shot["form_factor"]) == ("360x740", "narrow")
    assert shot["label"]


def test_a_screenshot_without_words_stops_the_start(static: Path) -> None:
    (static / "screens" / "strange.png").write_bytes(HEAD)
    with pytest.raises(MadeError, match=r"strange\.png: this picture has no words"):
        manifest(static, {})


def test_every_tool_has_its_shortcut(static: Path) -> None:
    found = json.loads(manifest(static, TOOLS))["shortcuts"]
    assert [(each["name"], each["url"]) for each in found] == [(t.title, f"/work/{t.name}") for t in TOOLS.values()]
