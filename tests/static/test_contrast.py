"""Contrast, computed from the tokens in static/style.css, for each theme (WCAG 2.2: relative luminance)."""

import re
from itertools import product

import pytest

from webapp.folders import STATIC

CSS = (STATIC / "style.css").read_text(encoding="utf-8")
BLOCK = re.compile(r"(?P<selector>:root[^{}]*)\{(?P<body>[^{}]*)\}")
TOKEN = re.compile(r"--(\w+): (#[0-9a-f]{6});")
THEMES = ("light", "dark", "sun")
TEXT = [
    *product(("ink", "soft", "cut"), ("ground", "raised")),
    ("ink", "key"),
    ("soft", "key"),
    ("ground", "ink"),  # the main button's words
]
MEANING = [
    *product(("edge", "ink", "cut"), ("ground", "raised")),
    ("ink", "wood"),  # a slat's outline
    ("ink", "key"),  # the key that is held down
]


def blocks() -> list[tuple[str, dict[str, str]]]:
    found = [(match["selector"].strip(), dict(TOKEN.findall(match["body"]))) for match in BLOCK.finditer(CSS)]
    return [(selector, tokens) for selector, tokens in found if tokens]


def tokens(theme: str) -> dict[str, str]:
    selector = ":root" if theme == "light" else f':root[data-theme="{theme}"]'
    (found,) = [colours for name, colours in blocks() if name == selector]
    return found


def luminance(colour: str) -> float:
    parts = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    linear = [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one: str, other: str) -> float:
    dark, light = sorted((luminance(one), luminance(other)))
    return (light + 0.05) / (dark + 0.05)


def test_contrast_is_computed_as_wcag_has_it() -> None:
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#777777", "#ffffff") == pytest.approx(4.48, abs=0.005)


@pytest.mark.parametrize("theme", THEMES)
@pytest.mark.parametrize(("ink", "ground"), TEXT)
def test_text_stands_out_seven_to_one(theme: str, ink: str, ground: str) -> None:
    assert contrast(tokens(theme)[ink], tokens(theme)[ground]) >= 7


@pytest.mark.parametrize("theme", THEMES)
@pytest.mark.parametrize(("line", "ground"), MEANING)
def test_lines_that_carry_meaning_stand_out_three_to_one(theme: str, line: str, ground: str) -> None:
    assert contrast(tokens(theme)[line], tokens(theme)[ground]) >= 3


def test_the_systems_dark_is_the_chosen_dark() -> None:
    dark = [colours for name, colours in blocks() if name in (":root:not([data-theme])", ':root[data-theme="dark"]')]
    assert len(dark) == 2
    assert dark[0] == dark[1]


def test_every_theme_has_every_token() -> None:
    names = {theme: set(tokens(theme)) for theme in THEMES}
    assert names["light"] == names["dark"] == names["sun"]
    used = set(re.findall(r"var\(--(\w+)\)", CSS))
    assert {ink for pair in TEXT + MEANING for ink in pair} <= names["light"] & used


def test_sunlight_is_black_on_white() -> None:
    assert set(tokens("sun").values()) == {"#000000", "#ffffff"}


def test_colours_stand_in_the_tokens_and_nowhere_else() -> None:
    rest = BLOCK.sub("", CSS)
    assert not re.findall(r"#[0-9a-fA-F]{3,8}\b|rgba?\(|hsla?\(", rest)
