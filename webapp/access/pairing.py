"""A device is paired once, by a code that the shop's computer shows: single use, ten minutes, five wrong tries."""

import hashlib
import hmac
import secrets
from collections import deque
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from time import monotonic

from webapp.store import Store
from webapp.store.devices import Code, Device
from webapp.store.ids import uuid7

LETTERS = "ACDEFGHJKMNPQRTUVWXY"  # none that is taken for another letter or a digit: 20 of them, 8 of those in a code
LENGTH = 8
GOOD_FOR = timedelta(minutes=10)
TOKEN_BYTES = 16
KEY_BYTES = 32
LONGEST_NAME = 60
WORK = {"n": 2**14, "r": 8, "p": 1}  # eight letters could be guessed from a fast hash within the code's ten minutes

MORE = "For a new one, open Shoulderline on the shop's computer and press The shop's phones."
WORDS = {
    "wrong": "That is not the code. Look at the shop's computer again.",
    "void": f"Too many wrong tries: that code is void now. {MORE}",
    "used": f"The code has been used: each is good for one phone. {MORE}",
    "old": f"The code is more than ten minutes old. {MORE}",
    "none": f"There is no code yet. {MORE}",
    "often": "Too many tries at once. Wait a minute, then try again.",
}


@dataclass(frozen=True)
class NewCode:
    """A code as it is shown, once: letters to type, and a token for a link."""

    letters: str
    token: str


@dataclass(frozen=True)
class Outcome:
    """What came of a try: the device's key and id, or what stands against it."""

    key: str = ""
    why: str = ""
    device: str = ""

    @property
    def words(self) -> str:
        """Return what to say."""
        return WORDS.get(self.why, "")


def paired(store: Store) -> list[Device]:
    """Return the devices that are paired."""
    return store.devices.all()


def new_code(store: Store) -> str:
    """Make a code for one device and return it as it is shown; the one before is void."""
    return make_code(store).letters


def make_code(store: Store, called: str = "", good_for: timedelta = GOOD_FOR) -> NewCode:
    """Make a code for one device that will be called so."""
    letters = "".join(secrets.choice(LETTERS) for _ in range(LENGTH))
    token = secrets.token_urlsafe(TOKEN_BYTES)
    salt = secrets.token_hex(16)
    expires = stamp(datetime.now(UTC) + good_for)
    name = " ".join(called.split())[:LONGEST_NAME]
    store.devices.put_code(Code(salt, slow_hash(letters, salt), fast_hash(token), name, expires))
    return NewCode(f"{letters[:4]} {letters[4:]}", token)


def pair(store: Store, typed: str, token: str, agent: str) -> Outcome:
    """Give a new device its key for a code, typed or by its token."""
    given = fold(typed)

    def fits(code: Code) -> bool:
        if token:
            return hmac.compare_digest(fast_hash(token), code.token)
        return hmac.compare_digest(slow_hash(given, code.salt), code.letters)

    key, at = secrets.token_urlsafe(KEY_BYTES), stamp(datetime.now(UTC))
    device = Device(uuid7(), kind_of(agent), at, at)
    found = store.devices.redeem(fits, fast_hash(key), device)
    return Outcome(key=key, device=device.id) if found == "paired" else Outcome(why=found)


def fold(typed: str) -> str:
    """Return a code as it was meant: small letters, spaces and dashes are no mistakes."""
    return "".join(each for each in typed[:64].upper() if each.isalnum())


def fast_hash(secret: str) -> str:
    """Hash what is too long to be guessed."""
    return hashlib.sha256(secret.encode()).hexdigest()


def slow_hash(letters: str, salt: str) -> str:
    """Hash what is short."""
    return hashlib.scrypt(letters.encode(), salt=bytes.fromhex(salt), **WORK).hex()


def stamp(at: datetime) -> str:
    """Write a time as the store does."""
    return at.isoformat(timespec="milliseconds").removesuffix("+00:00") + "Z"


def kind_of(agent: str) -> str:
    """Name a device by what its browser says it is."""
    words = (("iPhone", "iPhone"), ("iPad", "iPad"), ("Android", "Android phone"))
    return next((name for word, name in words if word in agent), "Computer")


@dataclass
class Pace:
    """How often a code may be tried, by everybody together."""

    most: int = 20
    within: float = 60.0  # seconds
    tries: deque[float] = field(default_factory=deque)

    def may(self, now: float | None = None) -> bool:
        """Count a try, or say that it comes too soon."""
        at = monotonic() if now is None else now
        while self.tries and self.tries[0] <= at - self.within:
            self.tries.popleft()
        if len(self.tries) >= self.most:
            return False
        self.tries.append(at)
        return True
