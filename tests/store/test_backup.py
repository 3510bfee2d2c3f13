import sqlite3
import threading
from contextlib import closing
from pathlib import Path

import pytest

from tests.store.filled import entry, fill, keep
from webapp.core.fold import summary_of
from webapp.store import FolderHeldError, ForeignFileError, Store, StoreError, restore
from webapp.store.database import APPLICATION, FILE
from webapp.store.folder import held
from webapp.store.foreign import is_ours
from webapp.store.migrations.versions import first_entries


def listing(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir())


def tampered(file: Path, *statements: str) -> None:
    with closing(sqlite3.connect(file)) as connection:
        for statement in statements:
            connection.execute(statement)
        connection.commit()


@pytest.fixture
def backup(store, tmp_path) -> Path:
    fill(store)
    store.backup(tmp_path / "kept.db")
    return tmp_path / "kept.db"


def test_a_backup_is_one_file_that_restores_to_the_same_fold(store, backup, tmp_path):
    [project] = store.projects()
    assert not list(tmp_path.glob("kept.db?*"))
    restore(backup, tmp_path / "other")
    with Store(tmp_path / "other") as other:
        assert other.entries(project) == store.entries(project)
        assert other.worked([e["id"] for e in other.entries(project)]) != {}
        assert other.export(project) == store.export(project)


def test_a_restored_database_has_a_new_epoch_and_takes_entries(store, backup, tmp_path):
    restore(backup, tmp_path / "other")
    with Store(tmp_path / "other") as other:
        assert other.epoch() != store.epoch()
        keep(other, "project", name="Another")


def test_a_restore_changes_nothing_in_the_backup(backup, tmp_path):
    before = backup.read_bytes()
    restore(backup, tmp_path / "other")
    assert backup.read_bytes() == before
    assert not list(tmp_path.glob("kept.db?*"))


def test_what_a_restore_replaces_is_kept_beside_it(store, backup, tmp_path):
    project = keep(store, "project", name="Later")
    later = store.entries(project)
    store.close()
    restore(backup, tmp_path / "data")
    with Store(tmp_path / "data") as restored:
        assert project not in restored.projects()
    [aside] = (tmp_path / "data").glob("before-restore-*.db")
    restore(aside, tmp_path / "data")
    with Store(tmp_path / "data") as again:
        assert again.entries(project) == later
    assert not list((tmp_path / "data").glob("*.part*"))


def test_phones_send_again_what_a_restored_backup_lacks(store, backup, tmp_path):
    late = entry(store, "project", name="Late")
    store.add([late])
    restore(backup, tmp_path / "other")
    with Store(tmp_path / "other") as other:
        answer = other.sync({"protocol": 1, "epoch": store.epoch(), "cursor": 6, "entries": [late]})
        assert (answer["kept"], len(answer["entries"]), answer["epoch"]) == ([late["id"]], 6, other.epoch())


def test_nothing_is_restored_while_a_server_has_the_folder(backup, tmp_path):
    with held(tmp_path / "other"), pytest.raises(FolderHeldError):
        restore(backup, tmp_path / "other")
    assert listing(tmp_path / "other") == ["serving.lock"]


def test_a_backup_while_others_write_is_a_state_that_there_was(store, tmp_path):
    project = keep(store, "project", name="Bed")
    stop = threading.Event()

    def write() -> None:
        while not stop.is_set():
            keep(store, "reading", project, place="rail", reading="1")

    writer = threading.Thread(target=write)
    writer.start()
    files = [tmp_path / f"{turn}.db" for turn in range(5)]
    for file in files:
        store.backup(file)
    stop.set()
    writer.join()
    whole = store.entries(project)
    for file in files:
        restore(file, tmp_path / file.stem)
        with Store(tmp_path / file.stem) as restored:
            found = restored.entries(project)
            assert found == whole[: len(found)]
            assert summary_of(found) == summary_of(whole[: len(found)])


def test_a_backup_goes_over_an_earlier_one_and_over_nothing_else(store, backup, tmp_path):
    keep(store, "project", name="Later")
    store.backup(backup)
    restore(backup, tmp_path / "other")
    with Store(tmp_path / "other") as other:
        assert len(other.projects()) == 2
    (tmp_path / "letter.txt").write_text("dear", encoding="utf-8")
    with pytest.raises(ForeignFileError, match="no backup"):
        store.backup(tmp_path / "letter.txt")
    assert (tmp_path / "letter.txt").read_text(encoding="utf-8") == "dear"


def test_a_backup_that_cannot_be_written_is_a_plain_error_and_leaves_nothing(store, tmp_path):
    with pytest.raises(StoreError):
        store.backup(tmp_path / "missing" / "kept.db")
    assert listing(tmp_path) == ["data"]


def test_what_is_no_backup_is_refused(tmp_path):
    for name, content in {"empty": b"", "text": b"dear", "magic": b"SQLite format 3\x00" + b"\x00" * 500}.items():
        (tmp_path / name).write_bytes(content)
    tampered(tmp_path / "stranger", "CREATE TABLE entries (seq)")
    for name in ("empty", "text", "magic", "stranger"):
        with pytest.raises(ForeignFileError, match="no backup"):
            restore(tmp_path / name, tmp_path / "other")
    with pytest.raises(StoreError, match="cannot be used"):
        restore(tmp_path / "missing", tmp_path / "other")
    assert listing(tmp_path / "other") == ["serving.lock"]


@pytest.mark.parametrize(
    "statement",
    [
        "DROP TRIGGER entries_no_update",
        "CREATE TABLE more (x)",
        "CREATE TRIGGER more AFTER INSERT ON meta BEGIN DELETE FROM meta; END",
        "DROP TABLE worked",
        "INSERT INTO entries VALUES (9, 'i', 'p', 'k', '{', 'm', 'b', 'r')",
        "UPDATE worked SET sheet = 'x'",
        "UPDATE alembic_version SET version_num = 'of_a_newer_version'",
        "DELETE FROM alembic_version",
    ],
)
def test_a_backup_that_something_else_changed_is_refused(backup, tmp_path, statement):
    tampered(backup, statement)
    with pytest.raises(StoreError):
        restore(backup, tmp_path / "other")
    assert listing(tmp_path / "other") == ["serving.lock"]


def test_a_damaged_backup_is_refused(backup, tmp_path):
    content = bytearray(backup.read_bytes())
    for page in range(2, len(content) // 4096):
        content[page * 4096 : page * 4096 + 64] = b"\xff" * 64
    backup.write_bytes(content)
    with pytest.raises(StoreError):
        restore(backup, tmp_path / "other")
    assert listing(tmp_path / "other") == ["serving.lock"]


def test_our_mark_is_the_one_that_the_first_migration_writes(store, backup, tmp_path):
    assert first_entries.APPLICATION == APPLICATION
    assert is_ours(backup)
    store.close()
    assert is_ours(tmp_path / "data" / FILE)
