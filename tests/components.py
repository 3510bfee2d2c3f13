"""Lists what the program runs on: each component, its version here, and whether pyproject.toml allows it.

`python -m tests.components` lists them; with `--newer` it also asks pip which have a newer version. It ends with 1
where something is wrong or the last look is too long ago. DEVELOPERS.md says how old components may grow.
"""

import json
import re
import subprocess
import sys
import tomllib
from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta
from importlib.metadata import PackageNotFoundError, distribution
from pathlib import Path

from packaging.requirements import Requirement

PROJECT = Path(__file__).parents[1] / "pyproject.toml"
LOOKED = date(2026, 11, 25)  # when somebody last went through this list; move it when you have
LOOK_AGAIN = timedelta(days=180)


@dataclass(frozen=True)
class Component:
    """One distribution: its version here (none where it is missing), who asks for it, and what they allow."""

    name: str
    version: str
    asked_by: str
    wanted: Requirement

    @property
    def fine(self) -> bool:
        return self.version != "" and self.wanted.specifier.contains(self.version, prereleases=True)


def asked(project: Path = PROJECT) -> list[Requirement]:
    """Return what pyproject.toml asks for to run."""
    return [Requirement(line) for line in tomllib.loads(project.read_text(encoding="utf-8"))["project"]["dependencies"]]


def plain(name: str) -> str:
    """Write a name as indexes compare it."""
    return re.sub(r"[-_.]+", "-", name).lower()


def components(wanted: list[Requirement], asked_by: str = "pyproject.toml") -> list[Component]:
    """Return everything that is installed for what is wanted, and for that in turn; each once, nearest first."""
    found: dict[str, Component] = {}
    waiting = [(each, asked_by) for each in wanted]
    while waiting:
        requirement, by = waiting.pop(0)
        name = plain(requirement.name)
        if name in found or not applies(requirement):
            continue
        version, needs = here(name)
        found[name] = Component(name, version, by, requirement)
        waiting += [(each, name) for each in needs]
    return list(found.values())


def applies(requirement: Requirement) -> bool:
    """Say whether a requirement holds for this machine, without extras."""
    return requirement.marker is None or requirement.marker.evaluate({"extra": ""})


def here(name: str) -> tuple[str, list[Requirement]]:
    """Return the version that is installed, and what it asks for."""
    try:
        installed = distribution(name)
    except PackageNotFoundError:
        return "", []
    return installed.version, [Requirement(line) for line in installed.requires or ()]


def newer() -> dict[str, str]:
    """Ask pip which have a newer version."""
    command = [sys.executable, "-m", "pip", "list", "--outdated", "--format", "json"]
    answer = subprocess.run(command, capture_output=True, text=True, check=True).stdout
    return {plain(each["name"]): each["latest_version"] for each in json.loads(answer)}


def line(each: Component, latest: dict[str, str]) -> str:
    """Write one component."""
    wrong = "" if each.fine else f"  NOT {each.wanted.specifier or 'installed'}"
    later = f"  newer: {latest[each.name]}" if each.name in latest else ""
    return f"{each.name:24} {each.version or 'missing':12} for {each.asked_by}{wrong}{later}"


def due(today: date, looked: date = LOOKED) -> bool:
    """Say whether it is time to go through the list again."""
    return today - looked > LOOK_AGAIN


def main(words: list[str]) -> int:
    """List them."""
    latest = newer() if "--newer" in words else {}
    found = components(asked())
    print("\n".join(line(each, latest) for each in found))
    late = due(datetime.now(UTC).date())
    print(f"Last gone through on {LOOKED}{': it is time again' if late else ''}.")
    return 1 if late or not all(each.fine for each in found) else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
