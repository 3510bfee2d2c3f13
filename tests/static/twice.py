"""Runs pieces of Python twice: in CPython, and translated in the browser's engine."""

import importlib.util
import sys
import warnings
from collections.abc import Mapping
from pathlib import Path
from types import ModuleType
from typing import Any

from tests.engine import Call, Engine, outcome
from webapp.phone.translate import translate

HERE = Path(__file__).parent
HEAD = "from dataclasses import dataclass\nfrom fractions import Fraction\n\n"
EXPRESSIONS = (HERE / "python_expressions.txt").read_text(encoding="utf-8").splitlines()


def programs() -> dict[str, str]:
    """Read the programs of the data file, each under its name."""
    parts = (HERE / "python_programs.txt").read_text(encoding="utf-8").removeprefix("## ").split("\n## ")
    return dict(part.split("\n", 1) for part in parts)


def written(folder: Path, sources: Mapping[str, str]) -> Path:
    """Write modules to a folder of their own."""
    for name, source in sources.items():
        (folder / f"{name}.py").write_text(source, encoding="utf-8")
    return folder


def module(folder: Path, name: str) -> ModuleType:
    """Run one of the modules in CPython."""
    spec = importlib.util.spec_from_file_location(name, folder / f"{name}.py")
    assert spec is not None
    assert spec.loader is not None
    made = importlib.util.module_from_spec(spec)
    sys.modules[name] = made  # dataclasses look their module up
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore", SyntaxWarning)  # a case may be wrong on purpose
            spec.loader.exec_module(made)
    finally:
        del sys.modules[name]
    return made


def twice(
    engine: Engine, folder: Path, sources: Mapping[str, str], calls: list[Call]
) -> list[tuple[dict[str, Any], dict[str, Any]]]:
    """Give what CPython and what the phone make of each call of the modules."""
    written(folder, sources)
    here = {name: module(folder, name) for name in sources}
    engine.add(folder.name, translate(folder))
    there = engine.outcomes(calls, folder.name)
    return [
        (outcome(getattr(here[name], function), arguments), seen)
        for (name, function, arguments), seen in zip(calls, there, strict=True)
    ]


def agree(here: dict[str, Any], there: dict[str, Any]) -> None:
    """Assert that both made the same of it; a text that Python itself gave to an error is Python's own."""
    if "raises" in here and not here["text"]:
        there = {**there, "text": ""}
    assert there == here
