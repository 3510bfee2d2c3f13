"""The one address that the shop's phones know for good: a name of its own, or the machine's number, and the port."""

import ipaddress
import json
import secrets
from dataclasses import asdict, dataclass, replace
from pathlib import Path

from webapp.access.authority import AuthorityError
from webapp.access.keeping import keep
from webapp.access.private import in_brackets, is_private

FOLDER = "shop"  # in the data folder: all that makes the shop the same one on another computer
FILE = "place.json"
LETTERS = "abcdefghjkmnpqrstuvwxyz23456789"  # none that is taken for another when read aloud
LENGTH = 8
PORT = 8443


@dataclass(frozen=True)
class Place:
    """The shop's random name, its port, and the number that phones use where the name cannot be found."""

    name: str
    port: int
    number: str = ""

    @property
    def host(self) -> str:
        """Return the host that phones use."""
        return self.number or self.name

    @property
    def origin(self) -> str:
        """Return the origin that phones know."""
        return origin(self.host, self.port)


def origin(host: str, port: int) -> str:
    """Return the origin of https at a host and port, written as browsers write it."""
    return f"https://{in_brackets(host)}" + ("" if port == 443 else f":{port}")


def place(folder: Path) -> Place | None:
    """Return what was decided before, or None; raise AuthorityError where the file is damaged."""
    file = folder / FILE
    if not file.exists():
        return None
    try:
        found = json.loads(file.read_text(encoding="utf-8"))
        return Place(str(found["name"]), int(found["port"]), str(found["number"]))
    except (OSError, ValueError, KeyError, TypeError) as e:
        raise AuthorityError(f"{file} cannot be read: take it from a backup of the data folder.") from e


def decided(folder: Path, port: int | None = None, number: str = "", *, settled: bool = False) -> Place:
    """Return the shop's place, decided now where it was not; once it is settled, phones know it for good."""
    before = place(folder)
    if before is None:
        made = Place(f"shoulderline-{random()}.local", PORT if port is None else port, _checked(number))
        return made if made.port == 0 else kept(folder, made)
    other = replace(before, port=port or before.port, number=_checked(number) or before.number)
    if other == before:
        return before
    if settled:
        raise AuthorityError(f"Paired phones know this shop at {before.origin}: leave --shop-port and --by-number out.")
    return kept(folder, other)


def kept(folder: Path, made: Place, port: int | None = None) -> Place:
    """Keep a place for good, with the port that was free where any was asked for."""
    final = made if port is None else replace(made, port=port)
    keep(folder / FILE, json.dumps(asdict(final)).encode())
    return final


def random() -> str:
    """Return a word that no other shop has."""
    return "".join(secrets.choice(LETTERS) for _ in range(LENGTH))


def _checked(number: str) -> str:
    """Return a private address as it is usually written, or raise AuthorityError."""
    try:
        fine = not number or is_private(number)
    except ValueError:
        fine = False
    if not fine:
        raise AuthorityError(f"{number} is no address of a private network, such as 192.168.1.20.")
    return str(ipaddress.ip_address(number)) if number else ""
