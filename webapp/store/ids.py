"""Ids and times for entries that are made on this machine."""

import os
import time
from datetime import UTC, datetime


def uuid7() -> str:
    """Return a new UUIDv7: 48 bits of time in milliseconds, version, variant, 74 random bits (RFC 9562, 5.7).

    Python gained one of its own in 3.14.
    """
    value = time.time_ns() // 1_000_000 << 80 | int.from_bytes(os.urandom(10))
    value = value & ~(0xF << 76) | 0x7 << 76
    value = value & ~(0x3 << 62) | 0x2 << 62
    text = f"{value:032x}"
    return "-".join([text[:8], text[8:12], text[12:16], text[16:20], text[20:]])


def now() -> str:
    """Return the time in UTC as RFC 3339 with milliseconds: "2026-11-25T10:17:35.123Z"."""
    return datetime.now(UTC).isoformat(timespec="milliseconds").removesuffix("+00:00") + "Z"
