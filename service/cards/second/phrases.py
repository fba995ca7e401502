"""Every English phrase of handling that a card prints from our own tables: what to translate."""

from __future__ import annotations

from collections.abc import Iterator

from service.cards.papers.precautions import PRECAUTIONS
from service.handling.cautions import CAUTIONS
from service.handling.hazards import DISCREET, HAZARDS, STATE_WORDS, HazardEntry, find_hazard
from service.handling.lifting.advice import WEIGH_FIRST
from service.handling.lifting.effort import ADVICE, Effort, word_effort

HAZARD = "{hazard}"
LIMIT = "{limit}"
WHOM = "{whom}"
STACKING = f"At most {LIMIT} boxes on top"
_OF_A_CONTAINER = (
    "Weight not known",
    "Nothing on top",
    "At most 1 box on top",
    STACKING,
    "Heavy end",
    "Temporary",
)
ASK = "Ask"
ASK_FIRST = "Ask first"
ASK_WHOM = f"Ask {WHOM}"
SHUT_ASK_FIRST = "Do not open: ask first."
SHUT_ASK_WHOM = f"Do not open: ask {WHOM}"
PROTECTION = "Protection"
MORE_WORN = "more on the contents list"
_OF_LABELS = (ASK, ASK_FIRST, ASK_WHOM, SHUT_ASK_FIRST, SHUT_ASK_WHOM, PROTECTION, MORE_WORN)
UNLISTED = find_hazard("")
"""The row of a hazard that is not in the table: it has instructions and no name."""


def state_phrase(state: str) -> str:
    """Give the phrase that says how much is known of a hazard."""
    return f"{HAZARD} {state}"


def list_phrases() -> tuple[str, ...]:
    """List the phrases, each once: hazards, states, cautions, lifting, limits of containers."""
    return tuple(dict.fromkeys(_phrases()))


def list_entries() -> tuple[HazardEntry, ...]:
    """List the rows of hazards, that of unlisted ones too."""
    return (*HAZARDS.values(), DISCREET, UNLISTED)


def _phrases() -> Iterator[str]:
    for entry in list_entries():
        if entry.name:
            yield entry.name
        yield entry.instruction
        yield entry.protection
    yield from map(state_phrase, STATE_WORDS.values())
    yield from (caution.name for caution in CAUTIONS.values())
    yield WEIGH_FIRST
    yield from ADVICE.values()
    yield from (word_effort(Effort.KEEP_CLOSE, least=least) for least in Effort)
    yield from _OF_A_CONTAINER
    yield from _OF_LABELS
    yield from PRECAUTIONS
