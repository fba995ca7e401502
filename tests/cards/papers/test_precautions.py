"""Tests for what papers say whatever is recorded."""

from __future__ import annotations

from service.cards.papers.precautions import ISOLATED, PRECAUTIONS, SILENT


def test_each_is_listed_once() -> None:
    """All of them can be said in a second language, and none promises anything."""
    assert len(PRECAUTIONS) == len({*PRECAUTIONS}) == 6
    assert {ISOLATED, SILENT} <= {*PRECAUTIONS}
    assert all(words == ISOLATED or words.endswith(".") for words in PRECAUTIONS)
