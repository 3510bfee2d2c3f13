"""Phones that stream batches at a server until it is gone, and remember what it said it kept."""

import http.client
import json
import random
import threading
import time
from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any

from tests.store.filled import SPACING, entry, keep
from webapp.core.fold import summary_of
from webapp.store import Store
from webapp.store.ids import now, uuid7

Entry = dict[str, Any]
MOST = 12  # entries in one batch
HEADERS = {"Content-Type": "application/json", "Shoulderline-Sync": "1", "Sec-Fetch-Site": "same-origin"}


@dataclass
class Batch:
    """What was sent at once, and what is known of it."""

    entries: list[Entry]
    told: bool = False  # the server named all of it as kept
    sent_at: float = 0.0  # when its last byte had gone out, for the last time

    def was_in_the_air(self, moment: float) -> bool:
        """Say whether it was out at a moment, and nothing was ever heard of it."""
        return not self.told and 0.0 < self.sent_at < moment

    @property
    def ids(self) -> list[str]:
        return [each["id"] for each in self.entries]


class Draft:
    """Makes entries as phones do: drawn up once by the program's own core, then with new ids and places."""

    def __init__(self, store: Store) -> None:
        project = keep(store, "project", name="A pattern")
        reading = keep(store, "reading", project, place="rail", reading="58 3/8 strong")
        self.kinds = {
            "project": entry(store, "project", name="Bed in ash"),
            "reading": entry(store, "reading", project, place="post", reading="17 11/16 strong"),
            "note": entry(store, "note", project, entry=reading, text="seen again"),
            "sheet": entry(store, "sheet", project, **SPACING),
        }

    def made(
        self, kind: str, project: str, body: dict[str, str] | None = None, replaces: list[str] | None = None
    ) -> Entry:
        name = uuid7()
        found = self.kinds[kind]
        frame = {"id": name, "project": project or name, "made_at": now(), "replaces": replaces or []}
        return {**found, **frame, "body": {**found["body"], **(body or {})}}


@dataclass
class Phone:
    """One phone with one project; its batches in the order they were sent first."""

    port: int
    draft: Draft
    draw: random.Random
    batches: list[Batch] = field(default_factory=list)
    project: str = ""
    last: str = ""
    cursor: int = 0
    epoch: str = ""
    came: list[Entry] = field(default_factory=list)

    def batch(self) -> Batch:
        """Draw a batch: the project first, then readings, some in place of the one before, notes and sheets."""
        found = Batch([])
        if not self.project:
            found.entries.append(self.draft.made("project", ""))
            self.project = found.ids[0]
        for _ in range(self.draw.randint(1, MOST)):
            found.entries.append(self._one())
        self.batches.append(found)
        return found

    def _one(self) -> Entry:
        kind = self.draw.choice(["reading", "reading", "reading", "note", "sheet"]) if self.last else "reading"
        if kind == "sheet":
            return self.draft.made("sheet", self.project)
        if kind == "note":
            return self.draft.made("note", self.project, {"entry": self.last})
        replaces = [self.last] if self.last and self.draw.random() < 0.5 else []
        place = {"place": f"Place {self.draw.randint(1, 9)}"}
        made = self.draft.made("reading", self.project, place, replaces)
        self.last = str(made["id"])
        return made

    def stream(self) -> None:
        """Send batch after batch until the server is gone."""
        line = http.client.HTTPConnection("127.0.0.1", self.port, timeout=60)
        try:
            while True:
                self.send(self.batch(), line)
        except (OSError, http.client.HTTPException):
            return  # killed, which is what the test wants
        finally:
            line.close()

    def send(self, batch: Batch, line: http.client.HTTPConnection) -> None:
        """Send one batch; raise where no whole answer comes."""
        question = json.dumps({"protocol": 1, "epoch": self.epoch, "cursor": self.cursor, "entries": batch.entries})
        line.request("POST", "/sync", question.encode(), HEADERS)
        batch.sent_at = time.monotonic()
        answer = self._heard(line)
        assert answer["kept"] == batch.ids
        batch.told = True

    def _heard(self, line: http.client.HTTPConnection) -> dict[str, Any]:
        response = line.getresponse()
        answer: dict[str, Any] = json.loads(response.read())
        assert response.status == 200, answer
        assert answer["refused"] == []
        assert self.epoch in ("", answer["epoch"])
        self.epoch, self.cursor = answer["epoch"], answer["cursor"]
        self.came += answer["entries"]
        return answer

    def take(self) -> None:
        """Take what is new, until there is no more of it."""
        line = http.client.HTTPConnection("127.0.0.1", self.port, timeout=60)
        more = True
        while more:
            question = {"protocol": 1, "epoch": self.epoch, "cursor": self.cursor, "entries": []}
            line.request("POST", "/sync", json.dumps(question).encode(), HEADERS)
            more = self._heard(line)["more"]
        line.close()

    def send_again(self, chosen: list[Batch]) -> None:
        """Send some batches once more, the one that was in the air among them where it was chosen."""
        line = http.client.HTTPConnection("127.0.0.1", self.port, timeout=60)
        for batch in chosen:
            self.send(batch, line)
        line.close()

    @property
    def is_waiting(self) -> bool:
        """Say whether a batch is out, and no answer has come yet."""
        return bool(self.batches) and self.batches[-1].was_in_the_air(time.monotonic())

    def mine(self) -> list[Entry]:
        """Return what came by the cursor of this phone's own project."""
        return [each for each in self.came if each["project"] == self.project]


def stream_until(phones: list[Phone], kill: Callable[[], float]) -> float:
    """Let phones stream at once until something kills their server; return the moment that it says it did."""
    threads = [threading.Thread(target=phone.stream) for phone in phones]
    for thread in threads:
        thread.start()
    moment = kill()
    for thread in threads:
        thread.join()
    return moment


def folded(entries: list[Entry]) -> Any:
    """Fold entries that came in this order."""
    return summary_of([{**each, "seq": seq} for seq, each in enumerate(entries, 1)])
