"""Tests for the list of what is to be translated."""

from __future__ import annotations

from service.cards.second.phrases import list_entries, list_phrases
from service.handling.hazards import HAZARDS


def test_each_phrase_is_listed_once() -> None:
    """Nothing is listed twice or empty; words for outside and for the unlisted are there."""
    phrases = list_phrases()
    assert len(phrases) == len(set(phrases))
    assert "" not in phrases
    assert {"Arsenic", "Do not open", "Ask before opening or handling.", "Ask first"} <= {*phrases}
    assert {"{hazard} confirmed", "{hazard} presumed", "{hazard} not checked"} <= {*phrases}
    assert {"One person: keep close to the body.", "Weigh before lifting."} <= {*phrases}


def test_every_hazard_has_its_words_listed() -> None:
    """All rows of the table are there, and the two that stand for others."""
    assert len(list_entries()) == len(HAZARDS) + 2
