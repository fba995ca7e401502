"""Choices of the records in the words of the reader, as pairs of code and words."""

from __future__ import annotations

from service.cards.words import KIND_WORDS
from service.handling.hazards import HAZARDS, STATE_WORDS
from service.languages.saying import said
from service.records.codes import HAZARD_CODES
from service.records.record import ContainerKind, Lid, PhotoRole
from service.web.views.language.tables import spell

Choices = list[tuple[str, str]]


def list_kinds() -> Choices:
    """List the kinds of container."""
    return [(kind.value, said(KIND_WORDS[kind])) for kind in ContainerKind]


def list_lids() -> Choices:
    """List what a lid may be."""
    return [(lid.value, said(spell(lid.value))) for lid in Lid]


def list_hazards() -> Choices:
    """List the hazards that can be recorded, in the order of their names."""
    named = [(code, said(HAZARDS[code].name)) for code in HAZARD_CODES if code in HAZARDS]
    return sorted(named, key=lambda choice: choice[1].casefold())


def list_states() -> Choices:
    """List how sure a hazard may be."""
    return [(state.value, said(words.capitalize())) for state, words in STATE_WORDS.items()]


def list_sides() -> Choices:
    """List what a photo may show."""
    return [(role.value, said(spell(role.value))) for role in PhotoRole]
