import os
import time
from datetime import UTC, datetime

from webapp.core.entries_text import is_identity, is_instant
from webapp.store.ids import now, uuid7


def test_ids_are_uuids_of_version_7_and_differ():
    made = [uuid7() for _ in range(2000)]
    assert all(is_identity(name) for name in made)
    assert len(set(made)) == len(made)


def test_an_id_begins_with_its_time_in_milliseconds(monkeypatch):
    monkeypatch.setattr(time, "time_ns", lambda: 0x0190_1234_5678 * 1_000_000 + 999_999)
    assert uuid7().startswith("01901234-5678-7")


def test_version_and_variant_stand_over_any_random_bits(monkeypatch):
    monkeypatch.setattr(time, "time_ns", lambda: 0)
    monkeypatch.setattr(os, "urandom", lambda count: b"\xff" * count)
    assert uuid7() == "00000000-0000-7fff-bfff-ffffffffffff"
    monkeypatch.setattr(os, "urandom", lambda count: b"\x00" * count)
    assert uuid7() == "00000000-0000-7000-8000-000000000000"


def test_the_time_is_in_utc_with_milliseconds():
    said = now()
    assert is_instant(said)
    assert datetime.fromisoformat(said).tzinfo == UTC
