"""Serve the program: this machine, and where it is asked for the shop's network, by one process."""

import gc
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

import click
from a2wsgi import WSGIMiddleware
from flask import Flask

from webapp.access import terminal
from webapp.access.front import PORT as FRONT_PORT
from webapp.access.front import front
from webapp.access.listen import Doors, Listener, ServeError, bound
from webapp.access.moving import refuse_moved
from webapp.access.pairing import new_code, paired
from webapp.access.shop import Asked, Shop
from webapp.app import create_app
from webapp.demo import fill
from webapp.phone.build import withdraw
from webapp.store.folder import held

__all__ = ["Asked", "Front", "ServeError", "run"]

HOST = "127.0.0.1"
THREADS = 8
OTHER_PORT = "try another with --port, or --port 0 for a free one."
OTHER_FRONT = "try another with --behind-port."


@dataclass(frozen=True)
class Front:
    """The https host in front, and the port at which it finds the program."""

    origin: str
    port: int = FRONT_PORT


def run(
    folder: Path,
    port: int,
    *,
    demo: bool,
    asked: Asked | None = None,
    behind: Front | None = None,
    withdrawn: bool = False,
) -> None:
    """Serve until stopped; the address is printed when it is taken."""
    with held(folder), program(folder, demo=demo, withdrawn=withdrawn) as app, ExitStack() as after:
        store = app.extensions["shoulderline"]
        settle()
        listeners = [machine(app, port)]
        after.callback(closed, listeners)
        shop = Shop(folder, app, asked, settled=bool(paired(store))) if asked else None
        app.config["PHONES_AT"] = shop.place.origin if shop else behind.origin if behind else ""
        if behind:
            listeners.append(proxied(app, behind))
        if shop:
            app.config["SETUP_AT"] = lambda: shop.setup  # addresses change while it is served
            listeners += [shop.https, shop.http]
            click.echo(terminal.words(shop.place.origin, shop.setup, shop.root.fingerprint))
        if shop or behind:
            at = f"http://{HOST}:{listeners[0].port}"
            click.echo(terminal.pairing(new_code(store), at, datetime.now().astimezone()))
        Doors(tuple(listeners), (shop.watch(),) if shop else ()).run()


def settle() -> None:
    """Leave what the start made out of the collector's walks: it stays for good, and a large page set off a walk."""
    gc.collect()
    gc.freeze()


def closed(listeners: list[Listener]) -> None:
    """Let go of every port."""
    for listener in listeners:
        listener.close()


@contextmanager
def program(folder: Path, *, demo: bool, withdrawn: bool = False) -> Iterator[Flask]:
    """Give the program over a folder, and close it after."""
    refuse_moved(folder)
    app = create_app(folder)
    if withdrawn:
        withdraw(app)
    try:
        if demo:
            fill(app.extensions["shoulderline"])
        yield app
    finally:
        app.extensions["shoulderline"].close()


def machine(app: Flask, port: int) -> Listener:
    """Make the door of this machine alone: plain http, and no pairing."""
    listening = bound(HOST, port, OTHER_PORT)
    click.echo(f"Shoulderline is at http://{HOST}:{listening.getsockname()[1]}/ (Ctrl+C stops it)")
    return Listener(WSGIMiddleware(app, workers=THREADS), [listening])


def proxied(app: Flask, behind: Front) -> Listener:
    """Make the door of the host in front."""
    listening = bound(HOST, behind.port, OTHER_FRONT)
    at = f"http://{HOST}:{listening.getsockname()[1]}"
    click.echo(f"For the phones it is at {behind.origin}/, which has to pass requests on to {at}")
    return Listener(front(app, behind.origin), [listening])
