"""A second language as cards use it: English phrases and what stands beside them."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

from service.cards.changes.facts import read_heading
from service.cards.second.phrases import (
    ASK_FIRST,
    ASK_WHOM,
    HAZARD,
    LIMIT,
    SHUT_ASK_FIRST,
    SHUT_ASK_WHOM,
    STACKING,
    WHOM,
    state_phrase,
)

_STACKED = re.compile(re.escape(STACKING).replace(re.escape(LIMIT), "([0-9]+)"))


@dataclass(frozen=True, slots=True)
class Phrasebook:
    """One language and its phrases.

    Attributes:
        language: Its code (BCP 47), such as "cy".
        name: How English names it.
        is_reviewed: Whether a specialist has read the translation.
        messages: The phrases by the English ones, with the same placeholders.
    """

    language: str
    name: str
    is_reviewed: bool
    messages: Mapping[str, str]

    @property
    def note(self) -> str:
        """What a reader must know of the translation; empty where a specialist has read it."""
        if self.is_reviewed:
            return ""
        return f"{self.name} words: translation not reviewed by a specialist"

    def say(self, english: str) -> str:
        """Give the phrase beside an English one, empty where there is none."""
        return self.messages.get(english, "")

    def say_hazard(self, heading: str) -> str:
        """Give name and state of a hazard; a name that is not in the table stays English."""
        name, state = read_heading(heading)
        said = self.say(name)
        return self.say(state_phrase(state)).replace(HAZARD, said) if said and state else said

    def say_asking(self, words: str) -> str:
        """Give our words that somebody is to be asked, with the same people in them."""
        for phrase in (ASK_FIRST, SHUT_ASK_FIRST):
            if words == phrase.rstrip("."):
                return self.say(phrase).rstrip(".")
        for phrase in (ASK_WHOM, SHUT_ASK_WHOM):
            before = phrase.removesuffix(WHOM)
            if words.startswith(before):
                return self.say(phrase).replace(WHOM, words.removeprefix(before))
        return ""

    def say_limit(self, words: str) -> str:
        """Give a limit of a container; where it goes on in free words, what these are about."""
        stacked = _STACKED.fullmatch(words)
        if stacked:
            return self.say(STACKING).replace(LIMIT, stacked[1])
        return self.say(words.partition(":")[0])
