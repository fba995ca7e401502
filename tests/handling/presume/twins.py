"""Twins: for each rule a record that it is about, and one that it just is not about."""

from __future__ import annotations

from dataclasses import dataclass

from service.handling.presume import presume_for
from service.records.record import ObjectRecord


@dataclass(frozen=True, slots=True)
class Twin:
    """A rule, the record that it is about and the one beside it, as `record` takes them."""

    rule: str
    about: str
    beside: str

    @property
    def code(self) -> str:
        """The rule as it is named in full."""
        return f"presume-{self.rule}"


def record(text: str) -> ObjectRecord:
    """Make a record of "name | title | period | material; material"; later parts may lack."""
    name, title, period, materials = (part.strip() for part in f"{text}|||".split("|", maxsplit=3))
    return ObjectRecord(
        "1987.1",
        title,
        name,
        period,
        materials=tuple(one.strip(" |") for one in materials.split(";") if one.strip(" |")),
    )


def rules_for(text: str) -> set[str]:
    """Name the rules that add something to a record."""
    return {one.rule.code for one in presume_for(record(text))}
