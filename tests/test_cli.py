"""The command line: the same answer as JSON and page, errors as lines, backup and restore."""

from pathlib import Path

import pytest
from click.testing import CliRunner

from webapp.app import create_app
from webapp.cli import main
from webapp.core.entries import draft
from webapp.store import Store
from webapp.store.folder import held
from webapp.store.ids import now, uuid7
from webapp.tools import TOOLS
from webapp.units import FACTORS


def run(*words: str):
    return CliRunner().invoke(main, list(words))


@pytest.mark.parametrize("name", TOOLS)
def test_the_command_line_gives_the_json_of_the_address(tmp_path: Path, name: str) -> None:
    example = dict(TOOLS[name].example)
    app = create_app(tmp_path)
    answer = app.test_client().get(f"/work/{name}.json", query_string=example)
    app.extensions["shoulderline"].close()
    said = run("work", name, *(f"{field}={text}" for field, text in example.items()), "--json")
    assert said.exit_code == 0
    assert said.stdout == answer.text + "\n"


def test_the_answer_in_words_comes_first() -> None:
    said = run("work", "spacing", "span=58 3/8", "slat=2 3/4", "count=9")
    assert said.stdout.splitlines()[0] == "Gap, ten of them: 3 3/8 scant"
    assert "  Slat 2, left: 9 15/32 strong" in said.stdout


def test_bad_input_is_an_error_by_its_field_and_exit_2() -> None:
    said = run("work", "spacing", "span=58 3/0", "slat=2 3/4", "count=none")
    assert said.exit_code == 2
    assert said.stdout == ""
    assert [line.split(":")[0] for line in said.stderr.splitlines()] == ["span", "count"]


def test_bad_input_as_json_is_an_error_object() -> None:
    said = run("work", "spacing", "span=58 3/0", "--json")
    assert said.exit_code == 2
    assert said.stderr.startswith('{"errors":{"span":"')


@pytest.mark.parametrize("word", ["colour=red", "span"])
def test_what_is_no_field_is_an_error(word: str) -> None:
    said = run("work", "spacing", "span=30", "slat=2", "count=7", word)
    assert said.exit_code == 2
    assert said.stderr.startswith(word.split("=")[0] + ": ")


def test_an_unknown_tool_is_said_with_those_there_are() -> None:
    said = run("work", "nothing")
    assert said.exit_code == 1
    assert "spacing" in said.stderr


def started(folder: Path) -> str:
    with Store(folder) as store:
        name = uuid7()
        drafted = draft("project", {"name": "Bench", "unit": "in", "graduation": "1/32"}, None, TOOLS, FACTORS)
        entry = {"id": name, "project": name, **drafted, "made_at": now(), "by": "test"}
        assert store.add([entry])["kept"] == [name]
    return name


def test_a_backup_is_restored(tmp_path: Path) -> None:
    here, there, file = tmp_path / "here", tmp_path / "there", tmp_path / "kept.backup"
    name = started(here)
    assert run("backup", str(file), "--data", str(here)).exit_code == 0
    started(there)
    assert run("restore", str(file), "--data", str(there)).exit_code == 0
    with Store(there) as store:
        assert store.projects() == [name]


def test_nothing_is_restored_under_a_server_that_runs(tmp_path: Path) -> None:
    here, file = tmp_path / "here", tmp_path / "kept.backup"
    name = started(here)
    run("backup", str(file), "--data", str(here))
    with held(here):
        said = run("restore", str(file), "--data", str(here))
    assert said.exit_code == 1
    assert "stop it first" in said.stderr
    with Store(here) as store:
        assert store.projects() == [name]


def test_what_is_no_backup_is_refused(tmp_path: Path) -> None:
    file = tmp_path / "letter.txt"
    file.write_text("Dear Sir")
    said = run("restore", str(file), "--data", str(tmp_path / "here"))
    assert said.exit_code == 1
    assert "Traceback" not in said.stderr
