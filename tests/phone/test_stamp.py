"""The stamp changes with any byte that the phone keeps, and every kept answer carries it."""

import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from webapp.app import create_app
from webapp.folders import STATIC
from webapp.phone import build as building
from webapp.phone.build import CLASSIC, PLACE, UNKEPT, start, static_files
from webapp.phone.made import FIRST_PARTS, MadeError, engine, made_modules, needed
from webapp.phone.pieces import Key, Piece
from webapp.phone.stamp import PLACEHOLDER, put_stamp, stamp, stamped
from webapp.tools import TOOLS

TOP = Path(__file__).parents[2]
OWN = {"Sec-Fetch-Site": "same-origin", "Sec-Fetch-Mode": "cors"}
FILES = st.dictionaries(st.text(min_size=1, max_size=8), st.binary(max_size=16), min_size=1, max_size=5)


@given(FILES, st.data())
def test_any_byte_makes_another_stamp(files, data):
    name = data.draw(st.sampled_from(sorted(files)))
    assert stamp(dict(reversed(files.items()))) == stamp(files)
    assert stamp({**files, name: files[name] + b"x"}) != stamp(files)
    assert stamp({**files, name + "x": b""}) != stamp(files)
    assert stamp({k: v for k, v in files.items() if k != name}) != stamp(files)


def test_where_a_name_ends_and_its_bytes_begin_counts():
    assert stamp({"ab": b"c"}) != stamp({"a": b"bc"})


def test_the_stamp_stands_in_addresses_and_bytes():
    files = {f"/static/{PLACEHOLDER}/a.js": f'"{PLACEHOLDER}"'.encode(), "/shell/home": b"plain"}
    assert stamped(files, "1234") == {"/static/1234/a.js": b'"1234"', "/shell/home": b"plain"}
    assert put_stamp(b"\xff" + PLACEHOLDER.encode(), "1234") == b"\xff1234"


@pytest.fixture(scope="module")
def app(tmp_path_factory):
    made = create_app(tmp_path_factory.mktemp("stamp"))
    yield made
    made.extensions["shoulderline"].close()


@pytest.fixture
def client(app):
    return app.test_client()


@pytest.fixture
def build(app):
    return app.extensions[PLACE]


def test_nothing_waits_for_its_stamp(build):
    everything = {**build.files, "/sw.js": build.worker}
    assert [name for name, body in everything.items() if PLACEHOLDER.encode() in body or PLACEHOLDER in name] == []
    assert re.fullmatch("[0-9a-f]{16}", build.stamp)
    assert re.fullmatch("[0-9a-f]{12}", build.engine)


def test_every_kept_answer_carries_the_stamp(client, build):
    for address, body in build.files.items():
        answer = client.get(address, headers=OWN)
        assert (answer.status_code, answer.data) == (200, body), address
        assert answer.headers["Shoulderline-Stamp"] == build.stamp
        assert answer.headers["Content-Security-Policy"]


def test_static_files_are_kept_for_good_and_the_rest_is_asked_for(client, build):
    for address in build.files:
        caching = client.get(address, headers=OWN).headers["Cache-Control"]
        assert caching == ("private, max-age=31536000, immutable" if address.startswith("/static/") else "no-cache")


@pytest.mark.parametrize("address", ["/static/0000000000000000/parts.js", "/static/{stamp}/none.js", "/shell/none"])
def test_what_is_not_of_this_version_is_plainly_not_here_and_not_remembered(client, build, address):
    answer = client.get(address.replace("{stamp}", build.stamp), headers=OWN)
    assert answer.status_code == 404
    assert answer.mimetype == "text/plain"
    assert answer.headers["Cache-Control"] == "no-store"


@pytest.mark.parametrize("name", ["..%2f..%2fapp.py", "../app.py", "%2e%2e/app.py", "worker.js", "withdrawn.js"])
def test_only_kept_files_are_given(client, build, name):
    assert client.get(f"/static/{build.stamp}/{name}", headers=OWN).status_code == 404


def test_the_worker_has_the_stamp_and_every_file(client, build):
    answer = client.get("/sw.js", headers=OWN)
    assert answer.status_code == 200
    assert answer.mimetype == "text/javascript"
    assert answer.headers["Cache-Control"] == "no-cache"
    assert f'"stamp":"{build.stamp}"' in answer.text
    assert all(f'"{address}"' in answer.text for address in build.files)


def test_all_static_files_but_modules_pictures_and_the_set_up_pages_are_kept():
    names = {address.removeprefix(f"/static/{PLACEHOLDER}/") for address in static_files(STATIC)}
    there = {file.relative_to(STATIC).as_posix() for file in STATIC.rglob("*") if file.is_file()}
    modules = {name for name in there if name.endswith(".js") and name not in CLASSIC}
    assert names == {name for name in there - set(UNKEPT) - modules if not name.startswith("screens/")}
    assert set(UNKEPT) < there


