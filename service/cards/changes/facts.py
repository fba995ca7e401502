"""Hazards and cautions as facts: a name, how much is known, and the object it is recorded for."""

from __future__ import annotations

import re
from dataclasses import dataclass

from service.handling.hazards import DISCREET, HAZARDS, STATE_WORDS
from service.records.record import HazardState

RANKS = tuple(
    STATE_WORDS[state]
    for state in (HazardState.UNCHECKED, HazardState.PRESUMED, HazardState.CONFIRMED)
)
"""How much is known, least first."""

DISCREET_NAMES = {
    entry.name: "Restricted" if entry.name == "Restricted" else DISCREET.name
    for entry in (*HAZARDS.values(), DISCREET)
    if entry.discreet or entry is DISCREET
}
"""The hazards that the outside may not announce, with the words that stand there instead."""

_STATES = "|".join(STATE_WORDS.values())
_HEADING = re.compile(rf"(.+) ({_STATES})", re.DOTALL)
_SENTENCE = re.compile(rf"(.+?) ({_STATES})(?:\.| \()", re.DOTALL)


@dataclass(frozen=True, slots=True)
class Fact:
    """A hazard or caution by its name; `state` is empty for a caution or a discreet hazard.

    `object_number` is empty where the container as a whole is meant.
    """

    name: str
    state: str
    object_number: str


def read_heading(heading: str) -> tuple[str, str]:
    """Take the heading of a hazard apart into its name and its state."""
    found = _HEADING.fullmatch(heading)
    return (found[1], found[2]) if found else (heading, "")


def hazard_in(sentence: str, object_number: str) -> Fact:
    """Find the hazard that a line of the contents list begins with."""
    found = _SENTENCE.match(sentence)
    name, state = (found[1], found[2]) if found else (sentence, "")
    return Fact(name, state, object_number)
