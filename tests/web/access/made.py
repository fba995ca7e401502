"""Requests made by hand, for what is asked before any route."""

from __future__ import annotations

from fastapi import Request


def make_request(
    scheme: str = "http",
    host: str = "localhost:8000",
    client: str = "127.0.0.1",
    method: str = "GET",
    **headers: str,
) -> Request:
    """Make a request; names of headers are written with underscores."""
    sent = {"host": host} | {name.replace("_", "-"): value for name, value in headers.items()}
    scope = {
        "type": "http",
        "method": method,
        "scheme": scheme,
        "path": "/",
        "query_string": b"",
        "server": ("127.0.0.1", 8000),
        "client": (client, 50000),
        "headers": [(name.encode(), value.encode()) for name, value in sent.items()],
    }
    return Request(scope)
