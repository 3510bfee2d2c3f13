"""Connections that ask nothing, or half a question, do not hold up those that ask."""

import asyncio
from collections.abc import Collection
from typing import Any

from uvicorn.protocols.http.h11_impl import H11Protocol

from webapp.access.private import is_private

HEAD = 10.0  # seconds in which a connection must have sent the head of its request
MOST = 400  # connections at once, through one door


class Patient(H11Protocol):
    """One connection: it is closed when it does not ask in time, or when it has waited longest and others come."""

    late: asyncio.TimerHandle | None = None
    since = 0.0

    @property
    def waiting(self) -> bool:
        """Say whether this connection has asked nothing that is not answered."""
        return self.cycle is None or self.cycle.response_complete

    @property
    def unfinished(self) -> bool:
        """Say whether a request has not come whole."""
        return self.waiting or self.cycle.more_body

    def connection_made(self, transport: asyncio.Transport) -> None:  # type: ignore[override]
        """Take a connection in; where there are too many, the one that has waited longest goes."""
        super().connection_made(transport)
        self.since = self.loop.time()
        if self.server is not None and not local(self.server[0]):
            transport.abort()
        self._expect()
        if len(self.connections) > MOST:
            longest(self.connections).transport.abort()

    def data_received(self, data: bytes) -> None:
        """Take bytes in; a request that has begun to come must come soon."""
        super().data_received(data)
        if not self.waiting:
            self._heard()
        elif self.late is None:
            self._expect()

    def connection_lost(self, exc: Exception | None) -> None:
        """Let a connection go."""
        self._heard()
        super().connection_lost(exc)

    def _expect(self) -> None:
        self.late = self.loop.call_later(HEAD, self._close)

    def _heard(self) -> None:
        if self.late is not None:
            self.late.cancel()
            self.late = None

    def _close(self) -> None:
        self.late = None
        if self.waiting:
            self.transport.abort()


def local(host: str) -> bool:
    """Say whether an address of this machine's own may be asked: never one that the internet reaches."""
    return host.startswith("127.") or host == "::1" or is_private(host)


def longest(connections: Collection[Any]) -> Patient:
    """Return the connection that has waited longest, or if none waits, the oldest."""
    found = sorted(connections, key=lambda each: (not each.waiting, each.since))
    oldest: Patient = found[0]
    return oldest
