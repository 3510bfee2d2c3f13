"""Answers the shop's network when a phone asks where the shop's name is."""

import ipaddress
from collections.abc import Sequence
from contextlib import suppress

from zeroconf import Error, InterfaceChoice, ServiceInfo, Zeroconf

from webapp.access.name import Place

KIND = "_https._tcp.local."


class Announcer:
    """Announces a name for the addresses that this machine has now; `said` is what went wrong, or empty."""

    def __init__(self, place: Place) -> None:
        self.place, self.said = place, ""
        self._zeroconf: Zeroconf | None = None

    def announce(self, addresses: Sequence[str]) -> None:
        """Announce the addresses, in the place of those announced before. It takes a second or two."""
        self.close()
        try:
            self._zeroconf = Zeroconf(interfaces=list(addresses) or InterfaceChoice.Default)
            self._zeroconf.register_service(self._service(addresses), cooperating_responders=False)
            self.said = ""
        except (OSError, Error) as e:
            why = str(e) or type(e).__name__
            self.said = f"The name {self.place.name} could not be announced on this network ({why})."
            self.close()

    def _service(self, addresses: Sequence[str]) -> ServiceInfo:
        return ServiceInfo(
            KIND,
            f"{self.place.name.partition('.')[0]}.{KIND}",
            port=self.place.port,
            addresses=[ipaddress.ip_address(address).packed for address in addresses],
            server=f"{self.place.name}.",
        )

    def close(self) -> None:
        """Take the name back from the network."""
        running, self._zeroconf = self._zeroconf, None
        if running is not None:
            with suppress(OSError, Error):
                running.close()
