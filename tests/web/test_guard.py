from __future__ import annotations

import socket
import threading
from collections.abc import Iterator

import httpx
import pytest

from service.web.app import make_app
from service.web.guard import Limits
from service.web.press import Presses
from tests.web.sent import problem_of, records_part, running_app

LIMIT_BYTES = 200_000
BOUNDARY = "edge"
FORM = {"content-type": f"multipart/form-data; boundary={BOUNDARY}"}


@pytest.fixture(scope="module")
def guarded() -> Iterator[httpx.Client]:
    """Give a client of a service with a low limit and no press at all."""
    app = make_app(
        Presses([], patience_seconds=1),
        "prints.example",
        limits=Limits(LIMIT_BYTES, most_at_once=1),
    )
    with running_app(app) as client:
        yield client


def _stream(size_bytes: int) -> Iterator[bytes]:
    yield f'--{BOUNDARY}\r\nContent-Disposition: form-data; name="photos"; filename="a"'.encode()
    yield b"\r\n\r\n"
    for _ in range(size_bytes // 1000):
        yield b"x" * 1000


@pytest.mark.parametrize(
    "host", ["localhost", "LOCALHOST:8000", "127.0.0.1", "[::1]:8000", "prints.example"]
)
def test_own_names_are_answered(guarded: httpx.Client, host: str) -> None:
    """The service goes by the names of the loopback and the one it listens on."""
    assert guarded.get("/health", headers={"Host": host}).status_code == 200


@pytest.mark.parametrize(
    "host",
    ["evil.example", "127.0.0.1.evil.example", "localhost@evil.example", "localhost/x", "", "[::1"],
)
def test_other_names_are_refused(guarded: httpx.Client, host: str) -> None:
    """A name that was made to lead here is turned away before any route sees it."""
    problem = problem_of(guarded.get("/health", headers={"Host": host}))
    assert (problem["status"], problem["code"]) == (421, "foreign-host")


@pytest.mark.parametrize(
    "headers",
    [
        {"Origin": "https://evil.example"},
        {"Origin": "null"},
        {"Origin": "http://localhost:1"},
        {"Sec-Fetch-Site": "cross-site"},
        {"Sec-Fetch-Site": "same-site"},
    ],
    ids=str,
)
def test_foreign_pages_are_refused(guarded: httpx.Client, headers: dict[str, str]) -> None:
    """A page of another origin that is open in a browser cannot send work."""
    problem = problem_of(guarded.post("/api/check", headers=headers, files=records_part({})))
    assert (problem["status"], problem["code"]) == (403, "foreign-page")


def test_own_pages_pass(guarded: httpx.Client) -> None:
    """A page of this service may send work: here it comes as far as the presses."""
    host = guarded.base_url.netloc.decode()
    headers = {"Origin": f"http://{host}", "Sec-Fetch-Site": "same-origin"}
    problem = problem_of(guarded.post("/api/check", headers=headers, files=records_part({})))
    assert problem["code"] == "busy"


def test_announced_body_is_refused_at_once(guarded: httpx.Client) -> None:
    """A body that says it is too long is refused before any of it is sent."""
    with socket.create_connection((guarded.base_url.host, guarded.base_url.port)) as plain:
        head = f"POST /api/render HTTP/1.1\r\nHost: localhost\r\nContent-Length: {LIMIT_BYTES + 1}"
        plain.sendall(head.encode() + b"\r\n\r\n")
        assert plain.recv(4096).startswith(b"HTTP/1.1 413 ")


def test_streamed_body_is_cut(guarded: httpx.Client) -> None:
    """A body without a length is counted while it comes and refused when it passes the limit."""
    reply = guarded.post("/api/render", content=_stream(2 * LIMIT_BYTES), headers=FORM)
    problem = problem_of(reply)
    assert (problem["status"], problem["code"]) == (413, "too-large")
    assert str(LIMIT_BYTES) in problem["detail"]


@pytest.mark.parametrize("length", ["-5", "abc", "1e3", "5\r\nContent-Length: 6"], ids=repr)
def test_impossible_lengths_are_refused(guarded: httpx.Client, length: str) -> None:
    """A length that is none, or two of them, end the connection with a 400."""
    with socket.create_connection((guarded.base_url.host, guarded.base_url.port)) as plain:
        head = f"POST /api/render HTTP/1.1\r\nHost: localhost\r\nContent-Length: {length}\r\n\r\n"
        plain.sendall(head.encode())
        assert plain.recv(4096).startswith(b"HTTP/1.1 400 ")


def test_crowd_is_asked_to_wait(guarded: httpx.Client) -> None:
    """While as much work is under way as is taken, more is refused and health still answers."""
    codes: list[int] = []
    waits: list[bool] = []

    def send() -> None:
        reply = guarded.post("/api/check", files=records_part({}))
        codes.append(reply.status_code)
        waits.append("retry-after" in reply.headers)

    threads = [threading.Thread(target=send) for _ in range(4)]
    for thread in threads:
        thread.start()
    assert guarded.get("/health").json() == {"status": "ok"}
    for thread in threads:
        thread.join()
    assert (codes, waits) == ([503] * 4, [True] * 4)


@pytest.mark.parametrize("path", ["/health", "/nowhere", "/openapi.json"])
def test_headers_stand_on_every_reply(guarded: httpx.Client, path: str) -> None:
    """Good or bad, a reply is not sniffed, runs nothing, and does not name its server."""
    headers = guarded.get(path).headers
    assert headers["x-content-type-options"] == "nosniff"
    assert headers["content-security-policy"].startswith("default-src 'none'")
    assert "server" not in headers
    # Else the origin of our own forms would be null.
    assert headers["referrer-policy"] == "same-origin"