def test_every_module_stands_in_a_layer_that_is_kept_or_can_be_looked_at(build):
    modules = {file.name for file in STATIC.glob("*.js")} - {*UNKEPT, *CLASSIC}
    layers = {address.rsplit("/", 1)[1] for address in build.files if address.endswith(".js")}
    faces = {address.rsplit("/", 1)[1] for address in build.shown if address.endswith(".js")}
    assert {"screen.js", "more.js", *(f"tool-{name}.js" for name in TOOLS)} < layers
    assert modules < layers | faces
    assert not layers & faces


EDITS = {"parts.js": "\nexport const NEW = 1;\n", "style.css": "\np {}\n", "worker.js": "\nlet edited;\n"}


@pytest.mark.parametrize("name", EDITS)
def test_an_edit_of_any_static_file_makes_a_new_version(app, build, monkeypatch, tmp_path, name):
    changed = edited(app, build, monkeypatch, tmp_path / "static", name, EDITS[name])
    assert changed.stamp != build.stamp
    assert changed.engine == build.engine


def test_a_comment_in_a_script_makes_no_new_version(app, build, monkeypatch, tmp_path):
    assert edited(app, build, monkeypatch, tmp_path / "static", "parts.js", "\n// noted\n").stamp == build.stamp


def edited(app, build, monkeypatch, folder, name, text):
    """Build once more with one file edited."""
    shutil.copytree(STATIC, folder)
    with (folder / name).open("a") as file:
        file.write(text)
    monkeypatch.setattr(building, "STATIC", folder)
    changed = start(app)
    app.extensions[PLACE] = build
    return changed


def test_the_same_files_make_the_same_version(app, build):
    assert start(app) == build


def test_an_edit_of_a_template_makes_a_new_version(app, build, monkeypatch):
    sound = building.shells
    edited = lambda *given: {name: body + b"<!-- -->" for name, body in sound(*given).items()}  # noqa: E731
    monkeypatch.setattr(building, "shells", edited)
    assert start(app).stamp != build.stamp
    app.extensions[PLACE] = build


def test_a_file_of_no_known_type_stops_the_start(tmp_path):
    (tmp_path / "what.xyz").touch()
    with pytest.raises(MadeError, match=r"what\.xyz: no type is known for \.xyz"):
        static_files(tmp_path)


def test_a_tool_without_a_file_of_its_name_stops_the_start():
    spacing = TOOLS["spacing"]
    parts = {name: {"args": [], "body": []} for name in FIRST_PARTS}
    core = core_of(spacing="x")
    with pytest.raises(MadeError, match=r"there is no TOOL in webapp/core/slats\.py"):
        made_modules(core, {"spacing": spacing, "slats": spacing}, {}, parts, [])
    assert "tool-spacing" in made_modules(core, {"spacing": spacing}, {}, parts, [])


def core_of(**texts: str) -> dict[Key, Piece]:
    """Make a core of one piece a module."""
    return {(module, "TOOL"): Piece((module, "TOOL"), "TOOL", text, frozenset()) for module, text in texts.items()}


def test_the_engine_is_named_by_the_core_alone():
    assert engine(core_of(a="x", b="y")) == engine(core_of(b="y", a="x"))
    assert engine(core_of(a="x", b="y")) != engine(core_of(a="x", b="z"))


def test_parts_bring_along_what_they_call():
    put, call = ["put", ["a"]], ["call", "row", ["a"]]
    bodies = {
        "home": ["text", ["for", "each", ["rows"], [["if", ["a"], ["b"], [call]]]]],
        "row": [put],
        "other": [call],
    }
    parts = {name: {"args": [], "body": body} for name, body in bodies.items()}
    assert needed(parts, ["home"]) == {"home", "row"}
    assert needed(parts, ["row"]) == {"row"}


STARTED = """
import sys
from pathlib import Path
from webapp.app import create_app
from webapp.phone.build import PLACE
app = create_app(Path(sys.argv[1]))
print(app.extensions[PLACE].stamp)
app.extensions["shoulderline"].close()
"""


def test_a_new_start_is_no_new_version(tmp_path):
    """Sets of words have another order in each process; what a phone keeps must not."""
    starts = [
        subprocess.Popen(
            [sys.executable, "-c", STARTED, str(tmp_path / seed)],
            env={**os.environ, "PYTHONHASHSEED": seed, "PYTHONPATH": str(TOP)},
            stdout=subprocess.PIPE,
            text=True,
        )
        for seed in ("1", "2", "3")
    ]
    marks = [start.communicate(timeout=120)[0].strip() for start in starts]
    assert len(marks[0]) == 16
    assert len(set(marks)) == 1, marks
