"""What came of a task, as the data that its row keeps."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from service.errors import ServiceError
from service.findings import Finding, Severity
from service.sentence import Sentence, put_together, take_apart

MOST_FINDINGS = 1_000
"""A row keeps no more of them: the gravest first, and the number of those it leaves out."""

PARTS = {"message": "message_parts", "advice": "advice_parts"}
"""Texts of a result, and the name under which their template and values stand beside them."""


def tell_findings(findings: Sequence[Finding]) -> dict[str, object]:
    """Tell what was noticed, the gravest first."""
    order = list(Severity)
    ranked = sorted(findings, key=lambda finding: order.index(finding.severity))
    told = [
        {
            "code": finding.code,
            "severity": finding.severity.value,
            "where": str(finding.where),
            **_tell_words(finding.message, finding.advice),
        }
        for finding in ranked[:MOST_FINDINGS]
    ]
    return {"findings": told, "findings_left_out": len(ranked) - len(told)}


def tell_error(error: ServiceError, findings: Sequence[Finding]) -> dict[str, object]:
    """Tell why the work came to nothing, and what had been noticed up to then."""
    return {
        "code": error.code,
        **_tell_words(error.sentence, error.advice),
        **tell_findings(findings),
    }


def tell_unforeseen(mark: str, findings: Sequence[Finding]) -> dict[str, object]:
    """Tell that the fault is the service's own; the log tells more under the mark."""
    unforeseen = ServiceError(
        "The work did not end well; the log tells more under {mark}.", mark=mark
    )
    return {**tell_error(unforeseen, findings), "mark": mark}


def leave_parts(told: Mapping[str, object]) -> dict[str, object]:
    """Give a result without what only other languages need, its findings too."""
    plain = {name: value for name, value in told.items() if name not in PARTS.values()}
    findings = plain.get("findings")
    if isinstance(findings, list):
        plain["findings"] = [leave_parts(one) for one in findings]
    return plain


def say_again(told: Mapping[str, object]) -> dict[str, object]:
    """Give an error or a finding as it was told, its words so that they can be translated."""
    words = {name: put_together(told.get(PARTS[name], told.get(name, ""))) for name in PARTS}
    return leave_parts(told) | words


def _tell_words(message: str, advice: str) -> dict[str, object]:
    """Give both texts in English, and apart where another language is to say them one day."""
    found: dict[str, object] = {}
    for name, text in (("message", message), ("advice", advice)):
        found[name] = str(text)
        if isinstance(text, Sentence) and text.values:
            found[PARTS[name]] = take_apart(text)
    return found
