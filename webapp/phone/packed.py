"""What the phone keeps, compressed once at the start, as well as it can be: it is sent many times."""

import gzip
from collections.abc import Mapping
from functools import cache

import brotli

BEST_BROTLI = 11
BEST_GZIP = 9
PLAIN = (".png", ".woff2")  # compressed already


@cache
def _packed(body: bytes) -> dict[str, bytes]:
    ways = {"br": brotli.compress(body, quality=BEST_BROTLI), "gzip": gzip.compress(body, BEST_GZIP, mtime=0)}
    return {way: text for way, text in ways.items() if len(text) < len(body)}


def packed(files: Mapping[str, bytes]) -> dict[str, dict[str, bytes]]:
    """Return each file by the encodings that make it smaller, the best one first."""
    return {address: {} if address.endswith(PLAIN) else _packed(body) for address, body in files.items()}
