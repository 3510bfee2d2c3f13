"""Devices in words: for the terminal and for the page on this machine."""

from datetime import datetime

from webapp.access.log import Log
from webapp.access.pairing import new_code
from webapp.store import Store, StoreError
from webapp.store.devices import Device
from webapp.store.ids import now

NOBODY = "No phone is paired."


def since(device: Device) -> str:
    """Say since when a device is paired, and when it was here last."""
    return f"paired {on(device.paired_at)}, last here {on(device.seen_at)}"


def on(at: str) -> str:
    """Write a time as this machine's clock has it."""
    return datetime.fromisoformat(at).astimezone().strftime("%Y-%m-%d %H:%M")


def listed(store: Store) -> str:
    """List the devices, one a line."""
    return "\n".join(f"{each.name}: {since(each)} ({each.id})" for each in store.devices.all()) or NOBODY


def coded(store: Store, log: Log) -> str:
    """Make a pairing code, as where the program is served, and say it."""
    log.note("code made", door="terminal")
    return f"Pairing code for one phone, good for ten minutes: {new_code(store)}. The one before is void."


def revoked(store: Store, which: str, log: Log) -> str:
    """Revoke the device of a name or an id, and say so; raise StoreError where there is none."""
    found = next((each for each in store.devices.all() if which in (each.id, each.name)), None)
    if found is None or not store.devices.revoke(found.id, now()):
        raise StoreError(f"No phone called {which} is paired. These are:\n{listed(store)}")
    log.note("revoked", device=found.id, door="terminal")
    return f"{found.name} is let in no more. To undo that, pair it anew."
