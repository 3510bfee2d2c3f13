"""The set-up page: all that plain http gives the shop's network. No data, no cookies, nothing is taken in."""

from collections.abc import Callable, Iterable
from string import Template
from types import MappingProxyType

from webapp.access.authority import Authority
from webapp.access.door import REACHED, Message, Receive, Scope, Send, asked_host, respond
from webapp.access.name import Place, origin
from webapp.access.origin import HEADERS
from webapp.access.private import in_brackets
from webapp.folders import STATIC, TEMPLATES

PORT = 8480
PAGE = "setup.html"
FILES = MappingProxyType({"/setup.js": "text/javascript", "/setup.css": "text/css"})
CERTIFICATE = "/shoulderline.crt"
CERTIFICATE_TYPE = "application/x-x509-ca-cert"
HERE = "/here.txt"


class Steps:
    """The set-up page's own small program; nothing but reading, and only by this machine's addresses."""

    def __init__(self, place: Place, root: Authority, addresses: Callable[[], list[str]], port: int) -> None:
        self.place, self.root, self.addresses, self.port = place, root, addresses, port
        self.page = Template((TEMPLATES / PAGE).read_text(encoding="utf-8"))
        self.files = {name: (STATIC / name[1:]).read_bytes() for name in FILES}

    async def __call__(self, scope: Scope, _receive: Receive, send: Send) -> None:
        """Answer a request; a question with a body goes unread."""
        status, kind, body = self.answer(scope["method"], asked_host(scope), scope["path"])
        headers = {**HEADERS, "Content-Security-Policy": self.policy(), "Cache-Control": "no-store"}
        closing = {"Connection": "close"} if status != 200 else {}
        await respond(_headless(scope, send), status, {**headers, **closing, "Content-Type": kind}, body)

    def answer(self, method: str, host: str, path: str) -> tuple[int, str, bytes]:
        """Return the status, the type and the bytes for a request."""
        if host not in {f"{in_brackets(each)}:{self.port}" for each in (*self.addresses(), "127.0.0.1")}:
            return 400, "text/plain", b"There is no such host here.\n"
        if method not in ("GET", "HEAD"):
            return 405, "text/plain", b"This page only gives; it takes nothing in.\n"
        return self.found(path) or (404, "text/plain", b"There is nothing at this address.\n")

    def found(self, path: str) -> tuple[int, str, bytes] | None:
        """Return what stands at a path."""
        if path == "/":
            return 200, "text/html; charset=utf-8", self.written().encode()
        if path == CERTIFICATE:
            return 200, CERTIFICATE_TYPE, self.root.der
        if path == HERE:
            return 200, "text/plain", b"Shoulderline\n"
        return (200, FILES[path], self.files[path]) if path in FILES else None

    def written(self) -> str:
        """Write the page; what goes into it is the program's own, and none of it needs escaping."""
        numbers = [number for number in self.addresses() if number != self.place.number]
        return self.page.substitute(
            origin=self.place.origin,
            host=self.place.host,
            called=f"Shoulderline {self.place.name}",
            fingerprint=self.root.fingerprint,
            certificate=CERTIFICATE,
            number=numbers[0] if numbers else "",
            by_number=origin(numbers[0], self.place.port) if numbers else "",
            reached=REACHED,
            here=HERE,
        )

    def policy(self) -> str:
        """Return the page's policy: it asks only its own server and the shop's, to see whether they answer."""
        asked: Iterable[str] = (self.place.origin, *(origin(each, self.place.port) for each in self.addresses()))
        return (
            f"default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self' {' '.join(asked)}; "
            "base-uri 'none'; object-src 'none'; form-action 'none'; frame-ancestors 'none'"
        )


def _headless(scope: Scope, send: Send) -> Send:
    """Return a send that leaves the body out of an answer to HEAD."""

    async def sent(message: Message) -> None:
        bare = scope["method"] == "HEAD" and message["type"] == "http.response.body"
        await send({**message, "body": b""} if bare else message)

    return sent
