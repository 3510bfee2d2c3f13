"""The outbox's address: junk is refused in words, never a failure; what is kept is echoed."""

import json

import pytest
from flask.testing import FlaskClient

from tests.pages.client import OWN, start_project
from webapp.store.ids import now, uuid7

HEADERS = OWN | {"Shoulderline-Sync": "1", "Content-Type": "application/json"}


def ask(client: FlaskClient, data: bytes | dict, headers: dict[str, str] = HEADERS):
    body = data if isinstance(data, bytes) else json.dumps(data).encode()
    return client.post("/sync", data=body, headers=headers)


def request(*entries: object, cursor: int = 0) -> dict:
    return {"protocol": 1, "epoch": "", "cursor": cursor, "entries": list(entries)}


def reading(project: str, **body: object) -> dict:
    said = {"place": "Upper rail", "text": "17 5/8", "inches": "141/8", "unit": "in", "graduation": "1/32", **body}
    frame = {"id": uuid7(), "project": project, "kind": "reading", "made_at": now(), "by": "phone", "replaces": []}
    return {**frame, "body": said}


JUNK = (
    b"",
    b"null",
    b"[]",
    b"{}",
    b'"text"',
    b"{",
    b"\xff\xfe\x00",
    b'{"protocol": NaN}',
    b'{"protocol": 1, "entries": [Infinity]}',
    b'{"protocol": 1, "epoch": "", "cursor": 1.5, "entries": []}',
    b'{"protocol": 1, "epoch": "", "cursor": 1e400, "entries": []}',
    b'{"protocol": 1, "epoch": "", "cursor": -1, "entries": []}',
    b'{"protocol": 1, "epoch": "", "cursor": ' + b"9" * 5000 + b', "entries": []}',
    b'{"protocol": 1, "epoch": "\\ud800", "cursor": 0, "entries": []}',
    b'{"protocol": 1, "epoch": "", "cursor": 0, "entries": ' + b"[" * 100000 + b"]" * 100000 + b"}",
    b'{"a":' * 20000 + b"1" + b"}" * 20000,
    b'{"protocol": 2, "epoch": "", "cursor": 0, "entries": []}',
    b'{"protocol": 1, "protocol": 1, "epoch": "", "cursor": 0, "entries": []}',
    b'{"protocol": 1, "epoch": "", "cursor": 0, "entries": {}}',
    b'{"protocol": true, "epoch": 3, "cursor": "0", "entries": "x"}',
)


@pytest.mark.parametrize("data", JUNK, ids=[str(number) for number in range(len(JUNK))])
def test_junk_is_refused_in_words(client: FlaskClient, data: bytes) -> None:
    response = ask(client, data)
    assert response.status_code == 400
    assert len(response.json["errors"][""]) > 10


def test_a_huge_body_is_refused_before_it_is_read(client: FlaskClient) -> None:
    assert ask(client, b" " * (1024 * 1024 + 1)).status_code == 413


@pytest.mark.parametrize(
    "headers",
    [
        {name: value for name, value in HEADERS.items() if name != "Shoulderline-Sync"},
        HEADERS | {"Content-Type": "text/plain"},
        HEADERS | {"Content-Type": "application/x-www-form-urlencoded"},
    ],
)
def test_what_a_form_elsewhere_could_send_is_refused(client: FlaskClient, headers: dict[str, str]) -> None:
    assert ask(client, request(), headers).status_code == 400


BAD_ENTRIES = (
    None,
    "text",
    {},
    {"id": "x"},
    {"id": "\ud800"},
    {"kind": ["reading"]},
    {"replaces": "none"},
    {"replaces": [[[[[]]]]]},
    {"made_at": "yesterday"},
    {"body": {"inches": 17.5}},
    {"body": None},
    {"project": None},
    {"by": {"name": "phone"}},
)


@pytest.mark.parametrize("bad", BAD_ENTRIES, ids=[str(number) for number in range(len(BAD_ENTRIES))])
def test_one_bad_entry_is_refused_and_the_rest_is_kept(client: FlaskClient, bad: object) -> None:
    project = start_project(client).split("/")[-1]
    good = reading(project)
    wrong = {**reading(project), **bad} if isinstance(bad, dict) and bad else bad
    response = ask(client, request(wrong, good))
    if response.status_code == 400:  # such a body is refused whole: nothing of it was kept
        assert len(response.json["errors"][""]) > 10
        assert client.get(f"/projects/{project}.json", headers=OWN).json["places"] == []
        return
    assert response.status_code == 200
    assert response.json["kept"] == [good["id"]]
    assert len(response.json["refused"]) == 1
    assert len(response.json["refused"][0]["why"]) > 10


def test_a_batch_that_arrives_twice_is_kept_once_and_echoed_twice(client: FlaskClient) -> None:
    project = start_project(client).split("/")[-1]
    entry = reading(project)
    for _ in range(2):
        assert ask(client, request(entry)).json["kept"] == [entry["id"]]
    found = client.get(f"/projects/{project}.json", headers=OWN).json
    assert [len(place["heads"]) for place in found["places"]] == [1]


def test_the_same_id_with_another_body_is_refused_and_shown(client: FlaskClient) -> None:
    project = start_project(client).split("/")[-1]
    entry = reading(project)
    ask(client, request(entry))
    answer = ask(client, request({**entry, "body": {**entry["body"], "text": "17 1/2", "inches": "35/2"}})).json
    assert answer["kept"] == []
    assert [refusal["id"] for refusal in answer["refused"]] == [entry["id"]]


def test_a_reading_whose_value_is_not_what_its_text_says_is_refused(client: FlaskClient) -> None:
    project = start_project(client).split("/")[-1]
    answer = ask(client, request(reading(project, inches="18"))).json
    assert (answer["kept"], len(answer["refused"])) == ([], 1)
