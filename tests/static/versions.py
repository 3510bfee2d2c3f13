"""A program in the test's own process, so that it can be given another version, or one bad file."""

import logging
import shutil
import threading
from collections.abc import Iterator

import pytest
from flask import request
from playwright.sync_api import Page, expect
from werkzeug.serving import make_server

from webapp.app import create_app
from webapp.demo import fill
from webapp.folders import STATIC
from webapp.phone import build as building
from webapp.phone.build import PLACE, start


class Bench:
    """A server in this process, so that a test can give it another version, or break one file of it."""

    def __init__(self, folder):
        self.app = create_app(folder)
        fill(self.app.extensions["shoulderline"])
        self.spoilt = {}
        self.app.after_request(self.spoil)
        self.server, self.thread = None, None
        self.port = 0
        self.start()

    @property
    def address(self):
        return f"http://127.0.0.1:{self.port}"

    @property
    def project(self) -> str:
        return self.app.extensions["shoulderline"].projects()[0]

    @property
    def build(self):
        return self.app.extensions[PLACE]

    def spoil(self, answer):
        """Answer wrongly where the test says so."""
        fault = self.spoilt.get(request.path)
        return fault(answer) if fault else answer

    def start(self):
        self.server = make_server("127.0.0.1", self.port, self.app, threaded=True)
        self.port = self.server.server_port
        self.thread = threading.Thread(target=self.server.serve_forever)
        self.thread.start()

    def stop(self):
        self.server.shutdown()
        self.thread.join()
        self.server.server_close()

    def edit(self, monkeypatch, folder, name, text):
        """Put another version in place, with one file edited."""
        shutil.copytree(STATIC, folder)
        with (folder / name).open("a") as file:
            file.write(text)
        monkeypatch.setattr(building, "STATIC", folder)
        start(self.app)


@pytest.fixture
def bench(tmp_path, caplog) -> Iterator[Bench]:
    caplog.set_level(logging.WARNING, "werkzeug")
    made = Bench(tmp_path / "data")
    yield made
    made.stop()
    made.app.extensions["shoulderline"].close()


def offline(page: Page, address: str) -> Page:
    """Open an address and wait until this phone can do without the server."""
    page.goto(address)
    expect(page.locator("html[data-offline]")).to_be_attached()
    expect(page.locator("#state")).to_have_text("all sent")
    return page


def caches(page: Page) -> dict[str, list[str]]:
    return page.evaluate("""async () => {
        const found = {};
        for (const name of await caches.keys()) {
            const requests = await (await caches.open(name)).keys();
            found[name] = requests.map((request) => new URL(request.url).pathname);
        }
        return found;
    }""")


def installed(page: Page) -> list[str]:
    """Ask for a new version and give the states it went through."""
    return page.evaluate("""async () => {
        const registration = await navigator.serviceWorker.ready;
        const states = [];
        const settled = new Promise((resolve) => registration.addEventListener("updatefound", () => {
            const fresh = registration.installing;
            states.push(fresh.state);
            fresh.addEventListener("statechange", () => {
                states.push(fresh.state);
                if (["installed", "redundant"].includes(fresh.state)) resolve();
            });
        }));
        await registration.update().catch(() => {});
        await Promise.race([settled, new Promise((late) => setTimeout(late, 30_000))]);
        return states;
    }""")
