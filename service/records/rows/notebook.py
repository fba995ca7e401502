"""The notebook in which readers write down what they notice."""

from __future__ import annotations

from service.findings import Finding, Where, make_finding
from service.sentence import Sentence

FINDINGS_LIMIT = 10_000
"""More than this nobody reads; the rest is counted, so that a hostile file cannot fill memory."""


class Notebook:
    """Findings in the order they were met."""

    def __init__(self) -> None:
        """Start empty."""
        self._findings: list[Finding] = []
        self._uncounted = 0

    def note(
        self, code: str, where: Where, message: Sentence, *, advice: Sentence | None = None
    ) -> None:
        """Write down one finding, or count it when the notebook is full."""
        if len(self._findings) < FINDINGS_LIMIT:
            self._findings.append(make_finding(code, where, message, advice=advice))
        else:
            self._uncounted += 1

    def findings(self) -> tuple[Finding, ...]:
        """Give everything noticed; the last one says how many more there were."""
        if not self._uncounted:
            return tuple(self._findings)
        message = Sentence(
            "{uncounted} more things were noticed and are not listed.", uncounted=self._uncounted
        )
        return (*self._findings, make_finding("more-findings", Where(), message))
