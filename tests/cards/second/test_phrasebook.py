"""Tests for finding the words that stand beside English ones."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.cards.second.made import MADE_UP


@pytest.mark.parametrize(
    ("heading", "said"),
    [
        ("Lead presumed", "Ołów (przypuszczalnie)"),
        ("Lead", "Ołów"),
        ("Phosphorus presumed", ""),
        ("", ""),
    ],
)
def test_a_hazard_is_named_with_its_state(heading: str, said: str) -> None:
    """Name and state are put together as the language does; an unknown name has no other."""
    assert MADE_UP.say_hazard(heading) == said


@pytest.mark.parametrize(
    ("limit", "said"),
    [
        ("At most 12 boxes on top", "Pudła na wierzchu: najwyżej 12"),
        ("Heavy end: left", "Ciężki koniec"),
        ("Lift the tray out by its tapes", ""),
    ],
)
def test_a_limit_keeps_its_figure(limit: str, said: str) -> None:
    """Figures carry over; of what people wrote themselves only the label is said again."""
    assert MADE_UP.say_limit(limit) == said


def test_an_unreviewed_translation_says_so() -> None:
    """The note names the language, and goes once a specialist has read the words."""
    assert MADE_UP.note == "Polish words: translation not reviewed by a specialist"
    assert not replace(MADE_UP, is_reviewed=True).note
