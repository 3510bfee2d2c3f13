"""Codes: single use, ten minutes, five wrong tries; and what a person is told."""

import threading
from collections.abc import Iterator
from datetime import timedelta
from pathlib import Path

import pytest
from flask import Flask

from tests.access.doors import Phone
from webapp.access.pairing import LETTERS, WORDS, Pace, fast_hash, kind_of, make_code, new_code, pair, paired, slow_hash
from webapp.app import create_app
from webapp.store import Store
from webapp.store.database import FILE


@pytest.fixture
def app(tmp_path: Path) -> Iterator[Flask]:
    made = create_app(tmp_path)
    yield made
    made.extensions["shoulderline"].close()


@pytest.fixture
def phone(app: Flask) -> Phone:
    return Phone(app)


@pytest.fixture
def store(app: Flask) -> Store:
    found: Store = app.extensions["shoulderline"]
    return found


def wrong(code: str) -> str:
    """A code that differs in one letter."""
    return code[:-1] + next(letter for letter in LETTERS if letter != code[-1])


def test_a_code_is_eight_letters_that_are_not_mistaken() -> None:
    assert len(LETTERS) == len(set(LETTERS)) == 20
    assert not set(LETTERS) & set("BILOSZ0125678")


def test_no_two_codes_are_alike(store: Store) -> None:
    codes = [make_code(store) for _ in range(20)]
    assert len({code.letters for code in codes}) == len({code.token for code in codes}) == 20
    for code in codes:
        assert len(code.letters.replace(" ", "")) == 8
        assert set(code.letters) <= set(LETTERS) | {" "}
        assert len(code.token) == 22


@pytest.mark.parametrize("written", ["{}", " {} ", "{}.", "lower", "dashed"])
def test_a_code_is_read_as_it_was_meant(phone: Phone, store: Store, written: str) -> None:
    code = new_code(store)
    forms = {"lower": code.lower().replace(" ", ""), "dashed": code.replace(" ", "-")}
    assert phone.enter(forms.get(written, written.format(code))).status_code == 303
    assert phone.ask("/").status_code == 200


def test_a_link_pairs_too(phone: Phone, store: Store) -> None:
    code = make_code(store)
    assert phone.enter(typed={"token": code.token}).status_code == 303
    assert phone.ask("/").status_code == 200


def test_a_replayed_code_is_refused(app: Flask, phone: Phone, store: Store) -> None:
    code = make_code(store)
    assert phone.enter(code.letters).status_code == 303
    thief = Phone(app)
    for typed in ({"code": code.letters}, {"token": code.token}):
        again = thief.enter(typed=typed)
        assert again.status_code == 401
        assert WORDS["used"].split(":")[0] in again.text
    assert thief.ask("/").status_code == 401
    assert len(paired(store)) == 1


