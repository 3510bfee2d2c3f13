"""Doors: sockets, what is served at them, and one process that serves them all until it is stopped."""

import asyncio
import errno
import signal
import socket
import threading
from collections.abc import Coroutine, Iterator, Sequence
from contextlib import contextmanager, nullcontext
from dataclasses import dataclass
from pathlib import Path
from types import FrameType
from typing import Any

import uvicorn

from webapp.access.patience import Patient

HANDSHAKE = 10.0  # seconds
ALIVE = 30  # seconds that a quiet connection is kept: phones ask about that often
GOODBYE = 3  # seconds for answers that are under way when the program is stopped
FILES = 8192  # open connections need open files


class ServeError(RuntimeError):
    """The address could not be taken."""


class Listener(uvicorn.Server):
    """One door: an application at its sockets; https where it has a certificate. No proxy is believed."""

    def __init__(self, app: Any, sockets: Sequence[socket.socket], certificate: Path | None = None) -> None:
        self.sockets = list(sockets)
        super().__init__(
            uvicorn.Config(
                app,
                http=Patient,
                ws="none",
                lifespan="off",
                log_level="error",
                proxy_headers=False,
                server_header=False,
                timeout_keep_alive=ALIVE,
                timeout_graceful_shutdown=GOODBYE,
                ssl_certfile=certificate,
            )
        )

    @property
    def port(self) -> int:
        """Return the port that was taken."""
        taken: int = self.sockets[0].getsockname()[1]
        return taken

    async def startup(self, sockets: list[socket.socket] | None = None) -> None:
        """Listen; a handshake that stalls is given up soon."""
        loop = asyncio.get_running_loop()
        tls = self.config.ssl
        patience = HANDSHAKE if tls else None
        self.servers = [
            await loop.create_server(self._protocol, sock=each, ssl=tls, ssl_handshake_timeout=patience)
            for each in self.sockets
        ]
        self.started = True

    async def shutdown(self, sockets: list[socket.socket] | None = None) -> None:
        """Stop; requests that have come whole are answered, others are not waited for."""
        for connection in list(self.server_state.connections):
            if isinstance(connection, Patient) and connection.unfinished:
                connection.transport.abort()
        await super().shutdown(self.sockets if sockets is None else sockets)

    def _protocol(self) -> Patient:
        return Patient(self.config, self.server_state, self.lifespan.state)

    def capture_signals(self) -> Any:
        """Leave signals to the process: it has several doors."""
        return nullcontext()

    def close(self) -> None:
        """Let go of the port, also when it was never served."""
        for each in self.sockets:
            each.close()

    def renew(self, certificate: Path) -> None:
        """Show new connections another certificate; those that are open go on."""
        if self.config.ssl:
            self.config.ssl.load_cert_chain(certificate)


@dataclass(frozen=True)
class Doors:
    """All doors of the process, and what it does beside serving them."""

    listeners: tuple[Listener, ...]
    beside: tuple[Coroutine[Any, Any, None], ...] = ()

    def run(self) -> None:
        """Serve until a signal stops it."""
        more_files()
        with self._signals():
            asyncio.run(self.serve())

    async def serve(self) -> None:
        """Serve every door; when one has ended, the others end, and what runs beside them."""
        chores = [asyncio.create_task(each) for each in self.beside]
        try:
            await asyncio.gather(*(listener.serve() for listener in self.listeners))
        finally:
            for chore in chores:
                chore.cancel()
            await asyncio.gather(*chores, return_exceptions=True)

    def stop(self) -> None:
        """Stop serving."""
        for listener in self.listeners:
            listener.should_exit = True

    @contextmanager
    def _signals(self) -> Iterator[None]:
        if threading.current_thread() is not threading.main_thread():
            yield
            return

        def heard(_number: int, _frame: FrameType | None) -> None:
            self.stop()

        before = {number: signal.signal(number, heard) for number in (signal.SIGINT, signal.SIGTERM)}
        try:
            yield
        finally:
            for number, handler in before.items():
                signal.signal(number, handler)


def bound(host: str, port: int, advice: str) -> socket.socket:
    """Take a port at an address, or say plainly why it cannot be had, and what to do."""
    family = socket.AF_INET6 if ":" in host else socket.AF_INET
    # TCP said by its number: asyncio looks for it before it sets TCP_NODELAY, else an answer's second half waits 40 ms.
    listening = socket.socket(family, socket.SOCK_STREAM, socket.IPPROTO_TCP)
    listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    if ":" in host:
        listening.setsockopt(socket.IPPROTO_IPV6, socket.IPV6_V6ONLY, 1)
    try:
        listening.bind((host, port))
        listening.listen()  # who reads the address may ask at once
    except OSError as e:
        listening.close()
        why = "is taken" if e.errno == errno.EADDRINUSE else f"at {host} cannot be had ({e.strerror})"
        raise ServeError(f"Port {port} {why}: {advice}") from e
    return listening


def everywhere(port: int, only: Sequence[str], advice: str) -> list[socket.socket]:
    """Take a port at all addresses, or at those given; a free one is the same at each."""
    sockets: list[socket.socket] = []
    try:
        for host in only or ("0.0.0.0", "::"):  # noqa: S104 - connections by other than private addresses are dropped
            if host != "::" or socket.has_dualstack_ipv6():
                sockets.append(bound(host, port, advice))
                port = sockets[0].getsockname()[1]
    except ServeError:
        for each in sockets:
            each.close()
        raise
    return sockets


def more_files() -> None:
    """Let the process hold as many connections as the system allows, within reason."""
    try:
        import resource
    except ImportError:  # Windows counts them otherwise
        return
    soft, hard = resource.getrlimit(resource.RLIMIT_NOFILE)
    wanted = FILES if hard == resource.RLIM_INFINITY else min(FILES, hard)
    if soft != resource.RLIM_INFINITY and soft < wanted:
        resource.setrlimit(resource.RLIMIT_NOFILE, (wanted, hard))
