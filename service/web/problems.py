"""What is said over HTTP when a request cannot be answered: problem details (RFC 9457)."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
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


@dataclass(frozen=True, slots=True)
class _RefusalKind:
    status: int
    advice: str


REFUSALS: dict[str, _RefusalKind] = {
    "bad-request": _RefusalKind(400, "Send the request in the form the description shows."),
    "foreign-page": _RefusalKind(403, "Send the request from a page of this service."),
    "not-found": _RefusalKind(404, "Look the path up in /openapi.json."),
    "method-not-allowed": _RefusalKind(405, "Look the path up in /openapi.json."),
    "not-acceptable": _RefusalKind(406, "Ask for one of the media types that are named."),
    "too-large": _RefusalKind(413, "Send fewer or smaller photos, box by box."),
    "foreign-host": _RefusalKind(421, "Use the address that was printed when the service began."),
    "unusable-field": _RefusalKind(422, "Correct the field and send the request again."),
    "several-files": _RefusalKind(422, "Name one kind and one stock, or ask for application/zip."),
    "no-such-page": _RefusalKind(422, "Count the sheets of the file from 1."),
    "same-photo-twice": _RefusalKind(422, "Give each photo a name of its own."),
    "failed": _RefusalKind(500, "Try again; if it comes back, give whoever runs this the mark."),
    "busy": _RefusalKind(503, "Wait a little and send the request again."),
}
"""What the edge itself refuses, by code."""


class RefusedError(Exception):
    """Raised at the edge when a request cannot be taken, with a code of `REFUSALS`."""

    def __init__(self, code: str, detail: str) -> None:
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
        wait = {"Retry-After": str(RETRY_SECONDS)} if problem.status == RETRY_STATUS else {}
        super().__init__(problem.model_dump_json(), problem.status, headers=wait)


RETRY_STATUS = HTTPStatus.SERVICE_UNAVAILABLE


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


def refuse(code: str, detail: str) -> Problem:
    """Tell what the edge refuses."""
    kind = REFUSALS[code]
    return _make(kind.status, code, detail, kind.advice)


def list_problems() -> dict[str, tuple[int, str]]:
    """Give status and advice of every problem there is, by code."""
    ours = {error.code: (status_of(error), error.advice) for error in _tree(ServiceError)}
    return ours | {code: (kind.status, kind.advice) for code, kind in REFUSALS.items()}


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
