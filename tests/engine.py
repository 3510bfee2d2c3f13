"""The browser's engine, for tests: runs the translated core, and says what CPython gives for the same call.

`browser` is the one Chromium of a test session; `engine` holds a page of it with the translated core:

    engine.call("mark", "mark", Fraction(43, 24), setting)        what the phone gives, as a Python value
    engine.outcomes([("mark", "mark", (x, setting)), …])           many calls in one go, plainly written
    engine.check([("mark", "mark", (x, setting)), …])              asserts that CPython and the phone agree
    engine.run("([a, b]) => a + b", [1, 2])                        any JavaScript in the page
    engine.add("name", {"module": javascript})                     another core beside the real one
"""

import importlib
import json
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from contextlib import suppress
from dataclasses import fields, is_dataclass
from fractions import Fraction
from pathlib import Path
from types import FunctionType
from typing import Any
from urllib.parse import urlsplit

import pytest
from playwright.sync_api import Browser, Page, Playwright, Route, sync_playwright

from tests.browser import executable, flags
from webapp.phone.pieces import Key, Piece
from webapp.phone.translate import Refused, translate

ROOT = Path(__file__).parent.parent
CORE = ROOT / "webapp" / "core"
WHOLE = "_whole_"  # the module of all pieces
ORIGIN = "https://bench.test"
SAFE = 2**53 - 1
Call = tuple[str, str, Sequence[Any]]


class Raised(Exception):  # noqa: N818 - the word of the outcome
    """A Python error that the translated core raised: its class's name, its text, its attributes."""

    def __init__(self, name: str, text: str, has: dict[str, Any]) -> None:
        super().__init__(f"{name}: {text}")
        self.name, self.text, self.has = name, text, has


def plain(value: Any, place: Callable[[Any], str] = lambda found: "") -> Any:
    """Write a Python value as JSON can hold it; `place` names the module of a dataclass or a function."""
    if value is None or isinstance(value, str | bool):
        return value
    if isinstance(value, int):
        return value if abs(value) <= SAFE else {"int": str(value)}
    if isinstance(value, Fraction):
        return {"fraction": [str(value.numerator), str(value.denominator)]}
    if isinstance(value, list | tuple | dict):
        return plain_row(value, place)
    if isinstance(value, FunctionType):
        return {"function": [place(value), value.__name__]}
    if is_dataclass(value):
        inner = [plain(getattr(value, field.name), place) for field in fields(value)]
        return {"value": [place(type(value)), type(value).__name__, inner]}
    raise TypeError(f"{type(value).__name__} is no value of the core")


def plain_row(value: Any, place: Callable[[Any], str]) -> Any:
    """Write a list, a tuple or a dict."""
    if isinstance(value, dict):
        return {"dict": [[plain(key, place), plain(item, place)] for key, item in value.items()]}
    row = [plain(item, place) for item in value]
    return {"tuple": row} if isinstance(value, tuple) else row


def module_of(found: Any) -> str:
    """Name the module of the core that a class or a function comes from."""
    return str(found.__module__).rpartition(".")[2]


def python(value: Any) -> Any:
    """Read what `plain` or the page wrote; a dataclass of the real core is made again."""
    if isinstance(value, list):
        return [python(item) for item in value]
    if not isinstance(value, dict):
        return value
    [(kind, of)] = value.items()
    if kind == "int":
        return int(of)
    if kind == "fraction":
        return Fraction(int(of[0]), int(of[1]))
    if kind == "tuple":
        return tuple(python(item) for item in of)
    if kind == "dict":
        return {python(key): python(item) for key, item in of}
    return value


def outcome(work: Callable[..., Any], args: Sequence[Any]) -> dict[str, Any]:
    """Say what CPython gives or raises, in the words of the page."""
    try:
        return {"gives": plain(work(*args))}
    except Exception as error:
        return raised(error)


def raised(error: Exception) -> dict[str, Any]:
    """Write an error as the page writes one; the text of a KeyError is Python's own."""
    text = "" if isinstance(error, KeyError) or not is_own(error) else str(error)
    return {"raises": type(error).__name__, "text": text, "has": {k: plain(v) for k, v in vars(error).items()}}


def is_own(error: Any) -> bool:
    """Tell whether the text of an error was written in the core, not by the language."""
    return bool(type(error).__module__ != "builtins") or bool(error.__traceback__ and was_raised_there(error))


def was_raised_there(error: BaseException) -> bool:
    """Tell whether the innermost frame made the error by a raise of its own."""
    trace = error.__traceback__
    while trace and trace.tb_next:
        trace = trace.tb_next
    if trace is None:
        return False
    with suppress(OSError, IndexError):
        lines = Path(trace.tb_frame.f_code.co_filename).read_text(encoding="utf-8").splitlines()
        return lines[trace.tb_lineno - 1].strip().startswith("raise ")
    return False


