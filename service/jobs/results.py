"""What came of a task, as the data that its row keeps."""

from __future__ import annotations

from collections.abc import Sequence

from service.errors import ServiceError
from service.findings import Finding, Severity

MOST_FINDINGS = 1_000
"""A row keeps no more of them: the gravest first, and the number of those it leaves out."""


def tell_findings(findings: Sequence[Finding]) -> dict[str, object]:
    """Tell what was noticed, the gravest first."""
    order = list(Severity)
    ranked = sorted(findings, key=lambda finding: order.index(finding.severity))
    told = [
        {
            "code": finding.code,
            "severity": finding.severity.value,
            "where": str(finding.where),
            "message": finding.message,
            "advice": finding.advice,
        }
        for finding in ranked[:MOST_FINDINGS]
    ]
    return {"findings": told, "findings_left_out": len(ranked) - len(told)}


def tell_error(error: ServiceError, findings: Sequence[Finding]) -> dict[str, object]:
    """Tell why the work came to nothing, and what had been noticed up to then."""
    return {
        "code": error.code,
        "message": str(error),
        "advice": error.advice,
        **tell_findings(findings),
    }


def tell_unforeseen(mark: str, findings: Sequence[Finding]) -> dict[str, object]:
    """Tell that the fault is the service's own; the log tells more under the mark."""
    unforeseen = ServiceError(
        "The work did not end well; the log tells more under {mark}.", mark=mark
    )
    return {**tell_error(unforeseen, findings), "mark": mark}
