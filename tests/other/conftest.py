"""The browsers that were asked for, each with a phone's folder; the others are skipped with the reason."""

import os
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.other.named import NEEDS, lacking
from tests.other.phones import PHONES, Firefox, WebKit
from tests.serving import serving

__all__ = ["serving"]


@pytest.fixture(params=list(NEEDS))
def phone(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[Firefox | WebKit]:
    """Hand out a phone that has never been anywhere, not started yet."""
    reason = lacking(request.param, os.environ)
    if reason:
        pytest.skip(reason)
    made = PHONES[request.param](tmp_path / "phone")
    yield made
    made.kill()
