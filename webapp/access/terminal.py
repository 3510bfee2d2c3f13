"""What the terminal shows a maker who sets the shop's phones up."""

import io
import sys
from datetime import datetime

import segno

from webapp.access.pairing import GOOD_FOR

SHOP = """
The shop's phones find it at {origin}/
To set a phone up, scan this with its camera, or open {setup} on it:

{code}
The certificate's SHA-256, to compare with what the phone shows before you trust it:
  {fingerprint}
"""
PAIRING = """Pairing code for one phone, good for ten minutes, until {until}: {code}
A code for another phone, and who is paired: {machine}/devices in this computer's browser."""


def words(origin: str, setup: str, fingerprint: str) -> str:
    """Return what to show: where, the code to scan, and the fingerprint in two lines."""
    pairs = fingerprint.split()
    lines = "\n  ".join(" ".join(pairs[at : at + 16]) for at in (0, 16))
    return SHOP.format(origin=origin, setup=setup, code=scanned(setup), fingerprint=lines)


def scanned(text: str) -> str:
    """Draw a QR code in characters, or nothing where the terminal has none that do."""
    try:
        "█▀▄".encode(sys.stdout.encoding or "ascii")
    except UnicodeEncodeError:
        return ""
    drawn = io.StringIO()
    segno.make(text, error="m", micro=False).terminal(out=drawn, border=2, compact=True)
    return drawn.getvalue()


def pairing(code: str, machine: str, now: datetime) -> str:
    """Return the lines that show a pairing code, and where the next comes from; `now` is this machine's own time."""
    return PAIRING.format(code=code, machine=machine, until=(now + GOOD_FOR).strftime("%H:%M"))
