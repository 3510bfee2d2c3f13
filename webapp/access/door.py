"""The shop's door, before the program: the self-test's file, the host, and bodies taken in whole."""

import asyncio
from collections.abc import Awaitable, Callable, Iterable
from html import escape
from types import MappingProxyType
from typing import Any

from webapp.access.log import Log
from webapp.access.name import Place, origin
from webapp.access.origin import HEADERS

Scope = dict[str, Any]
Message = dict[str, Any]
Receive = Callable[[], Awaitable[Message]]
Send = Callable[[Message], Awaitable[None]]
Asgi = Callable[[Scope, Receive, Send], Awaitable[None]]

REACHED = "/reached.txt"  # what the set-up page asks for to see whether a phone trusts the shop
CAP = 1024 * 1024
PATIENCE = 30.0  # seconds for a whole body
REFUSED = MappingProxyType(
    {
        400: "That stopped half way, or said its length twice.\n",
        408: "That took too long.\n",
        413: "That is too much at once: at most 1 MiB.\n",
    }
)
CLOSED_POLICY = "default-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
ELSEWHERE = """<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Shoulderline</title>
<p>Shoulderline is at another address here: <a href="{origin}/">{origin}</a></p>
"""


class Door:
    """What stands before the program at a door of its own."""

    def __init__(self, inner: Asgi) -> None:
        self.inner = inner

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Take a body in whole before a thread of the program is given to it."""
        body = await whole(scope, receive)
        if isinstance(body, int):
            await say(send, body, REFUSED[body])
            return
        await self.inner(scope, replayed(body, receive), send)


class ShopDoor(Door):
    """The door to the shop's network: it knows its own address from its others, and strangers from both."""

    def __init__(self, inner: Asgi, place: Place, addresses: Callable[[], Iterable[str]], log: Log) -> None:
        super().__init__(inner)
        self.place, self.addresses, self.log = place, addresses, log

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer the self-test at any address of ours; send whoever came by another address to the right one."""
        host = asked_host(scope)
        right = host == host_of(self.place.origin)
        known = right or host in self._others()
        if known and scope["path"] == REACHED:
            await say(send, 200, "Shoulderline\n", **{"Cross-Origin-Resource-Policy": "cross-origin"})
        elif right:
            await super().__call__(scope, receive, send)
        elif known:
            page = ELSEWHERE.format(origin=escape(self.place.origin))
            await say(send, 421, page, **{"Content-Type": "text/html; charset=utf-8"})
        else:
            self.log.refused("wrong host", door="shop", client=client(scope), host=host)
            await say(send, 400, "There is no such host here.\n")

    def _others(self) -> set[str]:
        """Return what a browser asks for when it comes by the shop's other names."""
        return {host_of(origin(each, self.place.port)) for each in (self.place.name, *self.addresses())}


def host_of(address: str) -> str:
    """Return the host and port of an origin, as a browser asks for it."""
    return address.partition("://")[2]


def asked_host(scope: Scope) -> str:
    """Return the host that was asked for, or nothing where that was not said once."""
    found = [value for name, value in scope.get("headers", ()) if name == b"host"]
    return found[0].decode("latin-1").lower() if len(found) == 1 else ""


def client(scope: Scope) -> str:
    """Return the address that a request came from, or nothing where there is none."""
    return str((scope.get("client") or [""])[0])


async def whole(scope: Scope, receive: Receive) -> bytes | int:
    """Return a request's body, or the status that refuses it: 413 too long, 408 too slow, 400 gone or in doubt."""
    said = dict(scope["headers"])
    declared = said.get(b"content-length", b"0")
    if b"content-length" in said and b"transfer-encoding" in said:
        return 400  # h11 takes the one and forgets the other; a host in front may do it the other way round
    if len(declared) > len(str(CAP)) or int(declared) > CAP:
        return 413
    try:
        async with asyncio.timeout(PATIENCE):
            return await collected(receive)
    except TimeoutError:
        return 408


async def collected(receive: Receive) -> bytes | int:
    """Put the parts of a body together."""
    body, more = bytearray(), True
    while more:
        message = await receive()
        if message["type"] != "http.request":
            return 400
        body += message.get("body", b"")
        more = message.get("more_body", False)
        if len(body) > CAP:
            return 413
    return bytes(body)


def replayed(body: bytes, receive: Receive) -> Receive:
    """Give a body that was taken in, once."""
    given = False

    async def again() -> Message:
        nonlocal given
        if given:
            return await receive()
        given = True
        return {"type": "http.request", "body": body, "more_body": False}

    return again


async def say(send: Send, status: int, text: str, **headers: str) -> None:
    """Answer in plain words under the strict headers; a connection that was refused is closed."""
    closing = {"Connection": "close"} if status in (400, 408, 413) else {}
    usual = {**HEADERS, "Content-Security-Policy": CLOSED_POLICY, "Cache-Control": "no-store", **closing}
    every = {**usual, "Content-Type": "text/plain; charset=utf-8", **headers}
    await respond(send, status, every, text.encode())


async def respond(send: Send, status: int, headers: dict[str, str], body: bytes) -> None:
    """Send an answer."""
    sized = {**headers, "Content-Length": str(len(body))}
    lines = [(name.lower().encode("latin-1"), value.encode("latin-1")) for name, value in sized.items()]
    await send({"type": "http.response.start", "status": status, "headers": lines})
    await send({"type": "http.response.body", "body": body})
