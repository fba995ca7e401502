"""The gate of every route: it says whose work the route is, and asks before a body is read.

Nothing is open by being forgotten: a route that declares no role answers nobody.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from fastapi import Request
from fastapi.params import Depends
from fastapi.routing import APIRoute, RouteContext, iter_route_contexts
from starlette.concurrency import run_in_threadpool
from starlette.routing import BaseRoute
from starlette.types import Receive, Scope, Send

from service.sentence import Sentence
from service.store.people.role import Role
from service.web.access.porter import porter_of
from service.web.access.reader import Reader, Way
from service.web.replies.refusals import Refusal, RefusedError

_READING = frozenset({"GET", "HEAD", "OPTIONS"})
_BY_BROWSERS = ("origin", "sec-fetch-site")


@dataclass(frozen=True, slots=True)
class Gate:
    """What a route declares: the role whose work it is, or None where it is open to all."""

    role: Role | None

    async def __call__(self) -> None:
        """Do nothing: the route has asked already."""


def needs(role: Role) -> Depends:
    """Declare the role of a route: `dependencies=[needs(Role.PACK)]`."""
    return Depends(Gate(role))


OPEN = Depends(Gate(None))
"""Declares that a route is open to all, signed in or not."""


class GatedRoute(APIRoute):
    """A route that is answered only to those who may do its work."""

    async def handle(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Ask who comes, and hand the request on with the reader in its state."""
        request = Request(scope)
        gate = find_gate(self)
        if gate is None:
            _refuse_undeclared()
        elif gate.role is None:
            _refuse_long(request, self.max_body_size)
        else:
            reader = await run_in_threadpool(porter_of(request).recognise, request)
            _refuse_reader(reader, gate.role)
            _refuse_unknown_page(reader, request)
            request.state.reader = reader
        await super().handle(scope, receive, send)


def refuse_ungated(request: Request) -> None:
    """Refuse what comes by a route that is no gated one; every application depends on it.

    Raises:
        RefusedError: When nothing has asked who comes.
    """
    if not isinstance(request.scope.get("route"), GatedRoute):
        _refuse_undeclared()


def find_gate(route: BaseRoute) -> Gate | None:
    """Find what a route declares; two declarations are as good as none."""
    if not isinstance(route, GatedRoute):
        return None
    gates = [each.dependency for each in route.dependencies if isinstance(each.dependency, Gate)]
    return gates[0] if len(gates) == 1 else None


def list_gates(routes: Iterable[BaseRoute]) -> Iterator[tuple[RouteContext, Gate | None]]:
    """List every route there is, with what it declares."""
    for each in iter_route_contexts(list(routes)):
        yield each, find_gate(each.original_route)


def _refuse_reader(reader: Reader, role: Role) -> None:
    """Refuse those who may not do the work.

    Raises:
        RefusedError: When nobody is signed in, or may do less.
    """
    if reader.may(role):
        return
    if reader.way is Way.NOBODY:
        raise RefusedError(Refusal.SIGN_IN_NEEDED, "Nobody is signed in.")
    may = ", ".join(each.value for each in Role if reader.may(each))
    detail = Sentence(
        "This needs the role {role}; allowed is {may}.",
        role=Sentence(role.value),
        may=may or Sentence("nothing"),
    )
    raise RefusedError(Refusal.NOT_ALLOWED, detail)


def _refuse_unknown_page(reader: Reader, request: Request) -> None:
    """Refuse a change that brings a cookie and does not say from which page it comes.

    The guard has looked at what it says; every browser says so where something is changed.

    Raises:
        RefusedError: When it says nothing.
    """
    if reader.way is not Way.SESSION or request.method in _READING:
        return
    if not any(name in request.headers for name in _BY_BROWSERS):
        detail = Sentence("A change with a cookie has to name its page; programs use a token.")
        raise RefusedError(Refusal.FOREIGN_PAGE, detail)


def _refuse_long(request: Request, most_bytes: int | None) -> None:
    """Refuse a body that is announced as too long; one that is not is cut while it comes.

    Raises:
        RefusedError: When the route takes less.
    """
    # The length is a number: the server has turned away everything else.
    if most_bytes is not None and int(request.headers.get("content-length", "0")) > most_bytes:
        raise RefusedError(
            Refusal.TOO_LARGE,
            Sentence("At most {most_bytes} bytes are taken here.", most_bytes=most_bytes),
        )


def _refuse_undeclared() -> None:
    """Refuse a route that declares nothing.

    Raises:
        RefusedError: Always.
    """
    raise RefusedError(Refusal.NOT_ALLOWED, "Nothing says who may do this, so nobody may.")
