"""The address ranges of networks that belong to a house or a shop, and this machine's addresses in them."""

import ipaddress
import socket

import ifaddr

Range = ipaddress.IPv4Network | ipaddress.IPv6Network

# RFC 1918 (private IPv4), RFC 3927 and RFC 4291 (link-local), RFC 4193 (unique local IPv6).
RANGES: tuple[Range, ...] = tuple(
    ipaddress.ip_network(text)
    for text in ("10.0.0.0/8", "172.16.0.0/12", "192.168.0.0/16", "169.254.0.0/16", "fc00::/7", "fe80::/10")
)
LINK_LOCAL = ipaddress.ip_network("fe80::/10")  # useless in a certificate or an address: it needs the interface's name
ELSEWHERE = ("192.0.2.1", 9)  # RFC 5737: reserved for documentation; nothing is sent there


def is_private(text: str) -> bool:
    """Say whether an address is in a private range."""
    address = ipaddress.ip_address(text.partition("%")[0])
    return any(address in each for each in RANGES)


def addresses() -> list[str]:
    """Return this machine's private addresses, the one that reaches furthest first."""
    found = [_text(ip.ip) for adapter in ifaddr.get_adapters() for ip in adapter.ips]
    ours = [text for text in found if is_private(text) and ipaddress.ip_address(text) not in LINK_LOCAL]
    return sorted(dict.fromkeys(ours), key=lambda text: (text != _first(), ":" in text))


def _text(ip: str | tuple[str, int, int]) -> str:
    return ip if isinstance(ip, str) else ip[0]


def _first() -> str:
    """Return the address that this machine would send from, without sending anything."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as asking:
        try:
            asking.connect(ELSEWHERE)
        except OSError:
            return ""
        return str(asking.getsockname()[0])


def in_brackets(host: str) -> str:
    """Write a host as it stands in an address of the web."""
    return f"[{host}]" if ":" in host else host
