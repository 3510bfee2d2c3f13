"""Working kept sheets again on the server, by the same core as the phone's."""

import json
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from hashlib import sha256
from typing import Any

from webapp.core.entries_sheet import sheet_of
from webapp.core.sheet import to_json
from webapp.core.tool import Tool

Entry = dict[str, Any]


@dataclass(frozen=True)
class Works:
    """What sheets are worked with: tools, factors, and the name of this version of them."""

    tools: dict[str, Tool]
    factors: dict[str, Fraction]
    version: str

    def worked(self, body: Mapping[str, Any]) -> dict[str, Any]:
        """Work a sheet's body: {"sheet", "engine", "same"}, or {"why"} it cannot be."""
        outcome = sheet_of(dict(body), self.tools, self.factors)
        if "why" in outcome:
            return outcome
        same = digest(outcome["sheet"]) == body.get("digest")
        return {"sheet": outcome["sheet"], "engine": self.version, "same": same}

    def signed(self, drafted: dict[str, Any]) -> dict[str, Any]:
        """Return a draft made on this machine with the engine and the digest that a sheet's body needs."""
        if drafted["kind"] != "sheet":
            return drafted
        seen = digest(self.worked(drafted["body"])["sheet"])
        return {**drafted, "body": {**drafted["body"], "engine": self.version, "digest": seen}}


def digest(sheet: dict[str, Any]) -> str:
    """Return the SHA-256 of a sheet's JSON in hex: what a phone says it saw."""
    return sha256(to_json(sheet).encode()).hexdigest()


def packed(value: Any) -> str:
    """Return compact JSON, its keys in the order they have."""
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"), allow_nan=False)
