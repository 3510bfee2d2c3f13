"""The shop to another computer and back: the phones notice nothing, and nothing is lost on either."""

import json
import stat
import zipfile
from pathlib import Path

import pytest
from click.testing import CliRunner

from tests.access.bench import Bench
from tests.test_cli import started
from webapp.access.authority import authority
from webapp.access.leaf import leaf
from webapp.access.moving import MoveError, arrive, move, refuse_moved
from webapp.access.name import FOLDER, decided
from webapp.app import create_app
from webapp.cli import main
from webapp.store import Store, StoreError
from webapp.store.folder import held


def shop(folder: Path) -> str:
    """Make a shop with a project, and return the project's id."""
    create_app(folder).extensions["shoulderline"].close()
    project = started(folder)
    place = decided(folder / FOLDER)
    leaf(folder / FOLDER, authority(folder / FOLDER, place.name), [place.name])
    return project


def kept(folder: Path) -> dict[str, object]:
    """What makes a shop the same one: the files, the epoch, the entries."""
    files = [folder / "form-key", *sorted((folder / FOLDER).iterdir())]
    with Store(folder) as store:
        return {file.name: file.read_bytes() for file in files} | {
            "epoch": store.epoch(),
            "entries": store.since(0, 1000),
        }


def test_a_shop_is_moved_and_moved_back(tmp_path: Path) -> None:
    here, there = tmp_path / "here", tmp_path / "there"
    shop(here)
    before = kept(here)
    move(here, tmp_path / "out")
    arrive(tmp_path / "out", there)
    assert kept(there) == before
    started(there)
    after = kept(there)
    assert after["entries"] != before["entries"]
    move(there, tmp_path / "back")
    arrive(tmp_path / "back", here, replace=True)
    assert kept(here) == after
    refuse_moved(here)


def test_a_paired_phone_notices_nothing(tmp_path: Path) -> None:
    """The same origin under the same root, and the same pairing, there and back."""
    bench = Bench(tmp_path / "here").start()
    bench.pair()
    origin, root, cookie = bench.origin, bench.shop.root.certificate, bench.cookie
    bench.stop()
    for source, target in (("here", "there"), ("there", "here")):
        move(tmp_path / source, tmp_path / f"to-{target}")
        arrive(tmp_path / f"to-{target}", tmp_path / target, replace=target == "here")
        bench = Bench(tmp_path / target).start()
        bench.cookie = cookie
        found = (bench.origin, bench.shop.root.certificate, bench.ask("/projects.json")[0])
        bench.cookie = ""
        stranger = bench.ask("/projects.json")[0]
        bench.stop()
        assert found == (origin, root, 200)
        assert stranger == 401


def test_the_file_and_what_arrives_is_its_owners_alone(tmp_path: Path) -> None:
    shop(tmp_path / "here")
    move(tmp_path / "here", tmp_path / "out")
    assert stat.S_IMODE((tmp_path / "out").stat().st_mode) == 0o600
    arrive(tmp_path / "out", tmp_path / "there")
    keys = [tmp_path / "there" / "form-key", *(tmp_path / "there" / FOLDER).iterdir()]
    assert len(keys) == 4
    assert {stat.S_IMODE(key.stat().st_mode) for key in keys} == {0o600}
    assert stat.S_IMODE((tmp_path / "there").stat().st_mode) == 0o700


def test_two_computers_are_never_one_shop(tmp_path: Path) -> None:
    """What was moved away is served no more, and is not moved twice."""
    shop(tmp_path / "here")
    move(tmp_path / "here", tmp_path / "out")
    with pytest.raises(MoveError, match="moved away"):
        refuse_moved(tmp_path / "here")
    with pytest.raises(MoveError, match="moved away"):
        move(tmp_path / "here", tmp_path / "again")
    said = CliRunner().invoke(main, ["serve", "--port", "0", "--data", str(tmp_path / "here")])
    assert said.exit_code == 1
    assert "arrive FILE --replace" in said.stderr


