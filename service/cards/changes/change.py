"""One reason why a printed card no longer says what the records say."""

from __future__ import annotations

from dataclasses import dataclass
from enum import IntEnum, StrEnum


class Urgency(IntEnum):
    """How soon the card should be replaced; the lowest comes first."""

    HAZARD_OR_LIFT = 1
    CONTENTS = 2
    WORDING = 3


class ChangeKind(StrEnum):
    """What sort of thing changed."""

    HAZARD_ADDED = "hazard added"
    HAZARD_RAISED = "hazard raised"
    HAZARD_LOWERED = "hazard lowered"
    HAZARD_UNRECORDED = "hazard no longer recorded"
    HAZARD_WORDS = "hazard words"
    LIFT = "lift"
    LIMIT = "limit"
    CAUTION_ADDED = "caution added"
    CAUTION_UNLISTED = "caution no longer listed"
    CAUTION_WORDS = "caution words"
    ADDED = "added"
    TAKEN_OUT = "taken out"
    MOVED = "moved"
    ARRANGEMENT = "arrangement"
    OBJECT_WORDS = "object words"
    PHOTO = "photo"
    CONTAINER = "container"
    CARD = "card"


@dataclass(frozen=True, slots=True)
class Change:
    """One reason in plain words; `object_number` is empty where it concerns no one object.

    `words` are for the office. Where they tell what may not stand outside, `discreet_words` hold
    what may; elsewhere these are empty.
    """

    kind: ChangeKind
    urgency: Urgency
    words: str
    object_number: str = ""
    discreet_words: str = ""

    @property
    def is_discreet(self) -> bool:
        """Tell whether the words must not be printed or shown outside."""
        return bool(self.discreet_words)

    @property
    def outside_words(self) -> str:
        """Give the words that anybody may see."""
        return self.discreet_words or self.words


@dataclass(frozen=True, slots=True)
class Hint:
    """A change that need not be told where others explain it already.

    `numbers` are the objects it concerns: any other change of one of them explains it. Where there
    are none, objects that came, went or moved explain it.
    """

    change: Change
    numbers: frozenset[str] = frozenset()
