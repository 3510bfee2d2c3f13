"""Servers forked from a process that has everything loaded: a start takes tenths of a second, not two.

The first one loads the program, translates the core and packs the files; those that follow share that by their fork.
"""

import multiprocessing
import os
import subprocess
import sys
from multiprocessing.connection import Connection

nursery = multiprocessing.get_context("forkserver")
nursery.set_forkserver_preload(["tests.bare", "tests.loaded"])


def command(words: list[str], environment: dict[str, str], out: Connection) -> None:
    """Run the program's command with its words, as `python -m webapp` does, and write into a pipe.

    The environment is the test's own: the process that this one is forked from may have begun under another.
    """
    from webapp.cli import main

    os.environ.clear()
    os.environ.update(environment)
    os.dup2(out.fileno(), 1)
    sys.stdout = open(1, "w", encoding="utf-8", closefd=False)  # noqa: SIM115 - it lasts as long as the process
    main(words)


class Forked:
    """A command in a process of its own, with as much of the face of `subprocess.Popen` as the tests use."""

    def __init__(self, words: list[str]) -> None:
        into, out = nursery.Pipe(duplex=False)
        self._process = nursery.Process(target=command, args=(words, dict(os.environ), out), daemon=True)
        self._process.start()
        out.close()
        self.stdout = os.fdopen(os.dup(into.fileno()), encoding="utf-8")
        into.close()

    @property
    def pid(self) -> int | None:
        return self._process.pid

    def terminate(self) -> None:
        self._process.terminate()

    def kill(self) -> None:
        self._process.kill()

    def wait(self, timeout: float) -> int:
        """Wait for its end and return its exit status; raise subprocess.TimeoutExpired after so many seconds."""
        self._process.join(timeout)
        if self._process.exitcode is None:
            raise subprocess.TimeoutExpired("webapp", timeout)
        return self._process.exitcode
