"""A form as it was filled in, and what is wrong with it, field by field."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

WHOLE = ""
"""The name under which a fault stands that concerns no one field."""


@dataclass(frozen=True, slots=True)
class FilledForm:
    """What was typed, so that nobody types it twice, and the faults by field."""

    values: Mapping[str, str] = field(default_factory=dict)
    faults: Mapping[str, str] = field(default_factory=dict)

    def value(self, name: str, default: str = "") -> str:
        """Give what stands in a field."""
        return self.values.get(name, default)

    def fault(self, name: str) -> str:
        """Give what is wrong with a field; empty when nothing is."""
        return self.faults.get(name, "")

    @property
    def status(self) -> int:
        """Give the status of the page that shows it: 422 where something is wrong (RFC 9110)."""
        return 422 if self.faults else 200
