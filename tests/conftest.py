"""What every test may ask for, and in which order the files come."""

from collections.abc import Callable
from typing import Any

import pytest
from flask import Flask
from flask.templating import Environment
from hypothesis import settings
from jinja2 import BytecodeCache
from jinja2.bccache import Bucket
from playwright.sync_api import expect

from tests.engine import browser, engine

settings.register_profile("calm", deadline=None)  # a busy machine is no failure
settings.load_profile("calm")

# ms: what is waited for comes in tenths of a second, or not at all; a busy machine is no failure here either.
PATIENCE = 30_000
expect.set_options(timeout=PATIENCE)

__all__ = ["browser", "engine"]

# The slowest files, the slowest first: a worker that is given one of them last keeps the others waiting.
SLOWEST = (
    "test_axe",
    "test_local_sync",
    "test_store_trouble",
    "test_form",
    "test_whole_job",
    "test_half_typed",
    "test_worker",
    "test_rows",
    "test_differential",
    "test_pad",
    "test_faults",
    "test_serving_the_shop",
    "test_trust",
    "test_patience",
    "test_tools_by_thumb",
    "test_shop_and_like",
    "test_bench_day",
    "test_killed_phone",
    "test_killed",
    "test_crowd",
)


class Compiled(BytecodeCache):
    """Templates as they were compiled for an application before, by name and text."""

    kept: dict[tuple[str, str], Any] = {}  # noqa: RUF012 - it is one for all

    def load_bytecode(self, bucket: Bucket) -> None:
        bucket.code = self.kept.get((bucket.key, bucket.checksum))

    def dump_bytecode(self, bucket: Bucket) -> None:
        self.kept[bucket.key, bucket.checksum] = bucket.code


class Ready(Environment):
    """An application's templates: hundreds of applications are made in a run, all of the same templates."""

    def __init__(self, app: Any, **options: Any) -> None:
        super().__init__(app, bytecode_cache=Compiled(), **options)


Flask.jinja_environment = Ready


def place(slowest: tuple[str, ...]) -> Callable[[pytest.Item], int]:
    """Give the place of a test's file among the files: the slowest first, the others as they were found."""
    places = {name: number for number, name in enumerate(slowest)}
    return lambda item: places.get(item.path.stem, len(slowest))


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    items.sort(key=place(SLOWEST))
