from __future__ import annotations

from fastapi import Request

from service.web.views.scan.inside import is_at_this_machine, may_see_inside


def request_from(host: str | None) -> Request:
    """Give a request from an address."""
    return Request({"type": "http", "headers": [], "client": host and (host, 1)})


def test_nobody_is_signed_in_yet() -> None:
    """Not even whoever sits at this machine."""
    assert not may_see_inside(request_from("127.0.0.1"))


def test_this_machine_is_known_by_its_address() -> None:
    """Loopback of either kind; others, names and nobody are not."""
    assert [
        is_at_this_machine(request_from(host))
        for host in ("127.0.0.1", "::1", "192.0.2.7", "example", None)
    ] == [True, True, False, False, False]
