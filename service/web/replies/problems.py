"""What is said over HTTP when a request cannot be answered: problem details (RFC 9457)."""

from __future__ import annotations

import json
from collections.abc import Sequence
from http import HTTPStatus

from pydantic import BaseModel, SkipValidation
from starlette.responses import Response

from service.errors import (
    CardStateError,
    ConfigError,
    ContentsError,
    CursorError,
    DayAheadError,
    FileNotStoredError,
    JobError,
    LastManagerError,
    LayoutError,
    NotFoundError,
    NotSentError,
    PackedElsewhereError,
    PackingConflictError,
    PairingError,
    PeopleError,
    RecordsError,
    RenderError,
    ServiceError,
    SheetError,
    SignInError,
    StoreBusyError,
    StoreError,
    StoreFullError,
    SymbolError,
    UnstorableTextError,
    UserTakenError,
    WrongContainerError,
)
from service.findings import Finding
from service.sentence import Sentence
from service.web.replies.refusals import REFUSALS, Refusal, RefusedError

MEDIA_TYPE = "application/problem+json"
_WAITS: dict[int, int] = {HTTPStatus.SERVICE_UNAVAILABLE: 10, HTTPStatus.TOO_MANY_REQUESTS: 60}
"""After how many seconds whoever gets this status is to come again."""

STATUSES: dict[type[ServiceError], int] = {
    RecordsError: 422,
    ContentsError: 422,
    SymbolError: 422,
    LayoutError: 422,
    SheetError: 422,
    RenderError: 500,
    StoreError: 500,
    NotFoundError: 404,
    PackingConflictError: 409,
    PackedElsewhereError: 409,
    CardStateError: 409,
    WrongContainerError: 409,
    UnstorableTextError: 422,
    CursorError: 422,
    DayAheadError: 422,
    FileNotStoredError: 404,
    PeopleError: 422,
    UserTakenError: 409,
    LastManagerError: 409,
    SignInError: 401,
    PairingError: 401,
    StoreBusyError: 503,
    StoreFullError: 507,
    JobError: 500,
    NotSentError: 502,
    ConfigError: 500,
    ServiceError: 500,
}
"""The status of each branch of the tree; the nearest base class decides."""
_INNER = frozenset({HTTPStatus.INTERNAL_SERVER_ERROR})
"""Faults of the service itself, of which only the log tells more."""


class FindingView(BaseModel):
    """One thing noticed in the records."""

    code: str
    severity: str
    where: str
    message: SkipValidation[str]
    advice: SkipValidation[str]


class Problem(BaseModel):
    """A request that could not be answered (RFC 9457), with a code and what to do.

    Where two changes disagree, `yours` is the state that was sent and `current` the one that is.
    """

    type: str
    title: str
    status: int
    detail: SkipValidation[str]
    code: str
    advice: str
    findings: list[FindingView] = []
    yours: dict[str, object] | None = None
    current: dict[str, object] | None = None


class ProblemResponse(Response):
    """The reply that carries a problem."""

    media_type = MEDIA_TYPE

    def __init__(self, problem: Problem) -> None:
        """Write the problem; whoever is to come again is told when, or with what to sign in."""
        seconds = _WAITS.get(problem.status)
        more = {} if seconds is None else {"Retry-After": str(seconds)}
        if problem.status == HTTPStatus.UNAUTHORIZED:
            more["WWW-Authenticate"] = 'Bearer realm="underlid"'
        super().__init__(problem.model_dump_json(exclude_none=True), problem.status, headers=more)


def status_of(error: type[ServiceError]) -> int:
    """Give the status of an error, from its nearest base class in the table."""
    return next(STATUSES[base] for base in error.__mro__ if base in STATUSES)


def show_findings(findings: Sequence[Finding]) -> list[FindingView]:
    """Turn findings into what a reply holds of them."""
    return [
        FindingView(
            code=finding.code,
            severity=finding.severity.value,
            where=str(finding.where),
            message=finding.message,
            advice=finding.advice,
        )
        for finding in findings
    ]


def problem_of(error: ServiceError, findings: Sequence[Finding] = (), *, mark: str = "") -> Problem:
    """Tell an error of ours; where the fault is the service's own, only its mark in the log."""
    status = status_of(type(error))
    words: str = error.sentence
    if is_inner(type(error)):
        words = Sentence("The work did not end well; the log tells more under {mark}.", mark=mark)
    problem = _make(status, error.code, words, error.advice, findings)
    if isinstance(error, PackingConflictError):
        problem.yours, problem.current = states_of(error)
    return problem


def is_inner(error: type[ServiceError]) -> bool:
    """Say whether an error is a fault of the service, whose words stay in the log."""
    return status_of(error) in _INNER


def states_of(error: PackingConflictError) -> tuple[dict[str, object], dict[str, object] | None]:
    """Give both packings of a conflict as plain data, None where nothing is packed."""
    return json.loads(error.yours), json.loads(error.current) if error.current else None


def refuse(code: Refusal, detail: str) -> Problem:
    """Tell what the edge refuses."""
    kind = REFUSALS[code]
    return _make(kind.status, code.value, detail, kind.advice)


def tell_refused(error: RefusedError) -> Problem:
    """Tell what the edge refused, with both states where two disagree."""
    problem = refuse(error.code, error.detail)
    problem.yours = None if error.yours is None else dict(error.yours)
    problem.current = None if error.current is None else dict(error.current)
    return problem


def list_problems() -> dict[str, tuple[int, str]]:
    """Give status and advice of every problem there is, by code."""
    ours = {error.code: (status_of(error), error.advice) for error in _tree(ServiceError)}
    return ours | {code.value: (kind.status, kind.advice) for code, kind in REFUSALS.items()}


def _tree(error: type[ServiceError]) -> list[type[ServiceError]]:
    return [error, *(below for child in error.__subclasses__() for below in _tree(child))]


def _make(
    status: int, code: str, detail: str, advice: str, findings: Sequence[Finding] = ()
) -> Problem:
    return Problem(
        type=f"/api/problems#{code}",
        title=code.replace("-", " ").capitalize(),
        status=status,
        detail=detail,
        code=code,
        advice=advice,
        findings=show_findings(findings),
    )
