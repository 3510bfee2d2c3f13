"""Many paired phones sync at once, beside handshakes that stall: nothing is lost. CROWD=50 for the full number."""

import json
import os
import statistics
import threading
import time
from concurrent.futures import ThreadPoolExecutor

from tests.access.bench import Bench
from tests.access.test_patience import MANY, half_hello, stalled
from webapp.access.devices import COOKIE
from webapp.access.pairing import make_code, pair
from webapp.store.ids import now, uuid7

CROWD = int(os.environ.get("CROWD", "12"))
TURNS = 4


def started(phone: int, turn: int) -> dict[str, object]:
    """An entry that starts a project."""
    name = uuid7()
    body = {"name": f"Phone {phone}, turn {turn}", "unit": "in", "graduation": "1/32"}
    frame = {"project": name, "kind": "project", "made_at": now(), "by": f"phone-{phone}", "replaces": []}
    return {"id": name, **frame, "body": body}


def test_paired_phones_sync_at_once_and_nothing_is_lost(shop: Bench) -> None:
    store = shop.app.extensions["shoulderline"]
    keys = [pair(store, make_code(store).letters, "", "").key for _ in range(CROWD)]
    assert all(keys)
    together, took = threading.Barrier(CROWD), []

    def sync(phone: int, entries: list[dict[str, object]]) -> dict[str, list[str]]:
        question = {"protocol": 1, "epoch": "", "cursor": 0, "entries": entries}
        headers = {"Content-Type": "application/json", "Shoulderline-Sync": "1", "Sec-Fetch-Site": "same-origin"}
        begun = time.monotonic()
        status, _, body = shop.ask(
            "/sync",
            method="POST",
            headers=headers | {"Cookie": f"{COOKIE}={keys[phone]}"},
            body=json.dumps(question).encode(),
        )
        took.append(time.monotonic() - begun)
        assert status == 200, body
        return json.loads(body)

    def day(phone: int) -> set[str]:
        sent: set[str] = set()
        together.wait(60)
        for turn in range(TURNS):
            made = started(phone, turn)
            answer = sync(phone, [made])
            assert answer["kept"] == [made["id"]]
            sent.add(str(made["id"]))
        return sent

    with stalled(shop, half_hello, MANY), ThreadPoolExecutor(CROWD) as pool:
        sent = set().union(*pool.map(day, range(CROWD)))
    assert len(sent) == CROWD * TURNS
    assert set(store.projects()) == sent
    assert {entry["id"] for entry in store.since(0, 10_000)} == sent
    middle, worst = statistics.median(took) * 1000, max(took) * 1000
    said = f"{CROWD} phones, {len(took)} exchanges with a handshake each, beside {MANY} stalled handshakes"
    print(f"{said}: median {middle:.0f} ms, worst {worst:.0f} ms")
