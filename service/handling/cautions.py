"""What a recorded caution prints: care for the object rather than for people."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

ISO_780 = "ISO 780:2015"
PRACTICE = "common practice, no source"


@dataclass(frozen=True, slots=True)
class CautionEntry:
    """One row of the table: a short heading, the mark and the source of the habit."""

    name: str
    mark: str
    source: str
    whole_container: bool = False
    """Whether one such object decides how the whole container is lifted or stood."""
    implies: tuple[str, ...] = ()
    """Weaker cautions that need no words of their own beside this one."""


CAUTIONS: dict[str, CautionEntry] = {
    "fragile": CautionEntry("Fragile", "fragile", ISO_780, whole_container=True),
    "glass": CautionEntry("Glass", "glass", ISO_780, whole_container=True, implies=("fragile",)),
    "this-way-up": CautionEntry("This way up", "this-way-up", ISO_780, whole_container=True),
    "keep-upright": CautionEntry(
        "Keep upright", "keep-upright", ISO_780, whole_container=True, implies=("this-way-up",)
    ),
    "keep-flat": CautionEntry("Keep flat", "keep-flat", PRACTICE, whole_container=True),
    "do-not-tilt": CautionEntry(
        "Do not tilt",
        "do-not-tilt",
        PRACTICE,
        whole_container=True,
        implies=("this-way-up", "keep-upright"),
    ),
    "do-not-hang": CautionEntry("Do not hang", "do-not-hang", "CCI Notes 13/5"),
    "do-not-fold": CautionEntry("Do not fold", "do-not-fold", "CCI Notes 13/2"),
    "light-sensitive": CautionEntry("Keep from light", "light-sensitive", ISO_780),
    "keep-dry": CautionEntry("Keep dry", "keep-dry", ISO_780, whole_container=True),
    "nothing-on-top": CautionEntry(
        "Nothing on top", "nothing-on-top", ISO_780, whole_container=True
    ),
    "support-below": CautionEntry("Support from below", "support-below", PRACTICE),
    "loose-parts": CautionEntry("Loose parts", "loose-parts", PRACTICE),
    "flaking-surface": CautionEntry("Flaking surface", "flaking-surface", PRACTICE),
    "heavy-end": CautionEntry("Heavy at one end", "heavy-end", PRACTICE, whole_container=True),
    "do-not-photograph": CautionEntry("No photographs", "do-not-photograph", PRACTICE),
    "ask-first": CautionEntry("Ask first", "ask-first", PRACTICE),
}


def drop_implied(codes: Sequence[str]) -> list[str]:
    """Leave out the cautions that a stricter one among them already says."""
    implied = {weaker for code in codes for weaker in find_caution(code).implies}
    return [code for code in codes if code not in implied]


def find_caution(code: str) -> CautionEntry:
    """Give the table's row for a caution; one that is not in the list prints as it is written."""
    name = code.replace("-", " ").strip().capitalize()
    return CAUTIONS.get(code, CautionEntry(name, "caution", PRACTICE))
