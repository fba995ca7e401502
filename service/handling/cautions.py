"""What a recorded caution prints: care for the object rather than for people."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from service.handling.rule import Evidence, Rule

ISO_780 = "ISO 780:2015"


@dataclass(frozen=True, slots=True)
class CautionEntry:
    """One row of the table: a short heading, the mark (called as the code is), and the rule."""

    name: str
    mark: str
    rule: Rule
    whole_container: bool = False
    """Whether one such object decides how the whole container is lifted or stood."""
    implies: tuple[str, ...] = ()
    """Weaker cautions that need no words of their own beside this one."""


def _rule(code: str, says: str, source: str = "") -> Rule:
    evidence = Evidence.PUBLISHED if source else Evidence.PRACTICE
    return Rule(f"caution-{code}", says, evidence, source)


_ENTRIES = (
    CautionEntry(
        "Fragile",
        "fragile",
        _rule("fragile", "What breaks easily is handled with care.", ISO_780),
        whole_container=True,
    ),
    CautionEntry(
        "Glass",
        "glass",
        _rule("glass", "What holds glass is handled as fragile."),
        whole_container=True,
        implies=("fragile",),
    ),
    CautionEntry(
        "This way up",
        "this-way-up",
        _rule(
            "this-way-up",
            "What has a top is kept with that side up, on the shelf and on the way.",
            ISO_780,
        ),
        whole_container=True,
    ),
    CautionEntry(
        "Keep upright",
        "keep-upright",
        _rule(
            "keep-upright",
            "What would fall over, leak or strain its mount on its side stands upright.",
        ),
        whole_container=True,
        implies=("this-way-up",),
    ),
    CautionEntry(
        "Keep flat",
        "keep-flat",
        _rule(
            "keep-flat",
            "What would slump, crease or split stays lying flat, also while it is carried.",
        ),
        whole_container=True,
    ),
    CautionEntry(
        "Do not tilt",
        "do-not-tilt",
        _rule("do-not-tilt", "What may run, roll or shift inside its mount is carried level."),
        whole_container=True,
        implies=("this-way-up", "keep-upright"),
    ),
    CautionEntry(
        "Do not hang",
        "do-not-hang",
        _rule(
            "do-not-hang",
            "What its own weight would tear or stretch does not hang.",
            "CCI Notes 13/5",
        ),
    ),
    CautionEntry(
        "Do not fold",
        "do-not-fold",
        _rule(
            "do-not-fold",
            "What would crease or crack lies without a fold, or rolled.",
            "CCI Notes 13/2",
        ),
    ),
    CautionEntry(
        "Keep from light",
        "light-sensitive",
        _rule(
            "light-sensitive",
            "What light fades is covered, and uncovered only while it is looked at.",
        ),
    ),
    CautionEntry(
        "Keep dry",
        "keep-dry",
        _rule("keep-dry", "What water or damp spoils is kept from both.", ISO_780),
        whole_container=True,
    ),
    CautionEntry(
        "Nothing on top",
        "nothing-on-top",
        _rule("nothing-on-top", "What cannot bear weight has nothing stood on it.", ISO_780),
        whole_container=True,
    ),
    CautionEntry(
        "Support from below",
        "support-below",
        _rule(
            "support-below",
            "What could part from its own weight is lifted on a board or with both hands beneath.",
        ),
    ),
    CautionEntry(
        "Loose parts",
        "loose-parts",
        _rule("loose-parts", "What has loose parts is moved with all of them; each is put back."),
    ),
    CautionEntry(
        "Flaking surface",
        "flaking-surface",
        _rule("flaking-surface", "A surface that flakes is not brushed, wiped or touched."),
    ),
    CautionEntry(
        "Heavy at one end",
        "heavy-end",
        _rule(
            "heavy-end",
            "What is heavier at one end is lifted there first, and its weight is told beforehand.",
        ),
        whole_container=True,
    ),
    CautionEntry(
        "No photographs",
        "do-not-photograph",
        _rule(
            "do-not-photograph",
            "What its owners or makers do not wish to be pictured is not photographed.",
        ),
    ),
    CautionEntry(
        "Ask first",
        "ask-first",
        _rule("ask-first", "Whoever is named is asked before it is opened or moved."),
    ),
)
CAUTIONS: dict[str, CautionEntry] = {entry.mark: entry for entry in _ENTRIES}
_AS_WRITTEN = Rule(
    "caution-as-written",
    "A caution in the museum's own words is printed as it is written.",
    Evidence.PRACTICE,
)
RULES = (*(entry.rule for entry in _ENTRIES), _AS_WRITTEN)


def drop_implied(codes: Sequence[str]) -> list[str]:
    """Leave out the cautions that a stricter one among them already says."""
    implied = {weaker for code in codes for weaker in find_caution(code).implies}
    return [code for code in codes if code not in implied]


def find_caution(code: str) -> CautionEntry:
    """Give the table's row for a caution; one that is not in the list prints as it is written."""
    name = code.replace("-", " ").strip().capitalize()
    return CAUTIONS.get(code, CautionEntry(name, "caution", _AS_WRITTEN))
