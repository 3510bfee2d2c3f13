"""Who asks nothing, or half, or without end, does not keep those who ask from their answers."""

import contextlib
import json
import socket
import ssl
import statistics
import threading
import time
from collections.abc import Callable, Iterator

import pytest

from tests.access.bench import HERE, Bench, wait_for
from webapp.access import door, listen, patience
from webapp.access.patience import local

MANY = 200
TIMES = 8


def slow_hello(shop: Bench) -> socket.socket:
    """Connect and say nothing: a handshake that stalls before it begins."""
    return socket.create_connection((HERE, shop.port), 20)


def half_hello(shop: Bench) -> socket.socket:
    """Send the first half of a handshake."""
    held, out = ssl.MemoryBIO(), ssl.MemoryBIO()
    with contextlib.suppress(ssl.SSLWantReadError):
        shop.context().wrap_bio(held, out, server_hostname=shop.shop.place.name).do_handshake()
    stalled = slow_hello(shop)
    stalled.sendall(out.read()[:100])
    return stalled


def half_head(shop: Bench) -> socket.socket:
    """Send half of a request's head."""
    stalled = shop.connect()
    stalled.sendall(f"GET /work/spacing HTTP/1.1\r\nHost: {shop.origin[8:]}\r\nAccept: te".encode())
    return stalled


def half_body(shop: Bench) -> socket.socket:
    """Send a whole head and half of the body that it promises."""
    stalled = shop.connect()
    head = (
        f"POST /sync HTTP/1.1\r\nHost: {shop.origin[8:]}\r\nContent-Type: application/json\r\nContent-Length: 1000\r\n"
    )
    stalled.sendall(head.encode() + b"\r\n" + b'{"protocol": 1,')
    return stalled


def answered(shop: Bench, times: int = TIMES) -> list[float]:
    """Ask as a phone does, again and again; return how long each answer took."""
    took = []
    for _ in range(times):
        start = time.perf_counter()
        status, _, _ = shop.ask("/reached.txt")
        assert status == 200
        status, _, body = shop.ask("/work/spacing.json?span=58&slat=2&count=9")
        assert status == 200, body
        took.append(time.perf_counter() - start)
    return took


@contextlib.contextmanager
def stalled(shop: Bench, one: Callable[[Bench], socket.socket], count: int) -> Iterator[list[socket.socket]]:
    held = [one(shop) for _ in range(count)]
    try:
        yield held
    finally:
        for each in held:
            each.close()


@pytest.mark.parametrize("one", [slow_hello, half_hello, half_head, half_body])
def test_two_hundred_that_stall_hold_up_nobody(shop: Bench, one: Callable[[Bench], socket.socket]) -> None:
    shop.pair()
    idle = answered(shop)
    with stalled(shop, one, MANY):
        beside = answered(shop)
    print(
        f"\n{MANY} x {one.__name__}: idle {statistics.median(idle) * 1000:.0f} ms, "
        f"beside them {statistics.median(beside) * 1000:.0f} ms, longest {max(beside) * 1000:.0f} ms"
    )
    assert len(beside) == len(idle) == TIMES


@pytest.mark.parametrize("one", [half_head, slow_hello, half_hello])
def test_what_stalls_is_closed(
    bench: Bench, monkeypatch: pytest.MonkeyPatch, one: Callable[[Bench], socket.socket]
) -> None:
    assert max(patience.HEAD, listen.HANDSHAKE) <= 10
    monkeypatch.setattr(patience, "HEAD", 0.5)
    monkeypatch.setattr(listen, "HANDSHAKE", 0.5)
    with stalled(bench.start(), one, 1) as (held,):
        held.settimeout(20)
        assert gone(held)


def gone(held: socket.socket) -> bool:
    try:
        return held.recv(100) == b""
    except (ConnectionError, ssl.SSLError):
        return True


def test_a_body_that_does_not_come_is_given_up_with_a_word(shop: Bench, monkeypatch: pytest.MonkeyPatch) -> None:
    assert door.PATIENCE <= 30
    monkeypatch.setattr(door, "PATIENCE", 0.5)
    with stalled(shop, half_body, 1) as (held,):
        assert held.recv(4096).startswith(b"HTTP/1.1 408 ")
        held.settimeout(20)
        while held.recv(4096):
            pass


