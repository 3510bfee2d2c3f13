"""What the first release left behind: project files, a database, a phone's store (tests/fixtures/first-release)."""

import gzip
import json
from pathlib import Path
from typing import Any

FOLDER = Path(__file__).parent / "fixtures" / "first-release"


def file(name: str) -> bytes:
    """Return a file as it is."""
    return (FOLDER / name).read_bytes()


def read(name: str) -> Any:
    """Return what a JSON file holds."""
    return json.loads(file(name))


def database(folder: Path) -> Path:
    """Lay its database into a data folder, as an update finds it."""
    folder.mkdir(parents=True)
    (folder / "shoulderline.db").write_bytes(gzip.decompress(file("data.db.gz")))
    return folder


PROJECT: str = read("project.json")["project"]
ADDRESS = f"/projects/{PROJECT}"
