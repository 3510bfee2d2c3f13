"""Serve the program on 127.0.0.1: one process, its database embedded."""

import socket
from pathlib import Path

import click
import uvicorn
from a2wsgi import WSGIMiddleware

from webapp.app import create_app
from webapp.demo import fill
from webapp.store.folder import held

HOST = "127.0.0.1"
THREADS = 8
CONNECTIONS = 200


class ServeError(RuntimeError):
    """The address could not be taken."""


def run(folder: Path, port: int, *, demo: bool) -> None:
    """Serve until stopped; the address is printed when it answers."""
    with held(folder):
        app = create_app(folder)
        if demo:
            fill(app.extensions["shoulderline"])
        listening = bound(port)
        click.echo(f"Shoulderline is at http://{HOST}:{listening.getsockname()[1]}/ (Ctrl+C stops it)")
        server(WSGIMiddleware(app, workers=THREADS)).run(sockets=[listening])
        app.extensions["shoulderline"].close()


def bound(port: int) -> socket.socket:
    """Take the port, or say plainly that it is taken."""
    listening = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        listening.bind((HOST, port))
        listening.listen()
    except OSError as e:
        listening.close()
        raise ServeError(f"Port {port} is taken: try another with --port, or --port 0 for a free one.") from e
    return listening


def server(app: WSGIMiddleware) -> uvicorn.Server:
    """Make the server; nothing that a proxy says is believed."""
    return uvicorn.Server(
        uvicorn.Config(
            app,
            log_level="warning",
            lifespan="off",
            limit_concurrency=CONNECTIONS,
            proxy_headers=False,
            server_header=False,
        )
    )
