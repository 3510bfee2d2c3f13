import threading
from contextlib import closing

from alembic.autogenerate import compare_metadata
from alembic.config import Config
from alembic.runtime.migration import MigrationContext
from alembic.script import ScriptDirectory

from tests.store.filled import entry, fill
from webapp.store import Store
from webapp.store.database import FILE, MIGRATIONS, engine_over, engine_reading
from webapp.store.tables import Base


def test_the_migrations_make_the_tables_that_the_store_declares(store, tmp_path):
    with engine_over(tmp_path / "data" / FILE) as engine, engine.connect() as connection:
        context = MigrationContext.configure(connection, opts={"compare_type": True})
        assert compare_metadata(context, Base.metadata) == []
        names = {table.name for table in Base.metadata.sorted_tables}
    assert names == {"entries", "replaces", "worked", "meta", "devices", "codes"}


def test_there_is_one_line_of_migrations():
    config = Config()
    config.set_main_option("script_location", str(MIGRATIONS))
    assert len(ScriptDirectory.from_config(config).get_heads()) == 1


def test_opening_says_nothing(tmp_path, capfd):
    for _ in range(2):
        Store(tmp_path).close()
    assert capfd.readouterr() == ("", "")


def test_a_folder_with_any_name_will_do(tmp_path):
    for name in ("with space", "per%cent", "que?ry", "ha#sh", "é“"):
        with Store(tmp_path / name) as store:
            project = fill(store)
            store.backup(tmp_path / name / "kept%41?.db")
        with engine_reading(tmp_path / name / "kept%41?.db") as engine, closing(engine.raw_connection()) as connection:
            rows = connection.driver_connection.execute("SELECT DISTINCT project FROM entries").fetchall()
        assert rows == [(project,)]


def test_many_threads_write_at_once_and_nothing_is_lost(store):
    batches = [[entry(store, "project", name=f"{thread} {turn}") for turn in range(20)] for thread in range(6)]
    failed: list[object] = []

    def write(batch: list[dict[str, object]]) -> None:
        for made in batch:
            outcome = store.add([made])
            if outcome["kept"] != [made["id"]]:
                failed.append(outcome)

    threads = [threading.Thread(target=write, args=(batch,)) for batch in batches]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert failed == []
    assert sorted(store.projects()) == sorted(str(made["id"]) for batch in batches for made in batch)


def test_two_stores_over_one_folder_see_each_others_entries(store, tmp_path):
    with Store(tmp_path / "data") as other:
        project = fill(other)
        assert store.entries(project) == other.entries(project)
