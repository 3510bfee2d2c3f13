"""The shop's doors in this process, so that a test can set the clock of a certificate or change an address."""

import asyncio
import http.client
import socket
import ssl
import threading
import time
from collections.abc import Coroutine
from datetime import UTC, datetime
from pathlib import Path
from typing import Any, Self
from urllib.parse import urlencode

from webapp.access.authority import authority
from webapp.access.leaf import FILE as LEAF
from webapp.access.leaf import issue
from webapp.access.listen import Doors
from webapp.access.name import FOLDER, decided
from webapp.access.name import place as known
from webapp.access.pairing import new_code
from webapp.access.shop import Asked, Shop
from webapp.app import create_app

HERE = "127.0.0.1"
PATIENCE = 20  # seconds


class Bench:
    """A shop over a data folder, at 127.0.0.1 alone; phones find its name by a rule of the test's browser."""

    def __init__(self, folder: Path, *, number: str = "") -> None:
        self.folder, self.number, self.cookie = folder, number, ""
        self.loop: asyncio.AbstractEventLoop | None = None
        self.thread: threading.Thread | None = None

    @property
    def shop_folder(self) -> Path:
        return self.folder / FOLDER

    @property
    def origin(self) -> str:
        return self.shop.place.origin

    @property
    def port(self) -> int:
        return self.shop.place.port

    def aged(self, now: datetime) -> None:
        """Put a leaf in the folder that was issued at another time, and stays: the shop is not to renew it."""
        place = known(self.shop_folder) or decided(self.shop_folder, free_port())
        root = authority(self.shop_folder, place.name)
        issue(self.shop_folder / LEAF, root, [place.name], now)

    def start(self, *, renew: bool = True) -> Self:
        self.app = create_app(self.folder)
        before = (self.shop_folder / LEAF).read_bytes() if (self.shop_folder / LEAF).exists() else b""
        port = None if (self.shop_folder / "place.json").exists() else 0
        self.shop = Shop(self.folder, self.app, Asked(port, 0, self.number, (HERE,)))
        if before and not renew:
            (self.shop_folder / LEAF).write_bytes(before)
            self.shop.https.config.load()
            self.shop.https.renew(self.shop_folder / LEAF)
        self.doors = Doors((self.shop.https, self.shop.http))
        self.thread = threading.Thread(target=lambda: asyncio.run(self._serve()))
        self.thread.start()
        wait_for(lambda: self.shop.https.started and self.shop.http.started)
        return self

    async def _serve(self) -> None:
        self.loop = asyncio.get_running_loop()
        await self.doors.serve()

    def do(self, chore: Coroutine[Any, Any, Any]) -> Any:
        """Do something in the shop's own loop."""
        assert self.loop is not None
        return asyncio.run_coroutine_threadsafe(chore, self.loop).result(PATIENCE)

    def stop(self) -> None:
        if self.thread is None:
            return
        self.doors.stop()
        self.thread.join(PATIENCE)
        assert not self.thread.is_alive()
        self.thread = None
        self.app.extensions["shoulderline"].close()

    def context(self) -> ssl.SSLContext:
        """Return what trusts this shop's authority and no other."""
        return ssl.create_default_context(cadata=self.shop.root.der)

    def connect(self, name: str = "") -> ssl.SSLSocket:
        """Connect as a phone does that trusts the authority."""
        bare = socket.create_connection((HERE, self.port), PATIENCE)
        try:
            return self.context().wrap_socket(bare, server_hostname=name or self.shop.place.name)
        except BaseException:
            bare.close()
            raise

    def ask(
        self, path: str, *, method: str = "GET", headers: dict[str, str] | None = None, body: bytes | None = None
    ) -> tuple[int, dict[str, str], bytes]:
        """Ask the shop's https door once."""
        connection = http.client.HTTPConnection(HERE, self.port)
        connection.sock = self.connect()
        usual = {"Host": self.origin.removeprefix("https://"), "Sec-Fetch-Site": "none"}
        paired = {"Cookie": self.cookie} if self.cookie else {}
        return asked(connection, method, path, usual | paired | (headers or {}), body)

    def code(self) -> str:
        """Return a new pairing code, as the terminal shows it."""
        return new_code(self.app.extensions["shoulderline"])

    def pair(self) -> None:
        """Pair what asks here, as a phone is paired."""
        headers = {"Sec-Fetch-Site": "same-origin", "Content-Type": "application/x-www-form-urlencoded"}
        form = urlencode({"code": self.code()}).encode()
        status, given, _ = self.ask("/pair", method="POST", headers=headers, body=form)
        assert status == 303
        self.cookie = given["Set-Cookie"].partition(";")[0]

    def ask_setup(
        self, path: str, *, method: str = "GET", headers: dict[str, str] | None = None
    ) -> tuple[int, dict[str, str], bytes]:
        """Ask the set-up page's door once."""
        connection = http.client.HTTPConnection(HERE, self.shop.setup_port)
        return asked(connection, method, path, headers or {}, None)


def asked(
    connection: http.client.HTTPConnection, method: str, path: str, headers: dict[str, str], body: bytes | None
) -> tuple[int, dict[str, str], bytes]:
    try:
        connection.request(method, path, body, headers)
        response = connection.getresponse()
        return response.status, {name.title(): value for name, value in response.getheaders()}, response.read()
    finally:
        connection.close()


def free_port() -> int:
    with socket.socket() as trying:
        trying.bind((HERE, 0))
        port: int = trying.getsockname()[1]
    return port


def wait_for(done: Any) -> None:
    for _ in range(PATIENCE * 50):
        if done():
            return
        time.sleep(0.02)
    raise AssertionError("it did not come to that")


def today() -> datetime:
    return datetime.now(UTC)
