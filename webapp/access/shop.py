"""The shop's network: its place, its certificate and its doors, kept right while they are served."""

import asyncio
import socket
from collections.abc import Sequence
from contextlib import ExitStack
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

import click
from a2wsgi import WSGIMiddleware

from webapp.access import private
from webapp.access.announce import Announcer
from webapp.access.authority import authority
from webapp.access.door import ShopDoor
from webapp.access.leaf import leaf
from webapp.access.listen import Listener, ServeError, everywhere
from webapp.access.log import Log
from webapp.access.name import FOLDER, decided, kept
from webapp.access.private import in_brackets, is_private
from webapp.access.steps import PORT as SETUP_PORT
from webapp.access.steps import Steps
from webapp.access.way import Way, WsgiApp, marked

THREADS = 8
EVERY = 30.0  # seconds between looks at the addresses and the certificate
NO_NETWORK = (
    "This computer has no address on a private network, so no phone can reach it. Join the shop's network, "
    "or name an address of its own with --address."
)
OTHER_PORT = "stop what has it, or choose another with --shop-port before any phone is paired."
OTHER_SETUP = "try another with --setup-port."


@dataclass(frozen=True)
class Asked:
    """What the command line asked for."""

    port: int | None = None
    setup_port: int = SETUP_PORT
    number: str = ""
    only: tuple[str, ...] = ()


class Shop:
    """The shop as it is served now."""

    def __init__(self, data: Path, app: WsgiApp, asked: Asked, *, settled: bool = False) -> None:
        self.folder, self.only, self.log = data / FOLDER, asked.only, Log(data)
        self.addresses = self._found()
        place = decided(self.folder, asked.port, asked.number, settled=settled)
        with ExitStack() as undo:
            sockets = _taken(place.port, self.only, OTHER_PORT, undo)
            setup_sockets = _taken(asked.setup_port, self.only, OTHER_SETUP, undo)
            self.place = place if place.port else kept(self.folder, place, sockets[0].getsockname()[1])
            self.setup_port: int = setup_sockets[0].getsockname()[1]
            self.root = authority(self.folder, self.place.name)
            self.leaf = leaf(self.folder, self.root, self.hosts)
            self.announcer = Announcer(self.place)
            self.https = Listener(self._door(app), sockets, self.leaf.file)
            self.http = Listener(Steps(self.place, self.root, lambda: self.addresses, self.setup_port), setup_sockets)
            undo.pop_all()

    def _door(self, app: WsgiApp) -> ShopDoor:
        way = Way("shop", (self.place.host,), paired=True, origin=self.place.origin)
        inner = WSGIMiddleware(marked(app, way), workers=THREADS)
        return ShopDoor(inner, self.place, lambda: self.addresses, self.log)

    def _found(self) -> list[str]:
        """Return the addresses that phones may use."""
        if self.only:
            return [each for each in self.only if is_private(each)]
        found = private.addresses()
        if not found:
            raise ServeError(NO_NETWORK)
        return found

    @property
    def hosts(self) -> list[str]:
        """Return what the certificate has to be good for."""
        return list(dict.fromkeys([self.place.host, self.place.name, *self.addresses]))

    @property
    def setup(self) -> str:
        """Return the set-up page's address."""
        host = (self.addresses or list(self.only))[0]
        return f"http://{in_brackets(host)}:{self.setup_port}/"

    async def watch(self) -> None:
        """Announce the name; follow the addresses, and renew the certificate, for as long as it is served."""
        await self.announce()
        try:
            while True:
                await asyncio.sleep(EVERY)
                await self._look_again()
        finally:
            self.announcer.close()

    async def _look_again(self) -> None:
        """Look, and try again later where the disk or the network is in the way."""
        try:
            await self.look(datetime.now(UTC))
        except OSError as e:
            click.echo(f"The certificate could not be looked after: {e}.", err=True)

    async def announce(self) -> None:
        """Announce the name for the addresses of now; what stands in the way is said once."""
        before = self.announcer.said
        await asyncio.to_thread(self.announcer.announce, self.addresses)
        if self.announcer.said not in ("", before):
            click.echo(self.announcer.said, err=True)

    async def look(self, now: datetime, found: Sequence[str] | None = None) -> None:
        """Look once at the addresses and the certificate."""
        before, self.addresses = self.addresses, self._now() if found is None else list(found)
        renewed = leaf(self.folder, self.root, self.hosts, now)
        if renewed.certificate != self.leaf.certificate:
            self.leaf = renewed
            self.https.renew(renewed.file)
        if self.addresses != before:
            self._say_change()
        if self.addresses != before or self.announcer.said:
            await self.announce()

    def _now(self) -> list[str]:
        """Return the addresses of now; without a network, those of before, until there is one again."""
        try:
            return self._found()
        except ServeError:
            return self.addresses

    def _say_change(self) -> None:
        click.echo(f"This computer's addresses have changed. The set-up page is at {self.setup} now.")
        if self.place.number and self.place.number not in self.addresses:
            number = self.place.number
            click.echo(f"The phones look for it at {number}: have the router always give it that number.", err=True)


def _taken(port: int, only: Sequence[str], advice: str, undo: ExitStack) -> list[socket.socket]:
    """Take a port everywhere; what comes after may still let go of it."""
    sockets = everywhere(port, only, advice)
    for each in sockets:
        undo.callback(each.close)
    return sockets
