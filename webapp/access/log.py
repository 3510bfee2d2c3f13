"""The log of the doors: who was let in and who was not, a line each, in UTC, bounded, and without a secret."""

import json
import os
import sys
import threading
from datetime import UTC, datetime
from pathlib import Path

from flask import Flask, Response, current_app, request
from werkzeug.exceptions import SecurityError

from webapp.access.pairing import Pace, stamp
from webapp.access.way import of

FILE = "doors.log"
FORMER = "doors.log.1"  # what was written before: the two together are all that is ever kept
MOST = 512 * 1024  # bytes of one of them
LONGEST = 120  # characters of what somebody sent
PLACE = "shoulderline-log"
WORDS = {401: "not paired", 403: "another page", 413: "too large"}
ONE_AT_A_TIME = threading.Lock()  # two doors of one process write


class Log:
    """The log of a data folder. It never stops the program: a full disk is said at the terminal, once."""

    def __init__(self, folder: Path) -> None:
        self.file, self.pace = folder / FILE, Pace()
        self.left_out, self.said = 0, False

    def note(self, what: str, **more: str) -> None:
        """Write what was done."""
        with ONE_AT_A_TIME:
            self._write(what, more)

    def refused(self, why: str, **more: str) -> None:
        """Write what was refused; where very many come, how many were left out."""
        with ONE_AT_A_TIME:
            if not self.pace.may():
                self.left_out += 1
                return
            left_out, self.left_out = self.left_out, 0
            self._write("refused", {"why": why, **more} | ({"left_out": str(left_out)} if left_out else {}))

    def _write(self, what: str, more: dict[str, str]) -> None:
        parts = [f"{name}={json.dumps(value[:LONGEST])}" for name, value in more.items()]
        line = " ".join([stamp(datetime.now(UTC)), what, *parts]) + "\n"
        try:
            self._append(line.encode("ascii"))
        except OSError as e:
            if not self.said:
                self.said = True
                sys.stderr.write(f"{self.file} cannot be written ({e.strerror}), so no log of the doors is kept.\n")

    def _append(self, line: bytes) -> None:
        if self.file.exists() and self.file.stat().st_size + len(line) > MOST:
            self.file.replace(self.file.with_name(FORMER))
        handle = os.open(self.file, os.O_WRONLY | os.O_APPEND | os.O_CREAT, 0o600)
        try:
            os.write(handle, line)
        finally:
            os.close(handle)


def logged(app: Flask, folder: Path) -> None:
    """Keep a log of what the program's doors refuse."""
    app.extensions[PLACE] = Log(folder)
    app.after_request(noted)


def log() -> Log:
    """Return the program's log."""
    found: Log = current_app.extensions[PLACE]
    return found


def noted(response: Response) -> Response:
    """Write down a refusal; a try at a code is written where it is tried, with what came of it."""
    wrong_host = isinstance(request.routing_exception, SecurityError)
    why = "wrong host" if wrong_host else WORDS.get(response.status_code, "")
    if why and request.endpoint != "pairing.enter":
        asked = f"{request.method} {request.path}"  # never the query: what is typed into a tool stands there
        log().refused(why, **here(), asked=asked, host=request.headers.get("Host", ""))
    return response


def here() -> dict[str, str]:
    """Return by which door a request came, and from where."""
    return {"door": of(request.environ).name, "client": request.remote_addr or ""}
