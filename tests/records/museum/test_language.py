"""Tests for the list of languages."""

from __future__ import annotations

from service.records.museum.language import LANGUAGE_NAMES, Language


def test_every_language_has_a_name() -> None:
    """English can name each, but for none."""
    assert [*LANGUAGE_NAMES] == [one for one in Language if one is not Language.NONE]