class Engine:
    """A page that holds the translated core and the run-time."""

    def __init__(self, page: Page) -> None:
        self.page = page
        self.cores: dict[str, dict[str, str]] = {"engine": {}}
        page.route("**/*", self._serve)
        page.goto(f"{ORIGIN}/")

    def _serve(self, route: Route) -> None:
        parts = urlsplit(route.request.url).path.strip("/").split("/")
        body, kind = self._found(parts)
        if body is None:
            route.fulfill(status=404, body="")
        else:
            route.fulfill(body=body, content_type=kind)

    def _found(self, parts: list[str]) -> tuple[str | None, str]:
        if parts == [""]:
            return "<!doctype html><title>The bench</title>", "text/html"
        if len(parts) == 4 and parts[2] == "core":
            return self._module(parts[1], parts[3].removesuffix(".js")), "text/javascript"
        file = ROOT / ("tests" if parts[-1] == "engine.js" else "static") / parts[-1]
        return (file.read_text(encoding="utf-8") if file.exists() else None), "text/javascript"

    def _module(self, core: str, name: str) -> str | None:
        try:
            if core == "engine" and not self.cores[core]:
                self.add(core, translate(CORE))
        except Refused as refused:  # raised in here, it would leave the page waiting
            return f"throw new SyntaxError({json.dumps(str(refused))});"
        return self.cores.get(core, {}).get(name)

    def add(self, name: str, core: Mapping[Key, Piece]) -> None:
        """Take another translated core, to be asked for by its name."""
        self.cores[name] = as_modules(core)

    def run(self, script: str, argument: Any = None) -> Any:
        """Evaluate JavaScript in the page; static modules are at /static/engine/, the core's at …/core/."""
        return self.page.evaluate(script, argument)

    def outcomes(self, calls: Iterable[Call], core: str = "engine") -> list[dict[str, Any]]:
        """Give {"gives": …} or {"raises": name, "text": …, "has": …} for each call of (module, function, arguments)."""
        written = [[module, name, [plain(item, module_of) for item in args]] for module, name, args in calls]
        script = """async ([core, calls]) => {
            const engine = await import(`/static/${core}/engine.js`);
            return JSON.stringify(await engine.outcomes(`/static/${core}/core`, JSON.parse(calls)));
        }"""
        found: list[dict[str, Any]] = json.loads(self.run(script, [core, json.dumps(written)]))
        return found

    def call(self, module: str, name: str, *args: Any) -> Any:
        """Call one function of the translated core; raise Raised when it raises a Python error."""
        [found] = self.outcomes([(module, name, args)])
        if "raises" in found:
            has = {key: python(value) for key, value in found["has"].items()}
            raise Raised(found["raises"], found["text"], has)
        return python(found["gives"])

    def check(self, calls: Sequence[Call]) -> list[dict[str, Any]]:
        """Assert that CPython and the phone agree on each call, to the character; give the outcomes."""
        there = self.outcomes(calls)
        for (module, name, args), seen in zip(calls, there, strict=True):
            work = getattr(importlib.import_module(f"webapp.core.{module}"), name)
            here = outcome(work, args)
            said = seen if here.get("text") or "gives" in here else {**seen, "text": ""}
            assert said == here, f"{module}.{name}{tuple(args)!r}: CPython {here}, the phone {seen}"
        return there


def as_modules(core: Mapping[Key, Piece]) -> dict[str, str]:
    """Give all pieces in one module, as they stand on the phone, and for each of the core's one that gives its own."""
    names = ", ".join(piece.called for piece in core.values())
    head = 'import * as $ from "../python.js";\nimport { Fraction } from "../fraction.js";\n'
    found = {WHOLE: "".join([head, *(piece.text for piece in core.values()), f"export {{ {names} }};\n"])}
    for (module, name), piece in core.items():
        given = f'export {{ {piece.called} as {name} }} from "./{WHOLE}.js";\n'
        found[module] = found.get(module, "") + given
    return found


def launched(playwright: Playwright) -> Browser:
    """Start Playwright's own Chromium, or the system's where there is none."""
    return playwright.chromium.launch(args=flags(), executable_path=executable(playwright.chromium))


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """The one Chromium of a test session: two of Playwright's loops cannot run in one thread."""
    with sync_playwright() as playwright:
        found = launched(playwright)
        yield found
        found.close()


@pytest.fixture(scope="session")
def engine(browser: Browser) -> Iterator[Engine]:
    """The browser's engine with the translated core, for all tests of a session."""
    page = browser.new_page()
    yield Engine(page)
    page.close()
