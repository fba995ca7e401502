"""What tests send: the sample box with its photos, as a client would."""

from __future__ import annotations

import copy
import json
import socket
import ssl
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import httpx
import uvicorn
from starlette.types import ASGIApp

SAMPLES = Path(__file__).parents[2] / "sample_records"
ONE_BOX = SAMPLES / "one_box.json"
PHOTOS = SAMPLES / "port_merrow" / "photos"

Parts = list[tuple[str, tuple[str | None, bytes, str]]]


def one_box() -> dict[str, Any]:
    """Read the sample box anew, so that a test may change it."""
    document: dict[str, Any] = copy.deepcopy(json.loads(ONE_BOX.read_bytes()))
    return document


def records_part(document: object) -> Parts:
    """Make the part that holds records; bytes are sent as they are."""
    data = document if isinstance(document, bytes) else json.dumps(document).encode()
    return [("records", ("records.json", data, "application/json"))]


def photo_part(name: str, data: bytes | None = None) -> Parts:
    """Make the part of one photo, a sample photo where no bytes are given."""
    return [("photos", (name, data or (PHOTOS / name).read_bytes(), "image/jpeg"))]


def whole_box() -> Parts:
    """Make the parts of the sample box with every photo it names."""
    document = one_box()
    names = [photo["file"] for each in document["objects"] for photo in each.get("photos", [])]
    photos = [part for name in dict.fromkeys(names) for part in photo_part(name)]
    return records_part(document) + photos


def problem_of(response: httpx.Response) -> dict[str, Any]:
    """Read a problem and hold its reply to what RFC 9457 asks."""
    assert response.headers["content-type"] == "application/problem+json"
    body: dict[str, Any] = response.json()
    assert body["status"] == response.status_code
    assert all(body[name] for name in ("type", "title", "detail", "code", "advice"))
    return body


_NO_CERTIFICATES = ssl.SSLContext(ssl.PROTOCOL_TLS_CLIENT)
"""Nothing is encrypted here; to load those of the system for each client takes its time."""


@contextmanager
def running(server: uvicorn.Server, listener: socket.socket) -> Iterator[httpx.Client]:
    """Run a server in a thread and give a client for it."""
    thread = threading.Thread(target=server.run, args=([listener],))
    thread.start()
    host, port = listener.getsockname()[:2]
    try:
        with httpx.Client(
            base_url=f"http://{host}:{port}", timeout=50, trust_env=False, verify=_NO_CERTIFICATES
        ) as client:
            yield client
    finally:
        server.should_exit = True
        thread.join()


def _listen() -> socket.socket:
    listener = socket.create_server(("127.0.0.1", 0))
    listener.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
    return listener


@contextmanager
def running_app(app: ASGIApp) -> Iterator[httpx.Client]:
    """Run an application on a free port of the loopback."""
    config = uvicorn.Config(
        app, http="h11", ws="none", lifespan="off", log_config=None, server_header=False
    )
    with (
        _listen() as listener,
        running(uvicorn.Server(config), listener) as client,
    ):
        yield client
