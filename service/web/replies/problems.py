"""What is said over HTTP when a request cannot be answered: problem details (RFC 9457)."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from http import HTTPStatus

from pydantic import BaseModel
from starlette.responses import Response

from service.errors import (
    ConfigError,
    ContentsError,
    JobError,
    LayoutError,
    RecordsError,
    RenderError,
    ServiceError,
    SheetError,
    SymbolError,
)
from service.findings import Finding

MEDIA_TYPE = "application/problem+json"
RETRY_SECONDS = 10

STATUSES: dict[type[ServiceError], int] = {
    RecordsError: 422,
    ContentsError: 422,
    SymbolError: 422,
    LayoutError: 422,
    SheetError: 422,
    RenderError: 500,
    JobError: 500,
    ConfigError: 500,
    ServiceError: 500,
}
"""The status of each branch of the tree; the nearest base class decides."""


class Refusal(StrEnum):
    """What the edge itself refuses, by code."""

    BAD_REQUEST = "bad-request"
    FOREIGN_PAGE = "foreign-page"
    NOT_FOUND = "not-found"
    METHOD_NOT_ALLOWED = "method-not-allowed"
    NOT_ACCEPTABLE = "not-acceptable"
    TOO_LARGE = "too-large"
    FOREIGN_HOST = "foreign-host"
    UNUSABLE_FIELD = "unusable-field"
    SEVERAL_FILES = "several-files"
    NO_SUCH_PAGE = "no-such-page"
    SAME_PHOTO_TWICE = "same-photo-twice"
    FAILED = "failed"
    BUSY = "busy"


@dataclass(frozen=True, slots=True)
class _RefusalKind:
    status: int
    advice: str


REFUSALS: dict[Refusal, _RefusalKind] = {
    Refusal.BAD_REQUEST: _RefusalKind(400, "Send the request in the form the description shows."),
    Refusal.FOREIGN_PAGE: _RefusalKind(403, "Send the request from a page of this service."),
    Refusal.NOT_FOUND: _RefusalKind(404, "Look the path up in /openapi.json."),
    Refusal.METHOD_NOT_ALLOWED: _RefusalKind(405, "Look the path up in /openapi.json."),
    Refusal.NOT_ACCEPTABLE: _RefusalKind(406, "Ask for one of the media types that are named."),
    Refusal.TOO_LARGE: _RefusalKind(413, "Send fewer or smaller photos, box by box."),
    Refusal.FOREIGN_HOST: _RefusalKind(
        421, "Use the address that was printed when the service began."
    ),
    Refusal.UNUSABLE_FIELD: _RefusalKind(422, "Correct the field and send the request again."),
    Refusal.SEVERAL_FILES: _RefusalKind(
        422, "Name one kind and one stock, or ask for application/zip."
    ),
    Refusal.NO_SUCH_PAGE: _RefusalKind(422, "Count the sheets of the file from 1."),
    Refusal.SAME_PHOTO_TWICE: _RefusalKind(422, "Give each photo a name of its own."),
    Refusal.FAILED: _RefusalKind(
        500, "Try again; if it comes back, give whoever runs this the mark."
    ),
    Refusal.BUSY: _RefusalKind(503, "Wait a little and send the request again."),
}
"""The status of each refusal and what to do."""


class RefusedError(Exception):
    """Raised at the edge when a request cannot be taken."""

    def __init__(self, code: Refusal, detail: str) -> None:
        """Keep the code and say what is wrong with this request."""
        self.code = code
        self.detail = detail
        super().__init__(detail)


class FindingView(BaseModel):
    """One thing noticed in the records."""

    code: str
    severity: str
    where: str
    message: str
    advice: str


class Problem(BaseModel):
    """A request that could not be answered (RFC 9457), with a code and what to do."""

    type: str
    title: str
    status: int
    detail: str
    code: str
    advice: str
    findings: list[FindingView] = []


class ProblemResponse(Response):
    """The reply that carries a problem."""

    media_type = MEDIA_TYPE

    def __init__(self, problem: Problem) -> None:
        """Write the problem; whoever is to come again is told when."""
        busy = problem.status == HTTPStatus.SERVICE_UNAVAILABLE
        wait = {"Retry-After": str(RETRY_SECONDS)} if busy else {}
        super().__init__(problem.model_dump_json(), problem.status, headers=wait)


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
    inner = status >= HTTPStatus.INTERNAL_SERVER_ERROR
    detail = f"The work did not end well; the log tells more under {mark}." if inner else str(error)
    return _make(status, error.code, detail, error.advice, findings)


def refuse(code: Refusal, detail: str) -> Problem:
    """Tell what the edge refuses."""
    kind = REFUSALS[code]
    return _make(kind.status, code.value, detail, kind.advice)


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
