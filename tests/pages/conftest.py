"""The program over an empty data folder, and over the demo's."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from flask import Flask
from flask.testing import FlaskClient

from webapp.app import create_app
from webapp.demo import fill


@pytest.fixture
def app(tmp_path: Path) -> Iterator[Flask]:
    made = create_app(tmp_path)
    yield made
    made.extensions["shoulderline"].close()


@pytest.fixture
def client(app: Flask) -> FlaskClient:
    return app.test_client()


@pytest.fixture
def demo(app: Flask, client: FlaskClient) -> FlaskClient:
    fill(app.extensions["shoulderline"])
    return client
