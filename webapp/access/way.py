"""By which door a request came in: the machine's own, the shop's network, or a host in front."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import Any

import flask

KEY = "shoulderline.way"  # no header can set it: what a client sends stands under HTTP_…


@dataclass(frozen=True)
class Way:
    """A door: the hosts that may be asked for there, whether a device must be paired, and its one origin."""

    name: str
    hosts: tuple[str, ...]
    paired: bool
    origin: str = ""


MACHINE = Way("machine", ("127.0.0.1", "localhost"), paired=False)

WsgiApp = Callable[[dict[str, Any], Any], Iterable[bytes]]


def marked(app: WsgiApp, way: Way) -> WsgiApp:
    """Return the program as it is asked through a door."""

    def asked(environ: dict[str, Any], start_response: Any) -> Iterable[bytes]:
        environ[KEY] = way
        return app(environ, start_response)

    return asked


def of(environ: dict[str, Any]) -> Way:
    """Return the door that a request came in by."""
    way: Way = environ.get(KEY, MACHINE)
    return way


class Request(flask.Request):
    """A request whose host must be one of its door's."""

    @property
    def trusted_hosts(self) -> list[str]:
        """Return the hosts that this door answers to."""
        return list(of(self.environ).hosts)

    @trusted_hosts.setter
    def trusted_hosts(self, value: list[str] | None) -> None:
        """Take no other list: the door's stands."""
