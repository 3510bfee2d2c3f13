"""The store and the address phones send to, in a process of its own that starts at once and can be killed.

It stands in for the whole program where a test starts it a thousand times: the same store, guard, parser and
server (`webapp.serving`), but no core is translated and no page is made. A server that has everything loaded
already forks, so a start takes hundredths of a second.
"""

import socket
import time
from multiprocessing.context import ForkServerProcess
from pathlib import Path
from typing import Self

from flask import Flask

from tests.nursery import nursery
from webapp.access.listen import Doors
from webapp.access.origin import guard
from webapp.app import BODY_CAP
from webapp.pages import failing, sync
from webapp.serving import machine
from webapp.store import Store
from webapp.store.folder import held

PATIENCE = 30  # seconds


def serve(folder: Path, port: int) -> None:
    """Serve one folder until killed."""
    with held(folder):
        app = Flask("webapp")
        app.config["MAX_CONTENT_LENGTH"] = BODY_CAP
        guard(app)
        app.register_blueprint(sync.pages)
        failing.register(app)
        app.extensions["shoulderline"] = Store(folder, version="engine 1")
        Doors((machine(app, port),), ()).run()


class Bare:
    """One such server over one folder, always at the same port."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        with socket.socket() as free:
            free.bind(("127.0.0.1", 0))
            self.port: int = free.getsockname()[1]
        self.process: ForkServerProcess | None = None

    def begin(self) -> None:
        """Start it, and do not wait."""
        self.process = nursery.Process(target=serve, args=(self.folder, self.port), daemon=True)
        self.process.start()

    def start(self) -> Self:
        """Start it, and wait until the port takes a connection."""
        self.begin()
        for _ in range(PATIENCE * 100):
            with socket.socket() as asking:
                if asking.connect_ex(("127.0.0.1", self.port)) == 0:
                    return self
            time.sleep(0.01)
        raise RuntimeError("the server does not answer")

    def kill(self) -> None:
        """SIGKILL: it has no chance to say or write anything more."""
        if self.process is not None:
            self.process.kill()
            self.process.join(PATIENCE)
            self.process.close()
        self.process = None

    stop = kill
