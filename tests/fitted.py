"""A project with dry fits, sent to a server as a phone sends it: a round half measured, and one after it."""

import json
import urllib.request
from typing import Any

from webapp.core.entries import draft
from webapp.store.ids import now, uuid7
from webapp.tools import TOOLS
from webapp.units import FACTORS

AS_A_PHONE = {"Shoulderline-Sync": "1", "Content-Type": "application/json", "Sec-Fetch-Site": "same-origin"}
PLACES = ("Upper rail, left", "Upper rail, right", "Lower rail, left", '<b> & "rail", é', "diagonal, rising")


class Fitted:
    """The project, which grows by what is typed."""

    def __init__(self, address: str, project: str) -> None:
        self.address, self.project = address, project

    def keep(self, kind: str, **typed: str) -> str:
        with urllib.request.urlopen(f"{self.address}/projects/{self.project}.json") as answer:
            summary = json.load(answer)
        drafted = draft(kind, typed, summary, TOOLS, FACTORS)
        assert "errors" not in drafted, drafted
        entry = {"id": uuid7(), "project": self.project, "made_at": now(), "by": "phone", **drafted}
        sent(self.address, [entry])
        return str(entry["id"])


def sent(address: str, entries: list[dict[str, Any]]) -> None:
    """Send entries as a phone does; each of them has to be kept."""
    body = json.dumps({"protocol": 1, "epoch": "", "cursor": 0, "entries": entries}).encode()
    with urllib.request.urlopen(urllib.request.Request(f"{address}/sync", body, AS_A_PHONE)) as answer:
        assert json.load(answer)["kept"] == [entry["id"] for entry in entries]


def fit(address: str, project: str) -> list[str]:
    """Measure two rounds: all of the first, with one asked again; of the second some, and one withdrawn."""
    fitted = Fitted(address, project)
    first = fitted.keep("round", places="\n".join(PLACES), stick="13 1/16")
    for place, text in zip(
        (*PLACES, PLACES[1]), ("fits", "14 1/16", "13", "lacks 1/32", "68", "loose 1/32"), strict=True
    ):
        fitted.keep("reading", place=place, reading=text, round=first)
    second = fitted.keep("round", like=first, called="After trimming")
    fitted.keep("reading", place=PLACES[0], reading="13 1/16", round=second)
    wrong = fitted.keep("reading", place=PLACES[2], reading="20", round=second)
    fitted.keep("withdrawal", entry=wrong)
    fitted.keep("reading", place=PLACES[1], reading="14 1/16 strong", round=second)
    fitted.keep("condition", place="Shop", quantity="temperature", text="64 F")
    return [first, second]