def test_a_folder_with_data_is_not_overwritten_unsaid(tmp_path: Path) -> None:
    shop(tmp_path / "here")
    project = shop(tmp_path / "there")
    before = kept(tmp_path / "there")
    move(tmp_path / "here", tmp_path / "out")
    with pytest.raises(MoveError, match="--replace"):
        arrive(tmp_path / "out", tmp_path / "there")
    assert kept(tmp_path / "there") == before
    arrive(tmp_path / "out", tmp_path / "there", replace=True)
    assert kept(tmp_path / "there") != before
    assert len(list((tmp_path / "there").glob("before-arrival-*/authority.pem"))) == 1
    (aside,) = (tmp_path / "there").glob("before-restore-*.db")
    (tmp_path / "look").mkdir()
    aside.rename(tmp_path / "look" / "shoulderline.db")
    with Store(tmp_path / "look") as store:
        assert store.projects() == [project]


def test_nothing_is_moved_under_a_server_that_runs(tmp_path: Path) -> None:
    shop(tmp_path / "here")
    shop(tmp_path / "other")
    move(tmp_path / "other", tmp_path / "out")
    with held(tmp_path / "here"):
        with pytest.raises(StoreError, match="stop it first"):
            move(tmp_path / "here", tmp_path / "no")
        with pytest.raises(StoreError, match="stop it first"):
            arrive(tmp_path / "out", tmp_path / "here", replace=True)
    assert not (tmp_path / "no").exists()


def test_a_file_that_is_there_is_not_written_over(tmp_path: Path) -> None:
    shop(tmp_path / "here")
    (tmp_path / "letter").write_text("Dear Sir")
    with pytest.raises(MoveError, match="another name"):
        move(tmp_path / "here", tmp_path / "letter")
    assert (tmp_path / "letter").read_text() == "Dear Sir"
    refuse_moved(tmp_path / "here")


def test_there_has_to_be_something_to_move(tmp_path: Path) -> None:
    (tmp_path / "here").mkdir()
    with pytest.raises(MoveError, match="nothing"):
        move(tmp_path / "here", tmp_path / "out")


def altered(file: Path, name: str, data: bytes | None) -> None:
    """Change one file in a moved shop's, or leave it out."""
    with zipfile.ZipFile(file) as packed:
        parts = {each: packed.read(each) for each in packed.namelist()}
    with zipfile.ZipFile(file, "w") as packed:
        for each, old in parts.items():
            if each != name:
                packed.writestr(each, old)
        if data is not None:
            packed.writestr(name, data)


@pytest.mark.parametrize(
    ("name", "data"),
    [
        ("about.json", None),
        ("about.json", json.dumps({"format": 2}).encode()),
        ("shoulderline.db", None),
        ("shoulderline.db", b"nothing"),
        ("shop/authority.pem", b"nothing"),
        ("shop/place.json", b"{}"),
        ("form-key", b"0" * 100_000),
    ],
)
def test_a_damaged_file_changes_nothing(tmp_path: Path, name: str, data: bytes | None) -> None:
    shop(tmp_path / "here")
    shop(tmp_path / "there")
    before = kept(tmp_path / "there")
    move(tmp_path / "here", tmp_path / "out")
    altered(tmp_path / "out", name, data)
    with pytest.raises(StoreError):
        arrive(tmp_path / "out", tmp_path / "there", replace=True)
    assert kept(tmp_path / "there") == before


def test_what_does_not_belong_in_the_file_is_left_there(tmp_path: Path) -> None:
    shop(tmp_path / "here")
    move(tmp_path / "here", tmp_path / "out")
    altered(tmp_path / "out", "../outside", b"x")
    arrive(tmp_path / "out", tmp_path / "there")
    assert not list(tmp_path.rglob("outside"))


def test_the_command_line_moves_and_says_what_to_do_next(tmp_path: Path) -> None:
    project = shop(tmp_path / "here")
    said = CliRunner().invoke(main, ["move", str(tmp_path / "out"), "--data", str(tmp_path / "here")])
    assert said.exit_code == 0
    assert "shoulderline arrive FILE" in said.stdout
    said = CliRunner().invoke(main, ["arrive", str(tmp_path / "out"), "--data", str(tmp_path / "there")])
    assert said.exit_code == 0
    with Store(tmp_path / "there") as store:
        assert store.projects() == [project]


def test_what_is_no_moved_shop_is_refused(tmp_path: Path) -> None:
    (tmp_path / "letter").write_text("Dear Sir")
    said = CliRunner().invoke(main, ["arrive", str(tmp_path / "letter"), "--data", str(tmp_path / "there")])
    assert said.exit_code == 1
    assert "is no moved shop" in said.stderr
