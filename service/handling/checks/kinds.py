"""The kinds of check and what a look can give."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from service.handling.checks.rules import (
    CORROSION,
    LABELS_LEGIBLE,
    TISSUE_TEST,
    WEIGH_IF_CHOSEN,
    YEARLY,
)
from service.handling.rule import Rule
from service.printed import to_print


class CheckKind(StrEnum):
    """What is looked at, in the order of the sheet."""

    PESTS = "pests"
    TISSUE = "tissue"
    CORROSION = "corrosion"
    LABELS = "labels"
    WEIGHT = "weight"


class CheckResult(StrEnum):
    """What a look gave; only what was looked at counts as done."""

    OK = "ok"
    FOUND = "found"
    NOT_DONE = "not-done"


@dataclass(frozen=True, slots=True)
class CheckEntry:
    """A kind of check in words: its heading, what to look for, months as usual, and its rule."""

    name: str
    looks_for: str
    months: int
    rule: Rule


CHECKS: dict[CheckKind, CheckEntry] = {
    CheckKind.PESTS: CheckEntry(
        to_print("Pests"),
        to_print("insects, larvae, webs, frass, fresh holes, droppings"),
        12,
        YEARLY,
    ),
    CheckKind.TISSUE: CheckEntry(
        to_print("Tissue"),
        to_print("yellow or brittle tissue; a pH pen shows acid"),
        12,
        TISSUE_TEST,
    ),
    CheckKind.CORROSION: CheckEntry(
        to_print("Corrosion"),
        to_print("white, green or red powder, stains, weeping"),
        12,
        CORROSION,
    ),
    CheckKind.LABELS: CheckEntry(
        to_print("Labels"),
        to_print("numbers legible, cards there, nothing letting go"),
        12,
        LABELS_LEGIBLE,
    ),
    CheckKind.WEIGHT: CheckEntry(
        to_print("Weight"), to_print("weighed as it is, and as its card says"), 0, WEIGH_IF_CHOSEN
    ),
}

RESULT_WORDS = {
    CheckResult.OK: to_print("in order"),
    CheckResult.FOUND: to_print("something found"),
    CheckResult.NOT_DONE: to_print("not done"),
}

LOOKED_AT = (CheckKind.PESTS, CheckKind.TISSUE, CheckKind.CORROSION, CheckKind.LABELS)
"""What somebody who opens a box looks at without lifting it off."""
