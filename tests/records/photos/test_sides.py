"""Tests for the words that say which side a photo shows."""

from __future__ import annotations

import pytest

from service.records.photos.sides import find_role
from service.records.record import PhotoRole


@pytest.mark.parametrize(
    ("words", "role"),
    [
        ("front", PhotoRole.FRONT),
        ("vorne", PhotoRole.FRONT),
        ("recto 2", PhotoRole.FRONT),
        ("back", PhotoRole.BACK),
        ("rückseite", PhotoRole.BACK),
        ("verso", PhotoRole.BACK),
        ("detail 02", PhotoRole.DETAIL),
        ("back detail", PhotoRole.DETAIL),
        ("front back", PhotoRole.DETAIL),
        ("hat 2", None),
        ("", None),
    ],
)
def test_words_name_sides(words: str, role: PhotoRole | None) -> None:
    """A word for a side says it; a detail of a side is a detail; other words say nothing."""
    assert find_role(words.split()) is role
