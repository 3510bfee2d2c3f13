"""The program in a process of its own, as a maker starts it: for tests that need a real server."""

import re
import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Self

import pytest

from tests.nursery import Forked

ADDRESS = re.compile(r"http://127\.0\.0\.1:(\d+)/")
PATIENCE = 30  # seconds


class Serving:
    """One server over one data folder; it can be stopped and started again at the same address.

    `program` is another folder that the program stands in.
    """

    def __init__(self, folder: Path, *words: str, demo: bool = False, program: Path | None = None) -> None:
        self.folder, self.words, self.demo, self.port, self.program = folder, words, demo, 0, program
        self.process: subprocess.Popen[str] | Forked | None = None

    @property
    def address(self) -> str:
        return f"http://127.0.0.1:{self.port}"

    def start(self) -> Self:
        words = ["serve", "--port", str(self.port), "--data", str(self.folder), *(["--demo"] if self.demo else [])]
        self.process = self._begun([*words, *self.words])
        said = ADDRESS.search(self.process.stdout.readline() if self.process.stdout else "")
        if said is None:
            self.stop()
            raise RuntimeError("the server did not print its address")
        self.port = int(said[1])
        self._answers()
        return self

    def _begun(self, words: list[str]) -> "subprocess.Popen[str] | Forked":
        command = [sys.executable, "-m", "webapp", *words]
        return subprocess.Popen(command, stdout=subprocess.PIPE, text=True, cwd=self.program)

    def says(self, pattern: str) -> re.Match[str]:
        """Read on until a line has this in it; a program that ends without it fails the test."""
        assert self.process is not None
        assert self.process.stdout is not None
        for line in self.process.stdout:
            found = re.search(pattern, line)
            if found:
                return found
        raise AssertionError(f"the server did not say {pattern}")

    def _answers(self) -> None:
        """Wait until the port takes a connection."""
        for _ in range(PATIENCE * 20):
            with socket.socket() as asking:
                if asking.connect_ex(("127.0.0.1", self.port)) == 0:
                    return
            time.sleep(0.05)
        self.stop()
        raise RuntimeError("the server does not answer")

    def stop(self) -> None:
        """Stop the server, as Ctrl+C does."""
        if self.process is None:
            return
        self.process.terminate()
        try:
            self.process.wait(PATIENCE)
        except subprocess.TimeoutExpired:
            self.process.kill()
            self.process.wait(PATIENCE)
        if self.process.stdout:
            self.process.stdout.close()
        self.process = None

    def kill(self) -> None:
        """SIGKILL: it has no chance to say or write anything more."""
        if self.process is not None:
            self.process.kill()
        self.stop()


class Quick(Serving):
    """The same program and command, forked from a process that has it loaded and its files made."""

    def _begun(self, words: list[str]) -> Forked:
        return Forked(words)


@pytest.fixture
def serving(tmp_path: Path) -> Iterator[Serving]:
    """Serve an empty folder for one test."""
    server = Quick(tmp_path / "data").start()
    yield server
    server.stop()


@pytest.fixture(scope="module")
def demo_serving(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Serving]:
    """Serve the demo for a module's tests, which leave it as it is."""
    server = Quick(tmp_path_factory.mktemp("demo"), demo=True).start()
    yield server
    server.stop()


@pytest.fixture(scope="module")
def common(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Serving]:
    """Serve a folder that a module's tests share, each with projects of its own."""
    server = Quick(tmp_path_factory.mktemp("common")).start()
    yield server
    server.stop()
