"""The program asked through the shop's door, in this process, by a device that is paired or is not."""

from typing import Any

from flask import Flask
from flask.testing import FlaskClient
from werkzeug.test import TestResponse

from webapp.access import way
from webapp.access.devices import COOKIE
from webapp.access.pairing import make_code

HOST = "bench.local:8443"
ORIGIN = f"https://{HOST}"
SHOP = way.Way("shop", ("bench.local",), paired=True, origin=ORIGIN)
SITE = {"Sec-Fetch-Site": "same-origin"}


class Phone:
    """A browser on the shop's network with cookies of its own."""

    def __init__(self, app: Flask, key: str | None = None) -> None:
        self.app, self.given = app, key
        self.client: FlaskClient = app.test_client(use_cookies=key is None)
        self.client.environ_base[way.KEY] = SHOP

    @property
    def store(self) -> Any:
        return self.app.extensions["shoulderline"]

    def ask(self, address: str, method: str = "GET", **more: Any) -> TestResponse:
        cookie = {"Cookie": f"{COOKIE}={self.given}"} if self.given is not None else {}
        headers = SITE | cookie | more.pop("headers", {})
        return self.client.open(address, method=method, base_url=ORIGIN, headers=headers, **more)

    def enter(self, code: str = "", **more: Any) -> TestResponse:
        return self.ask("/pair", "POST", data={"code": code, **more.pop("typed", {})}, **more)

    def paired(self, called: str = "") -> "Phone":
        response = self.enter(make_code(self.store, called).letters)
        assert response.status_code == 303, response.text
        return self

    @property
    def key(self) -> str:
        found = self.client.get_cookie(COOKIE, domain="bench.local")
        return found.value if found else ""


def question(*entries: dict[str, Any]) -> dict[str, Any]:
    """What a phone's outbox sends."""
    return {"protocol": 1, "epoch": "", "cursor": 0, "entries": list(entries)}


SYNC = {"Shoulderline-Sync": "1"}
