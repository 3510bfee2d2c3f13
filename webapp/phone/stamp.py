"""The stamp: a digest over the bytes of all that the phone keeps, so that any edit makes a new version."""

from collections.abc import Mapping
from hashlib import sha256

# Stands where the stamp will be while the bytes that it is made of are still being made.
PLACEHOLDER = "stamp-to-come"
HEADER = "Shoulderline-Stamp"
DIGITS = 16


def stamp(files: Mapping[str, bytes]) -> str:
    """Return the digest of files by their addresses, the placeholder still in them."""
    digest = sha256()
    for address in sorted(files):
        for part in (address.encode(), files[address]):
            digest.update(len(part).to_bytes(8, "big"))
            digest.update(part)
    return digest.hexdigest()[:DIGITS]


def stamped(files: Mapping[str, bytes], mark: str) -> dict[str, bytes]:
    """Return the files with the stamp in the place of the placeholder, in addresses and bytes."""
    return {address.replace(PLACEHOLDER, mark): put_stamp(body, mark) for address, body in files.items()}


def put_stamp(body: bytes, mark: str) -> bytes:
    """Return bytes with the stamp in the place of the placeholder."""
    return body.replace(PLACEHOLDER.encode(), mark.encode())