def test_a_code_used_at_once_by_many_is_good_for_one(store: Store) -> None:
    code, found = make_code(store), []
    threads = [threading.Thread(target=lambda: found.append(pair(store, code.letters, "", "").key)) for _ in range(6)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert sorted(map(bool, found)) == [False] * 5 + [True]
    assert len(paired(store)) == 1


def test_five_guesses_void_a_code(phone: Phone, store: Store) -> None:
    code = new_code(store)
    for _ in range(4):
        answer = phone.enter(wrong(code))
        assert answer.status_code == 401
        assert "That is not the code." in answer.text
    assert "that code is void now" in phone.enter(wrong(code)).text
    right = phone.enter(code)
    assert right.status_code == 401
    assert "that code is void now" in right.text
    assert paired(store) == []
    assert phone.enter(new_code(store)).status_code == 303, "a new code is as good as ever"


def test_guesses_by_link_count_as_well(phone: Phone, store: Store) -> None:
    code = make_code(store)
    for _ in range(5):
        assert phone.enter(typed={"token": "A" * 22}).status_code == 401
    assert phone.enter(typed={"token": code.token}).status_code == 401
    assert paired(store) == []


def test_four_wrong_tries_do_no_harm(phone: Phone, store: Store) -> None:
    code = new_code(store)
    for _ in range(4):
        phone.enter(wrong(code))
    assert phone.enter(code).status_code == 303


def test_an_old_code_is_refused(phone: Phone, store: Store) -> None:
    code = make_code(store, good_for=timedelta(seconds=-1))
    answer = phone.enter(code.letters)
    assert answer.status_code == 401
    assert "more than ten minutes old" in answer.text


def test_a_code_holds_for_ten_minutes(store: Store) -> None:
    from datetime import UTC, datetime

    from webapp.access.pairing import stamp
    from webapp.store.devices import Device

    code = new_code(store).replace(" ", "")
    fits = lambda kept: slow_hash(code, kept.salt) == kept.letters  # noqa: E731
    late, soon = (stamp(datetime.now(UTC) + timedelta(minutes=minutes)) for minutes in (10.1, 9.9))
    assert store.devices.redeem(fits, "k", Device("d", "n", late, late)) == "old"
    assert store.devices.redeem(fits, "k", Device("d", "n", soon, soon)) == "paired"


def test_a_new_code_voids_the_one_before(phone: Phone, store: Store) -> None:
    before, after = new_code(store), new_code(store)
    assert phone.enter(before).status_code == 401
    assert phone.enter(after).status_code == 303


def test_without_a_code_nobody_is_paired(phone: Phone) -> None:
    for typed in ("", "ACDEFGHJ"):
        answer = phone.enter(typed)
        assert answer.status_code == 401
        assert "There is no code yet." in answer.text


def test_an_empty_field_is_a_wrong_code(phone: Phone, store: Store) -> None:
    new_code(store)
    assert "That is not the code." in phone.enter("").text


def test_tries_are_slowed_down(phone: Phone, store: Store) -> None:
    for _ in range(20):
        phone.enter("x")
    code = new_code(store)
    answer = phone.enter(code)
    assert answer.status_code == 429
    assert "Wait a minute" in answer.text
    assert paired(store) == []


def test_a_pace_lets_through_again_after_its_while() -> None:
    pace = Pace(most=2, within=10)
    assert [pace.may(at) for at in (0.0, 1.0, 2.0, 9.9, 10.0, 10.5, 11.0)] == [
        True, True, False, False, True, False, True,
    ]  # fmt: skip


def test_what_is_kept_are_hashes(phone: Phone, store: Store, tmp_path: Path) -> None:
    code = make_code(store, "Bench phone")
    phone.enter(code.letters)
    held = b"".join(file.read_bytes() for file in tmp_path.glob(f"{FILE}*"))
    assert b"Bench phone" in held
    for secret in (code.letters, code.letters.replace(" ", ""), code.token, phone.key):
        assert secret
        assert secret.encode() not in held
    assert fast_hash(phone.key).encode() in held


def test_a_devices_key_has_256_bits_and_is_new_each_time(app: Flask, phone: Phone) -> None:
    first = phone.paired().key
    second = Phone(app).paired().key
    assert len(first) == len(second) == 43
    assert first != second


def test_pairing_anew_gives_another_key(phone: Phone) -> None:
    first = phone.paired().key
    assert phone.paired().key != first


def test_a_key_that_was_there_before_is_never_taken_over(phone: Phone) -> None:
    phone.client.set_cookie("__Host-shoulderline-device", "chosen", domain="bench.local", secure=True)
    assert phone.paired().key != "chosen"


def test_devices_have_names_of_their_own(app: Flask) -> None:
    for called in ("Bench", "Bench", "  Bench \n phone ", "x" * 200):
        Phone(app).paired(called)
    names = [device.name for device in paired(app.extensions["shoulderline"])]
    assert names == ["Bench", "Bench 2", "Bench phone", "x" * 60]


@pytest.mark.parametrize(
    ("agent", "name"),
    [
        ("Mozilla/5.0 (iPhone; CPU iPhone OS 18_0 like Mac OS X)", "iPhone"),
        ("Mozilla/5.0 (Linux; Android 15)", "Android phone"),
        ("Mozilla/5.0 (X11; Linux x86_64)", "Computer"),
        ("", "Computer"),
    ],
)
def test_a_device_without_a_name_is_called_what_it_is(agent: str, name: str) -> None:
    assert kind_of(agent) == name


def test_pairing_goes_with_the_database(phone: Phone, store: Store, tmp_path: Path) -> None:
    phone.paired()
    store.backup(tmp_path / "kept.db")
    (tmp_path / "other").mkdir()
    (tmp_path / "kept.db").rename(tmp_path / "other" / FILE)
    app = create_app(tmp_path / "other")
    assert Phone(app, phone.key).ask("/").status_code == 200
    app.extensions["shoulderline"].close()
