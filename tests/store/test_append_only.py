import sqlite3
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest

from tests.store.filled import fill
from webapp.store import Store
from webapp.store.database import FILE, PRAGMAS, engine_over

CHANGES = {
    "update": ["UPDATE {table} SET {column} = 'x'"],
    "delete": ["DELETE FROM {table}"],
    "replace": [
        "INSERT OR REPLACE INTO {table} SELECT * FROM {table} LIMIT 1",
        "REPLACE INTO {table} SELECT * FROM {table} LIMIT 1",
    ],
    "upsert": ["INSERT INTO {table} SELECT * FROM {table} WHERE true ON CONFLICT DO UPDATE SET {column} = 'x'"],
}
TABLES = {"entries": "body", "replaces": "replaced"}


@pytest.fixture
def file(tmp_path: Path) -> Path:
    with Store(tmp_path) as store:
        fill(store)
    return tmp_path / FILE


def rows(file: Path) -> list[list[tuple[object, ...]]]:
    with closing(sqlite3.connect(file)) as connection:
        return [connection.execute(f"SELECT * FROM {table}").fetchall() for table in TABLES]  # noqa: S608


def statements(change: str, table: str) -> Iterator[str]:
    for statement in CHANGES[change]:
        yield statement.format(table=table, column=TABLES[table])


@pytest.mark.parametrize("table", TABLES)
@pytest.mark.parametrize("change", CHANGES)
def test_nothing_that_is_kept_can_be_changed(file, table, change):
    before = rows(file)
    with engine_over(file) as engine:
        for statement in statements(change, table):
            with closing(engine.raw_connection()) as connection:
                with pytest.raises(sqlite3.DatabaseError, match="only ever added to"):
                    connection.driver_connection.execute(statement)
                connection.rollback()
    assert rows(file) == before


def test_replacing_slips_through_where_the_pragma_is_off_so_the_test_above_can_fail(file):
    with closing(sqlite3.connect(file)) as connection:
        connection.execute("PRAGMA recursive_triggers = OFF")
        connection.execute("PRAGMA foreign_keys = OFF")
        statement = (
            "INSERT OR REPLACE INTO entries SELECT seq, id, project, kind, '{}', made_at, by, received_at FROM entries"
        )
        connection.execute(statement)
        changed = connection.execute("SELECT DISTINCT body FROM entries").fetchall()
    assert changed == [("{}",)]


def test_every_connection_is_told_the_same(file):
    asked = [pragma.partition(" = ") for pragma in PRAGMAS]
    words = {"WAL": "wal", "ON": 1, "OFF": 0, "FULL": 2, "10000": 10000}
    with engine_over(file) as engine:
        for _ in range(2):
            with closing(engine.raw_connection()) as connection:
                found = {n: connection.driver_connection.execute(f"PRAGMA {n}").fetchone()[0] for n, _, _ in asked}
                connection.invalidate()
            assert found == {name: words[value] for name, _, value in asked}
    assert {"journal_mode", "synchronous", "recursive_triggers", "foreign_keys"} <= {n for n, _, _ in asked}