def test_a_second_request_that_stops_half_way_is_closed(shop: Bench, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(patience, "HEAD", 0.5)
    with shop.connect() as phone:
        phone.sendall(f"GET /reached.txt HTTP/1.1\r\nHost: {shop.origin[8:]}\r\n\r\n".encode())
        heard = b""
        while b"Shoulderline" not in heard:
            heard += phone.recv(8192)
        phone.sendall(b"GET /reached.txt HTTP/1.1\r\nHo")
        phone.settimeout(20)
        assert gone(phone)


def test_more_connections_than_there_is_room_for_push_out_those_that_waited_longest(
    shop: Bench, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(patience, "MOST", 30)
    with stalled(shop, half_head, 60) as held:
        wait_for(lambda: len(shop.shop.https.server_state.connections) <= 30)
        assert shop.ask("/reached.txt")[0] == 200
        held[0].settimeout(20)
        assert gone(held[0])


@pytest.mark.parametrize("size", [door.CAP + 1, 10**12])
def test_a_body_that_says_it_is_too_large_is_not_read(shop: Bench, size: int) -> None:
    with shop.connect() as phone:
        head = f"POST /sync HTTP/1.1\r\nHost: {shop.origin[8:]}\r\nContent-Length: {size}\r\n\r\n"
        phone.sendall(head.encode())
        assert phone.recv(4096).startswith(b"HTTP/1.1 413 ")


def test_a_body_that_grows_too_large_is_cut_off(shop: Bench) -> None:
    with shop.connect() as phone:
        head = f"POST /sync HTTP/1.1\r\nHost: {shop.origin[8:]}\r\nTransfer-Encoding: chunked\r\n\r\n"
        phone.sendall(head.encode())
        chunk = b"10000\r\n" + b"x" * 0x10000 + b"\r\n"
        with contextlib.suppress(ConnectionError, ssl.SSLError):
            for _ in range(20):
                phone.sendall(chunk)
        assert phone.recv(4096).startswith(b"HTTP/1.1 413 ")


@pytest.mark.parametrize(
    "lengths",
    [
        "Content-Length: 5\r\nTransfer-Encoding: chunked",
        "Transfer-Encoding: chunked\r\nContent-Length: 5",
        "Content-Length: 5\r\nContent-Length: 6",
        "Content-Length: +5",
        "Transfer-Encoding: gzip, chunked",
    ],
)
def test_where_a_message_ends_is_never_in_doubt(shop: Bench, lengths: str) -> None:
    """What follows a body of two lengths would be a request of its own to one of two readers: it is never answered."""
    host = shop.origin[8:]
    hidden = f"GET /reached.txt HTTP/1.1\r\nHost: {host}\r\n\r\n"
    with shop.connect() as held:
        held.sendall(f"POST /pair HTTP/1.1\r\nHost: {host}\r\n{lengths}\r\n\r\n0\r\n\r\n{hidden}".encode())
        held.settimeout(20)
        heard = b""
        while more := held.recv(8192):
            heard += more
    assert heard.startswith(b"HTTP/1.1 400 ")
    assert heard.count(b"HTTP/1.1 ") == 1


def test_no_answer_waits_for_its_own_second_half(shop: Bench) -> None:
    """Head and body are two writes: without TCP_NODELAY the second waits for the first to be acknowledged, 40 ms."""
    with shop.connect():
        connections = shop.shop.https.server_state.connections
        wait_for(lambda: connections)
        [held] = [each.transport.get_extra_info("socket") for each in connections]
        assert held.getsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY) != 0


def test_a_body_of_the_usual_size_arrives_whole(shop: Bench) -> None:
    """The program itself answers: by the origin's check or by what the body says, never by the door."""
    body = json.dumps({"protocol": 1, "entries": [], "text": "x" * (door.CAP - 100)}).encode()
    status, _, said = shop.ask("/sync", method="POST", body=body, headers={"Content-Type": "application/json"})
    assert status in (400, 401, 403)
    assert b"errors" in said or b"<!doctype html>" in said


@pytest.mark.parametrize("name", ["elsewhere.example", "shoulderline-other.local", "192.168.9.9", "127.0.0.1", ""])
def test_another_host_is_refused_before_the_program_sees_it(shop: Bench, name: str) -> None:
    status, headers, body = shop.ask("/", headers={"Host": f"{name}:{shop.port}"})
    assert (status, body) == (400, b"There is no such host here.\n")
    assert headers["Content-Security-Policy"].startswith("default-src 'none'")


def test_another_port_of_the_right_host_is_refused(shop: Bench) -> None:
    assert shop.ask("/", headers={"Host": f"{shop.shop.place.name}:1"})[0] == 400


def test_fifty_phones_at_once_are_all_answered_beside_the_stalled(shop: Bench) -> None:
    took: list[float] = []

    def phone() -> None:
        took.extend(answered(shop, 2))

    shop.pair()
    with stalled(shop, slow_hello, MANY):
        phones = [threading.Thread(target=phone) for _ in range(50)]
        for each in phones:
            each.start()
        for each in phones:
            each.join()
    print(
        f"\n50 phones beside {MANY}: median {statistics.median(took) * 1000:.0f} ms, longest {max(took) * 1000:.0f} ms"
    )
    assert len(took) == 100


def test_a_stop_is_not_held_up_and_says_nothing(shop: Bench, capsys: pytest.CaptureFixture[str]) -> None:
    with stalled(shop, half_head, 5), stalled(shop, half_body, 5):
        shop.stop()
    assert capsys.readouterr().err == ""


@pytest.mark.parametrize("host", ["127.0.0.1", "::1", "10.0.0.1", "192.168.1.20", "fd00::2", "fe80::1%eth0"])
def test_a_private_address_of_this_machine_may_be_asked(host: str) -> None:
    assert local(host)


@pytest.mark.parametrize("host", ["8.8.8.8", "192.0.2.2", "2001:db8::1"])
def test_an_address_that_the_internet_reaches_may_not(host: str) -> None:
    assert not local(host)
