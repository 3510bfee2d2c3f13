"""Two ways to hand a WebDriver command on: Firefox's own socket, and a driver that speaks HTTP.

The commands are those of the W3C's WebDriver in both. Firefox takes them by itself ("Marionette", which its
separate driver only passes on to); the names on its socket are the commands' names.
"""

import json
import socket
from http.client import HTTPConnection
from typing import Any, Protocol, cast

PATIENCE = 60  # seconds: a busy machine is no failure

HTTP = {
    "NewSession": ("POST", ""),
    "Navigate": ("POST", "/url"),
    "Refresh": ("POST", "/refresh"),
    "ExecuteScript": ("POST", "/execute/sync"),
    "ExecuteAsyncScript": ("POST", "/execute/async"),
    "PerformActions": ("POST", "/actions"),
    "TakeScreenshot": ("GET", "/screenshot"),
}


class RefusedError(Exception):
    """The browser did not do what it was told; its text is the driver's own."""


class Wire(Protocol):
    """Something that takes commands."""

    def tell(self, command: str, **words: Any) -> Any:
        """Have a command done, and return its value; raise RefusedError."""

    def close(self) -> None: ...


class Marionette:
    """Firefox's own socket: a length, a colon, [0, number, command, words]; answered by [1, number, error, value]."""

    def __init__(self, port: int) -> None:
        self.number = 0
        self.socket = socket.create_connection(("127.0.0.1", port), timeout=PATIENCE)
        self.incoming = self.socket.makefile("rb")
        self._read()  # it begins by saying what it is

    def _read(self) -> Any:
        length = b""
        while (byte := self.incoming.read(1)) not in (b":", b""):
            length += byte
        if not length:
            raise ConnectionResetError("the browser is gone")
        return json.loads(self.incoming.read(int(length)))

    def tell(self, command: str, **words: Any) -> Any:
        self.number += 1
        said = json.dumps([0, self.number, f"WebDriver:{command}", words]).encode()
        self.socket.sendall(b"%d:%s" % (len(said), said))
        _, number, error, value = self._read()
        assert number == self.number
        if error:
            raise RefusedError(f"{error['error']}: {error['message']}")
        return value["value"] if set(value) == {"value"} else value

    def close(self) -> None:
        self.incoming.close()
        self.socket.close()


class Spoken:
    """A driver that listens for HTTP."""

    def __init__(self, port: int) -> None:
        self.port, self.session = port, ""

    def tell(self, command: str, **words: Any) -> Any:
        method, path = HTTP[command]
        line = HTTPConnection("127.0.0.1", self.port, timeout=PATIENCE)
        line.request(method, f"/session{self.session}{path}", json.dumps(words) if method == "POST" else None)
        value = json.loads(line.getresponse().read())["value"]
        line.close()
        if isinstance(value, dict) and "error" in value:
            raise RefusedError(f"{value['error']}: {value['message']}")
        if command == "NewSession":
            self.session = f"/{value['sessionId']}"
        return cast(Any, value)

    def close(self) -> None:
        """Every command has a connection of its own: nothing is open."""
