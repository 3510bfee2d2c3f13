"""A browser's window: what a maker does in it, by real presses at the place where a thing is drawn."""

import base64
import json
import time
from pathlib import Path
from typing import Any

from tests.hand import keys
from tests.other.wire import PATIENCE, RefusedError, Wire

FIND = """
// What is folded away may have a box all the same.
const folded = (it) => it.closest("details:not([open])") && !it.closest("summary");
const seen = (it) => it.getClientRects().length > 0 && getComputedStyle(it).visibility === "visible" && !folded(it);
const find = (what) => what.startsWith("=")
  ? [...document.querySelectorAll("a, button")].find((it) => seen(it) && it.textContent.trim() === what.slice(1))
  : [...document.querySelectorAll(what)].find(seen);
"""
PLACE = """
const it = find(arguments[0]);
if (!it) return null;
it.scrollIntoView({ block: "nearest" });
const box = it.getBoundingClientRect();
const [x, y] = [Math.round(box.left + box.width / 2), Math.round(box.top + box.height / 2)];
const there = document.elementFromPoint(x, y);
return there && (it.contains(there) || there.contains(it)) ? [x, y] : null;
"""
SAYS = "return [...document.querySelectorAll(arguments[0])].some((it) => it.textContent.includes(arguments[1]));"
REST = 0.25  # seconds: longer than what stands below an answer waits for the keys to rest (static/draw.js)
ESCAPE = "\ue00c"


class Window:
    """One window. What is pressed is named by a selector, or by a link's or a button's words after an equals sign."""

    def __init__(self, wire: Wire, finger: str) -> None:
        self.wire, self.finger = wire, finger

    def goto(self, address: str) -> None:
        self.wire.tell("Navigate", url=address)
        self.ready()

    def ready(self) -> None:
        """Wait until the phone has taken the page over."""
        self.until('return document.documentElement.classList.contains("ready")')

    def run(self, script: str, *words: Any) -> Any:
        """Return what a script's body gives in the page; `find` is there."""
        return self.wire.tell("ExecuteScript", script=FIND + script, args=list(words))

    def later(self, script: str, *words: Any) -> Any:
        """Return what a script's body gives in the page where it has to be waited for."""
        body = (
            "const done = arguments[arguments.length - 1]; const words = arguments;"
            f"(async () => {{ {script} }})().then((value) => done([value]), (error) => done(String(error)));"
        )
        value = self.wire.tell("ExecuteAsyncScript", script=body, args=list(words))
        if isinstance(value, str):
            raise RefusedError(value)
        return value[0]

    def until(self, script: str, *words: Any) -> Any:
        """Return what a script gives once that is true; a page that is on its way to another is asked again."""
        ends = time.monotonic() + PATIENCE
        found: Any = None
        while time.monotonic() < ends:
            try:
                found = self.run(script, *words)
            except RefusedError as error:
                found = error
            if found and not isinstance(found, RefusedError):
                return found
            time.sleep(0.05)
        raise AssertionError(f"waited in vain: {script} {words}; {found}; the page is {self.told()}")

    def told(self) -> str:
        """Return address and words of the page, for the message of a test that fails."""
        return json.dumps(self.run("return [location.href, document.body.innerText]"))

    def says(self, where: str, words: str) -> None:
        """Wait until these words stand in that place."""
        self.until(SAYS, where, words)

    def at(self, path: str) -> None:
        """Wait for an address, by its path's beginning, and for the page there."""
        self.until("return location.pathname.startsWith(arguments[0])", path)
        self.ready()

    def tap(self, what: str) -> None:
        """Press where it is drawn and has come to rest: what something else lies over is not pressed."""
        place = None
        while place != (found := self.until(PLACE, what)):
            place = found
            time.sleep(REST)
        x, y = found
        steps = [
            {"type": "pointerMove", "x": x, "y": y, "origin": "viewport", "duration": 0},
            {"type": "pointerDown", "button": 0},
            {"type": "pointerUp", "button": 0},
        ]
        self._act("pointer", "finger", steps, parameters={"pointerType": self.finger})

    def type(self, what: str, text: str) -> None:
        """Press a field and type into it, on real keys."""
        self.tap(what)
        self.until("return document.activeElement === find(arguments[0])", what)
        self._keys(text)

    def put_away(self) -> None:
        """Close the pad by Escape, and wait until it is gone: what is pressed next has moved."""
        self._keys(ESCAPE)
        self.until('return document.getElementById("pad").hidden')

    def _keys(self, text: str) -> None:
        self._act("key", "keys", [{"type": kind, "value": each} for each in text for kind in ("keyDown", "keyUp")])

    def _act(self, kind: str, name: str, steps: list[dict[str, Any]], **more: Any) -> None:
        self.wire.tell("PerformActions", actions=[{"type": kind, "id": name, "actions": steps, **more}])

    def thumb(self, field: str, *presses: str) -> None:
        """Press a field and keys of the pad: "58", "3/8", "strong"."""
        self.tap(field)
        for press in presses:
            for key in keys(press):
                self.tap(f"#pad {key}")

    def picture(self, path: Path) -> None:
        path.write_bytes(base64.b64decode(self.wire.tell("TakeScreenshot", full=False)))
