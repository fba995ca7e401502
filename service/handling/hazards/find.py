"""The whole table of hazards, and how a recorded hazard finds its row, name and words."""

from __future__ import annotations

from dataclasses import replace

from service.handling.hazards.entry import DESK, HazardEntry, practice
from service.handling.hazards.table_arms import ARMS
from service.handling.hazards.table_film import FILM_AND_PLASTICS
from service.handling.hazards.table_living import LIVING
from service.handling.hazards.table_metals import METALS
from service.handling.hazards.table_physical import PHYSICAL
from service.handling.hazards.table_poisons import POISONS
from service.handling.hazards.table_radiation import RADIATION_AND_ASBESTOS
from service.handling.hazards.table_vessels import VESSELS
from service.handling.rule import Rule
from service.records.record import Collection, Hazard, HazardState
from service.sentence import Sentence

HAZARDS: dict[str, HazardEntry] = {
    **METALS,
    **RADIATION_AND_ASBESTOS,
    **FILM_AND_PLASTICS,
    **POISONS,
    **VESSELS,
    **ARMS,
    **PHYSICAL,
    **LIVING,
}

_ASK_FIRST = "Whoever does not know what is inside asks before opening or handling it."

DISCREET = HazardEntry(
    "Do not open",
    ("ask-first",),
    "Ask before opening or moving.",
    "As those who are asked say",
    DESK,
    practice("discreet", _ASK_FIRST),
    urgency=1,
)
_UNLISTED = practice("unlisted", _ASK_FIRST)

RULES: tuple[Rule, ...] = (
    *(entry.rule for entry in HAZARDS.values()),
    DISCREET.rule,
    _UNLISTED,
)

STATE_WORDS = {
    HazardState.CONFIRMED: "confirmed",
    HazardState.PRESUMED: "presumed",
    HazardState.UNCHECKED: "not checked",
}


def find_hazard(code: str) -> HazardEntry:
    """Give the table's row for a hazard; one that is not in the list prints as it is written."""
    found = HAZARDS.get(code)
    if found is not None:
        return found
    return HazardEntry(
        code.replace("-", " ").strip().capitalize(),
        ("caution",),
        "Ask before opening or handling.",
        "As those who are asked say",
        DESK,
        _UNLISTED,
    )


def word_hazard(hazard: Hazard) -> HazardEntry:
    """Give the row of a recorded hazard, with the museum's own first precaution if it has one."""
    entry = find_hazard(hazard.code)
    return replace(entry, instruction=hazard.instruction) if hazard.instruction else entry


def name_hazard(hazard: Hazard) -> str:
    """Name a hazard with its state in full words, for the inside of the house."""
    return head_hazard(find_hazard(hazard.code).name, STATE_WORDS[hazard.state])


def head_hazard(name: str, state: str) -> Sentence:
    """Write a hazard and how much is known of it; the state is empty where it is not told."""
    # The template is the phrase that catalogues of handling have of a state.
    return Sentence(f"{{hazard}} {state}", hazard=Sentence(name)) if state else Sentence(name)


def reword_hazards(collection: Collection) -> Collection:
    """Word the hazards of every object as the museum wishes; one worded in its record stays so."""
    words = {one.code: one.instruction for one in collection.museum.hazard_words}
    if not words:
        return collection

    def reword(hazard: Hazard) -> Hazard:
        own = hazard.instruction or words.get(hazard.code, "")
        return hazard if own == hazard.instruction else replace(hazard, instruction=own)

    objects = (
        replace(record, hazards=tuple(map(reword, record.hazards))) if record.hazards else record
        for record in collection.objects
    )
    return replace(collection, objects=tuple(objects))
