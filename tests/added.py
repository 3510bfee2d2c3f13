"""The program with one tool more, added the way every tool is: as one file in the core, and nothing else."""

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.serving import Serving

TOP = Path(__file__).parent.parent
TRIAL = TOP / "tests" / "trial.py"


def program_with(tool: Path, folder: Path) -> Path:
    """Copy the program to a folder, with a tool's file beside the others."""
    for name in ("webapp", "static", "templates"):
        shutil.copytree(TOP / name, folder / name, ignore=shutil.ignore_patterns("__pycache__"))
    shutil.copy(tool, folder / "webapp" / "core")
    return folder


@pytest.fixture(scope="module")
def added_serving(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Serving]:
    """Serve the demo by a program that has the trial tool too."""
    program = program_with(TRIAL, tmp_path_factory.mktemp("added"))
    server = Serving(tmp_path_factory.mktemp("added-data"), demo=True, program=program).start()
    yield server
    server.stop()
