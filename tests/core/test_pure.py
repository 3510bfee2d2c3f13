"""The core imports nothing but fractions, dataclasses, typing, collections.abc and itself."""

import ast
import json
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent.parent
PATHS = sorted((ROOT / "webapp" / "core").glob("*.py"))
ALLOWED = ("fractions", "dataclasses", "typing", "collections.abc", "__future__")
# What the run-time test loads in two interpreters: the allowed modules alone, and the core with them.
BARE = "import fractions, dataclasses, typing, collections.abc, webapp"
LOADED = "; import json, sys; print(json.dumps(sorted(sys.modules)))"


def imports(path: Path) -> list[str]:
    """Give the modules that a file imports, wherever in it."""
    found = []
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            found += [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom):
            found.append("." * node.level + (node.module or ""))
    return found


def loaded(script: str) -> set[str]:
    """Give the names of all modules that are loaded once a script has run in an interpreter of its own."""
    done = subprocess.run([sys.executable, "-c", script + LOADED], cwd=ROOT, capture_output=True, text=True, check=True)
    return set(json.loads(done.stdout))


@pytest.mark.parametrize("path", PATHS, ids=lambda path: path.stem)
def test_a_module_of_the_core_imports_the_core_and_few_others(path: Path) -> None:
    strangers = [name for name in imports(path) if name not in ALLOWED and not name.startswith("webapp.core.")]
    assert strangers == []


def test_importing_the_core_loads_nothing_else() -> None:
    names = [f"webapp.core.{path.stem}" for path in PATHS if path.stem != "__init__"]
    assert names
    with_core = loaded(f"{BARE}, webapp.core, {', '.join(names)}")
    assert with_core - loaded(BARE) == {"webapp.core", *names}
