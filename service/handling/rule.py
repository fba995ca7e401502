"""A rule of the trade as the product applies it: its words, its source, and what backs it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Evidence(StrEnum):
    """What stands behind a rule."""

    PUBLISHED = "published"
    PRACTICE = "common practice"
    MEMORY = "from memory"


@dataclass(frozen=True, slots=True)
class Rule:
    """One rule: a stable code in kebab-case, a sentence for everybody, and the named source.

    `source` is empty for common practice that nobody has published.
    """

    code: str
    says: str
    evidence: Evidence
    source: str = ""
