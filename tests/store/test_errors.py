import inspect
import os
import sqlite3
from pathlib import Path

import pytest
from alembic.util import CommandError
from sqlalchemy.exc import OperationalError, SQLAlchemyError

from tests.store.filled import entry, fill
from webapp.core.entries_text import is_identity
from webapp.store import Store, StoreError, Unreadable
from webapp.store.database import FILE
from webapp.store.errors import translated

NEEDS = {
    "add": lambda store, project, _: ([entry(store, "project", name="Bed")],),
    "answers": lambda _s, project, _f: ([project],),
    "backup": lambda _s, _p, folder: (folder / "kept.db",),
    "entries": lambda _s, project, _f: (project,),
    "entry": lambda _s, project, _f: (project,),
    "epoch": lambda _s, _p, _f: (),
    "export": lambda _s, project, _f: (project,),
    "import_": lambda store, project, _f: (store.export(project),),
    "projects": lambda _s, _p, _f: (),
    "since": lambda _s, _p, _f: (0, 10),
    "sync": lambda _s, _p, _f: ({"protocol": 1, "epoch": "", "cursor": 0, "entries": []},),
    "worked": lambda _s, project, _f: ([project],),
}
TOUCH_NOTHING = {"close", "session", "signed"}


def test_every_method_that_asks_the_database_is_tried_here():
    public = {name for name, _ in inspect.getmembers(Store, inspect.isfunction) if not name.startswith("_")}
    assert public == set(NEEDS) | TOUCH_NOTHING


@pytest.mark.parametrize("name", NEEDS)
def test_what_the_database_raises_comes_out_as_a_store_error(store, tmp_path, name):
    project = fill(store)
    needs = NEEDS[name](store, project, tmp_path)
    store.close()
    (tmp_path / "data" / FILE).write_bytes(b"no database any more" * 500)
    for side in ("-wal", "-shm"):
        Path(tmp_path / "data" / f"{FILE}{side}").unlink(missing_ok=True)
    with pytest.raises(StoreError, match="cannot be used") as raised:
        getattr(store, name)(*needs)
    assert isinstance(raised.value.__cause__, SQLAlchemyError | sqlite3.Error)


def test_a_file_that_is_no_database_is_a_store_error_at_the_start(tmp_path):
    (tmp_path / FILE).write_bytes(b"no database" * 500)
    with pytest.raises(StoreError, match="cannot be used"):
        Store(tmp_path)


def test_a_database_of_a_newer_version_says_so(tmp_path):
    Store(tmp_path).close()
    with sqlite3.connect(tmp_path / FILE) as connection:
        connection.execute("UPDATE alembic_version SET version_num = 'later'")
    connection.close()
    with pytest.raises(StoreError, match="newer version"):
        Store(tmp_path)


@pytest.mark.skipif(os.name == "nt", reason="a folder in the place of the file, as POSIX has it")
def test_a_folder_in_the_place_of_the_database_is_a_store_error(tmp_path):
    (tmp_path / FILE).mkdir()
    with pytest.raises(StoreError):
        Store(tmp_path)


@pytest.mark.parametrize(
    ("error", "said"),
    [
        (OperationalError("INSERT secret", {"x": "secret"}, sqlite3.OperationalError("disk full")), "disk full"),
        (sqlite3.OperationalError("database is locked"), "database is locked"),
        (OSError(28, "No space left on device", "/data"), "/data cannot be used: No space left on device"),
        (CommandError("Can't locate revision"), "newer version"),
    ],
)
def test_an_error_keeps_its_reason_and_says_nothing_of_what_was_typed(error, said):
    with pytest.raises(StoreError, match=said) as raised, translated():
        raise error
    assert "secret" not in str(raised.value)


@pytest.mark.parametrize("error", [StoreError("x"), Unreadable("x"), ValueError("x"), KeyError("x")])
def test_other_errors_pass_as_they_are(error):
    with pytest.raises(type(error)) as raised, translated():
        raise error
    assert raised.value is error


def test_a_batch_that_cannot_be_written_leaves_nothing_of_itself(store, monkeypatch):
    batch = [entry(store, "project", name=name) for name in ("One", "Two")]

    def broken(name: str, worked: object) -> None:
        raise sqlite3.OperationalError(f"disk full at {name}")

    sheet = entry(store, "sheet", "", tool="spacing", span="30", slat="2 1/2", count="7")
    sheet["project"] = batch[0]["id"]
    assert is_identity(sheet["id"])
    monkeypatch.setattr("webapp.store.door._worked_row", broken)
    with pytest.raises(StoreError, match="disk full"):
        store.add([*batch, sheet])
    assert store.projects() == []
