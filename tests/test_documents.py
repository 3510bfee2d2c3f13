"""The documents tell the truth: the README's commands are those that run, and the map has every file."""

import re
from fnmatch import fnmatch
from pathlib import Path

import pytest
from click.testing import CliRunner

from webapp.cli import PORT, main

TOP = Path(__file__).parent.parent
README = (TOP / "README.md").read_text(encoding="utf-8")
DEVELOPERS = (TOP / "DEVELOPERS.md").read_text(encoding="utf-8")
ROOMS = ("webapp", "static", "templates", "tests")
ALLOWED = {"README.md", "DEVELOPERS.md", "CHANGELOG.md", "LICENSE", "pyproject.toml", *ROOMS}
TESTS_COMMAND = ".venv/bin/python -m tests"


def commands(text: str) -> list[str]:
    return [line for block in re.findall(r"```sh\n(.*?)```", text, re.DOTALL) for line in block.splitlines() if line]


def mapped() -> list[str]:
    """Return the patterns of the map: the first word of each line of its block."""
    block = re.search(r"```map\n(.*?)```", DEVELOPERS, re.DOTALL)
    assert block
    return [pattern for line in block[1].splitlines() if line.strip() for pattern in line.split("  ")[0].split()]


def kept_files() -> list[str]:
    found = [path for room in ROOMS for path in (TOP / room).rglob("*") if path.is_file()]
    names = [path.relative_to(TOP).as_posix() for path in found]
    return [name for name in names if "__pycache__" not in name]


def test_the_readme_has_two_commands_and_ci_runs_the_second() -> None:
    start, test = commands(README)
    assert start.endswith(".venv/bin/shoulderline serve --demo")
    assert test.endswith(TESTS_COMMAND)
    assert TESTS_COMMAND in (TOP / ".ci" / "run").read_text(encoding="utf-8")
    assert f"http://127.0.0.1:{PORT}/" in README


@pytest.mark.parametrize("command", ["serve", "work", "backup", "restore"])
def test_every_command_is_named_in_the_readme(command: str) -> None:
    assert f"shoulderline {command}" in README
    assert CliRunner().invoke(main, [command, "--help"]).exit_code == 0


def test_every_file_has_its_place_on_the_map() -> None:
    patterns = mapped()
    assert [name for name in kept_files() if not any(fnmatch(name, pattern) for pattern in patterns)] == []


def test_the_map_names_nothing_that_is_not_there() -> None:
    names = kept_files()
    assert [pattern for pattern in mapped() if not any(fnmatch(name, pattern) for name in names)] == []


def test_nothing_else_stands_at_the_top() -> None:
    assert {path.name for path in TOP.iterdir() if path.name[0] != "."} - ALLOWED - {"build", "dist"} == set()


@pytest.mark.parametrize("name", ["README.md", "DEVELOPERS.md"])
def test_what_the_documents_link_to_is_there(name: str) -> None:
    text = (TOP / name).read_text(encoding="utf-8")
    links = [link for link in re.findall(r"\]\(([^)#]+)\)", text) if "://" not in link]
    assert [link for link in links if not (TOP / link).exists()] == []
