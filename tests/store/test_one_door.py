"""Nothing but the door writes entries."""

import ast
import re
from pathlib import Path

import pytest

import webapp

PACKAGE = Path(webapp.__file__).parent
DOOR = "store/door.py"
ROWS = {"EntryRow", "ReplacedRow", "WorkedRow"}
WRITES = {"insert", "update", "delete"}
OTHERS = [["MetaRow"], ["DeviceRow"], ["CodeRow"]]
SQL = re.compile(r"\s*(INSERT\s+(OR|INTO)|REPLACE\s+INTO|UPDATE\s+\S+\s+SET|DELETE\s+FROM)\b", re.IGNORECASE)


def writers(source: str) -> list[str]:
    """Name what in a source could write a table: SQLAlchemy's statements, new rows, and SQL in a text."""
    tree = ast.parse(source)
    brought = from_sqlalchemy(tree)
    called = [node for node in ast.walk(tree) if isinstance(node, ast.Call) and writes(node, brought)]
    texts = [node.value for node in ast.walk(tree) if isinstance(node, ast.Constant) and isinstance(node.value, str)]
    return [ast.unparse(call) for call in called] + [text for text in texts if SQL.match(text)]


def from_sqlalchemy(tree: ast.Module) -> set[str]:
    brought = [node for node in ast.walk(tree) if isinstance(node, ast.ImportFrom)]
    return {a.asname or a.name for node in brought if (node.module or "").startswith("sqlalchemy") for a in node.names}


def writes(call: ast.Call, brought: set[str]) -> bool:
    """A statement on a table that entries stand in, or a new row of one."""
    if not isinstance(call.func, ast.Name):
        return isinstance(call.func, ast.Attribute) and call.func.attr in ("bulk_save_objects", "add_all", "merge")
    if call.func.id in ROWS:
        return True
    return call.func.id in WRITES & brought and [ast.unparse(a) for a in call.args] not in OTHERS


def test_nothing_but_the_door_writes_entries():
    modules = {str(path.relative_to(PACKAGE)): path.read_text(encoding="utf-8") for path in PACKAGE.rglob("*.py")}
    assert [name for name, source in modules.items() if writers(source)] == [DOOR]


def test_only_the_store_knows_the_tables():
    for path in PACKAGE.rglob("*.py"):
        if path.parent.name not in ("store", "migrations"):
            assert "store.tables" not in path.read_text(encoding="utf-8"), path


@pytest.mark.parametrize(
    "source",
    [
        "from sqlalchemy import insert\ninsert(EntryRow).values(x=1)",
        "from sqlalchemy.dialects.sqlite import insert\ndef f(table): return insert(table)",
        "from sqlalchemy import delete\ndelete(WorkedRow)",
        "session.add(EntryRow(id='x'))",
        "session.merge(row)",
        "connection.exec_driver_sql('insert or replace into entries values (1)')",
        "connection.exec_driver_sql(f'UPDATE entries SET body = {x}')",
        "text('''\n  DELETE FROM entries''')",
    ],
)
def test_a_second_door_would_be_seen(source):
    assert writers(source)


@pytest.mark.parametrize(
    "source", ["from sqlalchemy.dialects.sqlite import insert\ninsert(MetaRow)", "d.update(x=1)", "insert(x)"]
)
def test_what_writes_no_entry_is_no_door(source):
    assert not writers(source)
