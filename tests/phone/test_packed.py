"""What the phone keeps is compressed once, and given in the encoding that the asker takes."""

import gzip
import re
from collections.abc import Iterator

import brotli
import pytest
from flask import Flask

from webapp.app import create_app
from webapp.core.tool import Tool
from webapp.phone import packed as packing
from webapp.phone.build import PLACE, layers_of
from webapp.tools import TOOLS

OWN = {"Sec-Fetch-Site": "same-origin"}
UNPACK = {"br": brotli.decompress, "gzip": gzip.decompress}


@pytest.fixture(scope="module")
def app(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Flask]:
    made = create_app(tmp_path_factory.mktemp("packed"))
    yield made
    made.extensions["shoulderline"].close()


@pytest.mark.parametrize(
    ("takes", "gets"),
    [
        ("gzip, deflate, br, zstd", "br"),
        ("gzip", "gzip"),
        ("br;q=0, gzip", "gzip"),
        ("*", "br"),
        ("identity", None),
        ("", None),
    ],
)
def test_each_asker_gets_what_it_takes(app: Flask, takes: str, gets: str | None) -> None:
    build = app.extensions[PLACE]
    for address, body in {f"/static/{build.stamp}/more.js": None, "/sw.js": build.worker}.items():
        answer = app.test_client().get(address, headers={**OWN, "Accept-Encoding": takes})
        assert answer.headers.get("Content-Encoding") == gets
        assert answer.headers["Vary"] == "Accept-Encoding"
        assert answer.content_length == len(answer.data)
        assert UNPACK.get(gets or "", bytes)(answer.data) == (body or build.files[address])


# What a first visit asks for before it stands still; `python -m tests.benchmarks.bytes` measures it over the wire.
LEAST = ["chosen.js", "screen.js"]


@pytest.mark.parametrize("tool", [None, *TOOLS.values()], ids=lambda tool: tool.name if tool else "home")
def test_the_scripts_of_a_first_visit_are_fifty_thousand_bytes(app: Flask, tool: Tool | None) -> None:
    build = app.extensions[PLACE]
    names = [*LEAST, *layers_of("tool" if tool else "home", tool)]
    sizes = {name: len(build.packed[f"/static/{build.stamp}/{name}"]["br"]) for name in names}
    assert sum(sizes.values()) <= 50_000, sizes


def test_a_page_asks_at_once_for_layers_that_are_there(app: Flask) -> None:
    build = app.extensions[PLACE]
    shells = {address: body.decode() for address, body in build.files.items() if address.startswith("/shell/")}
    asked = {address: re.findall(r'rel="modulepreload" href="([^"]+)"', body) for address, body in shells.items()}
    assert {layer for layers in asked.values() for layer in layers} <= set(build.files)
    assert asked["/shell/tool/gauge"] == [f"/static/{build.stamp}/{name}.js" for name in ("tool-gauge", "pad", "rows")]
    assert f"/static/{build.stamp}/more.js" in asked["/shell/project"]


def test_nothing_is_compressed_at_a_request(app: Flask, monkeypatch: pytest.MonkeyPatch) -> None:
    def refused(*_: object, **__: object) -> bytes:
        raise AssertionError("compressed anew")

    monkeypatch.setattr("flask_compress.flask_compress._compress_data", refused)
    client, build = app.test_client(), app.extensions[PLACE]
    for address in [*build.files, "/sw.js"]:
        assert client.get(address, headers={**OWN, "Accept-Encoding": "br"}).status_code == 200
    app.testing = True
    with pytest.raises(AssertionError, match="compressed anew"):  # a live page is
        client.get("/", headers={"Sec-Fetch-Site": "none", "Accept-Encoding": "br"})
    app.testing = False


def test_a_picture_is_sent_as_it_is_and_what_grows_too() -> None:
    found = packing.packed({"/a.png": b"a" * 1000, "/a.js": b"a", "/b.js": b"b" * 1000})
    assert {address: list(ways) for address, ways in found.items()} == {
        "/a.png": [],
        "/a.js": [],
        "/b.js": ["br", "gzip"],
    }
