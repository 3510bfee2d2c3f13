"""A bad network between a page and its server: passes on what it is asked, or does to /sync what it is told to.

The page is opened at its address, so that it is the page's own origin and the worker's.
"""

import http.client
import json
import socket
import threading
from collections import Counter, deque
from collections.abc import Callable
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from typing import Any, Self

HANGING = 60  # seconds; longer than any phone waits
NOT_PASSED = {"connection", "keep-alive", "transfer-encoding", "content-length"}
PORTAL = b"<!doctype html><title>Welcome</title><h1>Welcome to the guests' network</h1>"
WHOLE = {"epoch": "x", "kept": [], "refused": [], "worked": {}, "entries": [], "cursor": 0, "more": False}


class Passing(BaseHTTPRequestHandler):
    """One connection of a page."""

    protocol_version = "HTTP/1.1"
    server: "Faulty"

    def log_message(self, format: str, *args: Any) -> None:
        """Say nothing."""

    def do_GET(self) -> None:
        self.pass_on()

    def do_POST(self) -> None:
        fault = self.server.next_fault() if self.path == "/sync" else ""
        if not fault:
            return self.pass_on()
        self.close_connection = True
        body = self.asked()
        self.server.begun(fault)
        return FAULTS[fault](self, body)

    def asked(self) -> bytes:
        return self.rfile.read(int(self.headers.get("Content-Length", "0")))

    def pass_on(self) -> None:
        if self.server.down:
            return self.drop()
        found = self.through(self.asked())
        return self.drop() if found is None else self.give(*found)

    def through(self, body: bytes) -> tuple[int, list[tuple[str, str]], bytes] | None:
        """Ask the real server; nothing where it is not there."""
        line = http.client.HTTPConnection("127.0.0.1", self.server.behind, timeout=30)
        try:
            line.request(self.command, self.path, body or None, dict(self.headers))
            answer = line.getresponse()
            return answer.status, answer.getheaders(), answer.read()
        except OSError:
            return None
        finally:
            line.close()

    def give(self, status: int, headers: list[tuple[str, str]], body: bytes, part: int | None = None) -> None:
        """Answer, with no more than a part of the body where one is given."""
        self.send_response_only(status)
        for name, value in headers:
            if name.lower() not in NOT_PASSED:
                self.send_header(name, value)
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        self.wfile.write(body[:part])
        self.wfile.flush()

    def drop(self) -> None:
        """End the connection with a reset."""
        self.close_connection = True
        self.connection.setsockopt(socket.SOL_SOCKET, socket.SO_LINGER, b"\1\0\0\0\0\0\0\0")
        self.connection.shutdown(socket.SHUT_RDWR)

    def hang(self) -> None:
        """Say nothing more, until the phone gives up or the test ends."""
        self.server.over.wait(HANGING)


def status(code: int) -> Callable[[Passing, bytes], None]:
    return lambda at, body: at.give(code, [("Content-Type", "text/html")], b"<h1>No</h1>")


def portal(at: Passing, body: bytes) -> None:
    at.give(200, [("Content-Type", "text/html")], PORTAL)


def says(value: Callable[[dict[str, Any]], Any]) -> Callable[[Passing, bytes], None]:
    """Answer 200 with JSON of something else; it may know what was asked."""

    def answer(at: Passing, body: bytes) -> None:
        at.give(200, [("Content-Type", "application/json")], json.dumps(value(json.loads(body))).encode())

    return answer


def ids(asked: dict[str, Any]) -> list[str]:
    return [entry["id"] for entry in asked["entries"]]


def redirect(code: int, to: str) -> Callable[[Passing, bytes], None]:
    return lambda at, body: at.give(code, [("Location", to)], b"")


def dropped(at: Passing, body: bytes) -> None:
    at.drop()


def dropped_after(at: Passing, body: bytes) -> None:
    at.through(body)
    at.drop()


def cut(at: Passing, body: bytes) -> None:
    """Pass it on, and give half of the answer."""
    found = at.through(body)
    if found is not None:
        at.give(*found, part=len(found[2]) // 2)
    at.drop()


def hung(at: Passing, body: bytes) -> None:
    at.hang()


def hung_after(at: Passing, body: bytes) -> None:
    at.through(body)
    at.hang()


def half_hung(at: Passing, body: bytes) -> None:
    """Pass it on, give half of the answer, and stop."""
    found = at.through(body)
    if found is not None:
        at.give(*found, part=len(found[2]) // 2)
    at.hang()


FAULTS: dict[str, Callable[[Passing, bytes], None]] = {
    "500": status(500),
    "502": status(502),
    "503": status(503),
    "401": status(401),
    "403": status(403),
    "404": status(404),
    "429": status(429),
    "a portal's page": portal,
    "an empty object": says(lambda asked: {}),
    "null": says(lambda asked: None),
    "a list": says(lambda asked: []),
    "the question itself": says(lambda asked: asked),
    "kept, and no list": says(lambda asked: {**WHOLE, "epoch": asked["epoch"], "kept": True}),
    "no epoch": says(lambda asked: {**WHOLE, "epoch": "", "kept": ids(asked)}),
    "entries that are none": says(
        lambda asked: {
            **WHOLE,
            "epoch": asked["epoch"],
            "kept": ids(asked),
            "entries": [None],
            "cursor": asked["cursor"],
        }
    ),
    "refusals that are none": says(lambda asked: {**WHOLE, "epoch": asked["epoch"], "refused": ids(asked)}),
    "a cursor that is none": says(lambda asked: {**WHOLE, "epoch": asked["epoch"], "kept": ids(asked), "cursor": -1}),
    "sent elsewhere": redirect(302, "/"),
    "sent elsewhere, with the question": redirect(307, "/elsewhere"),
    "dropped before": dropped,
    "dropped after": dropped_after,
    "cut short after": cut,
    "hangs before": hung,
    "hangs after": hung_after,
    "hangs in the midst": half_hung,
}


class Faulty(ThreadingHTTPServer):
    """The network; `faults` are what happens to the next questions, then all goes through again."""

    daemon_threads = True
    block_on_close = False

    def __init__(self, behind: int) -> None:
        super().__init__(("127.0.0.1", 0), Passing)
        self.behind = behind
        self.down = False
        self.faults: deque[str] = deque()
        self.seen: Counter[str] = Counter()
        self.over = threading.Event()
        self.guarding = threading.Lock()

    @property
    def address(self) -> str:
        return f"http://127.0.0.1:{self.server_port}"

    def next_fault(self) -> str:
        with self.guarding:
            return "dropped before" if self.down else self.faults.popleft() if self.faults else ""

    def begun(self, fault: str) -> None:
        with self.guarding:
            self.seen[fault] += 1

    def handle_error(self, request: Any, client_address: Any) -> None:
        """Say nothing of connections that the phone ended."""

    def __enter__(self) -> Self:
        threading.Thread(target=self.serve_forever, daemon=True).start()
        return self

    def __exit__(self, *error: object) -> None:
        self.over.set()
        self.shutdown()
        self.server_close()
