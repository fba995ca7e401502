"""The application: routes, what is said when they fail, and the guard in front."""

from __future__ import annotations

import logging
import secrets
from dataclasses import dataclass
from functools import cache
from http import HTTPStatus
from typing import Any

from fastapi import Depends, FastAPI, Request, Response
from fastapi.exceptions import RequestValidationError
from fastapi.responses import HTMLResponse
from starlette.exceptions import HTTPException
from starlette.types import ASGIApp

from service.errors import ServiceError
from service.findings import Finding
from service.keeping.sharing.reach import UNREACHED, Reach
from service.sentence import Sentence
from service.store.people.role import Role
from service.web.access.gate import GatedRoute, needs, refuse_ungated
from service.web.access.handed import HandingOn
from service.web.access.limit import Limit
from service.web.access.porter import Porter
from service.web.access.proxy import FromProxy
from service.web.description import describe, write_page
from service.web.forms import MOST_FIELDS, MOST_FILES, MOST_RECORDS_BYTES
from service.web.guard import (
    LOOPBACK,
    Guard,
    Limits,
    is_loopback,
    refuse_body,
)
from service.web.press import Presses
from service.web.replies.problems import (
    Problem,
    is_inner,
    problem_of,
    refuse,
    tell_refused,
)
from service.web.replies.refusals import Refusal, RefusedError
from service.web.routes import FailedError, router
from service.web.store.counter import Counter
from service.web.store.routes import router as store_router
from service.web.views.language.interpreter import Interpreter
from service.web.views.routes import open_router
from service.web.views.routes import router as view_router
from service.web.views.rules import router as rules_router
from service.web.views.shell.faults import show_problem

_LOG = logging.getLogger(__name__)
_CODES = {404: Refusal.NOT_FOUND, 405: Refusal.METHOD_NOT_ALLOWED}


@dataclass(frozen=True, slots=True)
class Front:
    """What others know the service by: names besides its address, and a proxy before it.

    `default_actor` makes the changes of pages as long as there are no users and a reader says no
    more. `reach` is what pages tell of how others come in.
    """

    hosts: frozenset[str] = frozenset()
    behind_proxy: bool = False
    default_actor: str = ""
    reach: Reach = UNREACHED


def make_app(
    presses: Presses,
    host: str,
    *,
    counter: Counter | None = None,
    front: Front | None = None,
    limits: Limits | None = None,
) -> ASGIApp:
    """Build the application for the address it will listen on.

    Without a counter only the paths that keep nothing are there. The page that describes the API
    is there only where this machine alone is answered.
    """
    front, limits = front or Front(), limits or Limits()
    is_local = is_loopback(host) and not front.hosts and not front.behind_proxy
    things: dict[str, object] = {
        "porter": Porter(counter, is_local),
        "presses": presses,
        "counter": counter,
        "scan_limit": Limit(),
        "default_actor": front.default_actor,
        "reach": front.reach,
    }
    app = _find_app(
        has_store=counter is not None, has_page=is_local, most_body_bytes=limits.most_body_bytes
    )
    spoken = Interpreter(HandingOn(app, things))
    guard = Guard(spoken, LOOPBACK | {host} | front.hosts, limits)
    return FromProxy(guard) if front.behind_proxy else guard


def build_app(*, has_store: bool, has_page: bool, most_body_bytes: int) -> FastAPI:
    """Build the routes, which takes a while; whatever they work on is handed to each request."""
    app = FastAPI(
        openapi_url=None,
        docs_url=None,
        redoc_url=None,
        max_body_size=most_body_bytes,
        form_limits={
            "max_files": MOST_FILES + 1,
            "max_fields": MOST_FIELDS,
            "max_part_size": MOST_RECORDS_BYTES,
        },
        dependencies=[Depends(refuse_ungated)],
    )
    app.router.route_class = GatedRoute
    app.state.most_body_bytes = most_body_bytes
    app.include_router(router)
    app.include_router(rules_router)
    app.include_router(open_router)
    if has_store:
        app.include_router(store_router)
        app.include_router(view_router)
    _add_description(app, page=has_page)
    for kind, handler in _HANDLERS.items():
        app.add_exception_handler(kind, handler)
    return app


_find_app = cache(build_app)


def _add_description(app: FastAPI, *, page: bool) -> None:
    document = cache(lambda: describe(app))

    def openapi() -> dict[str, Any]:
        return document()

    def docs() -> HTMLResponse:
        return HTMLResponse(write_page(document()))

    gate = [needs(Role.VIEW)]
    app.add_api_route("/openapi.json", openapi, include_in_schema=False, dependencies=gate)
    if page:
        app.add_api_route("/docs", docs, include_in_schema=False, dependencies=gate)


def _tell_error(request: Request, error: Exception) -> Response:
    return show_problem(request, _problem(error))


def _tell_http(request: Request, error: Exception) -> Response:
    """Tell what the framework refuses: no such path, a body too long or not a form."""
    status = error.status_code if isinstance(error, HTTPException) else HTTPStatus.BAD_REQUEST
    if status == HTTPStatus.REQUEST_ENTITY_TOO_LARGE:
        own_bytes = getattr(request.scope.get("route"), "max_body_size", None)
        return show_problem(request, refuse_body(own_bytes or request.app.state.most_body_bytes))
    detail = str(getattr(error, "detail", error))
    return show_problem(request, refuse(_CODES.get(status, Refusal.BAD_REQUEST), detail))


def _problem(error: Exception) -> Problem:
    if isinstance(error, RefusedError):
        return tell_refused(error)
    if isinstance(error, RequestValidationError):
        return refuse(Refusal.UNUSABLE_FIELD, _field_words(error))
    if isinstance(error, FailedError):
        return _tell_ours(error.failed.error, error.failed.findings)
    if isinstance(error, ServiceError):
        return _tell_ours(error)
    return refuse(Refusal.FAILED, Sentence("The log tells more under {error}.", error=_log(error)))


def _tell_ours(error: ServiceError, findings: tuple[Finding, ...] = ()) -> Problem:
    return problem_of(error, findings, mark=_log(error) if is_inner(type(error)) else "")


def _log(error: Exception) -> str:
    """Log an error whole, what happened in the press included, and give the mark it has there."""
    mark = secrets.token_hex(4)
    notes = "\n".join(getattr(error, "__notes__", ()))
    _LOG.error("%s: %s %s", mark, repr(error), notes)
    return mark


def _field_words(error: RequestValidationError) -> str:
    """Name each field and what is wrong with it; what was sent is not sent back."""
    said = [
        f"{'.'.join(str(part) for part in fault['loc'][1:])}: {fault['msg']}"
        for fault in error.errors()[:10]
    ]
    return "; ".join(dict.fromkeys(said))


_HANDLERS = {
    HTTPException: _tell_http,
    RequestValidationError: _tell_error,
    RefusedError: _tell_error,
    FailedError: _tell_error,
    ServiceError: _tell_error,
    Exception: _tell_error,
}
