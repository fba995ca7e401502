from __future__ import annotations

import asyncio

from starlette.requests import Request
from starlette.types import Receive, Scope, Send

from service.web.access.handed import HandingOn, handed
from tests.web.access.made import make_request


def test_one_application_works_for_several_services() -> None:
    """Each request is handed what its own service works on, and nothing stays behind."""
    seen: list[object] = []

    async def answer(scope: Scope, _receive: Receive, _send: Send) -> None:
        seen.append(handed(Request(scope), "lamp"))

    request = make_request()
    for lamp in ("oil", "gas"):
        asyncio.run(HandingOn(answer, {"lamp": lamp})(request.scope, None, None))  # type: ignore[arg-type] # neither is used
    assert seen == ["oil", "gas"]
    assert handed(request, "lamp") is None
