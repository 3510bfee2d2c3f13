"""A store in a folder of its own, for each test."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from webapp.store import Store


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    with Store(tmp_path / "data", version="engine 1") as made:
        yield made
