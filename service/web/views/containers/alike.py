"""Of many findings of one kind a page shows a few and counts the others."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from service.findings import Finding

MOST_ALIKE = 6


@dataclass(frozen=True, slots=True)
class ShownFinding:
    """A finding, and how many more of its kind come after it and are not shown."""

    finding: Finding
    more: int


def show_few(findings: Iterable[Finding]) -> Iterator[ShownFinding]:
    """Give the first findings of each kind, kind by kind as they were met first."""
    found = list(findings)
    for code, many in Counter(one.code for one in found).items():
        alike = [one for one in found if one.code == code]
        for at, one in enumerate(alike[:MOST_ALIKE], 1):
            yield ShownFinding(one, max(many - MOST_ALIKE, 0) if at == MOST_ALIKE else 0)
