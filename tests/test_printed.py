"""Tests for the mark of printed words."""

from __future__ import annotations

from service.printed import to_print


def test_words_are_printed_as_they_are_marked() -> None:
    """Values stand in their places; braces in what has no values, or in a value, stay."""
    assert to_print("Ask first") == "Ask first"
    assert to_print("card {number} of {of}", number=1, of=2) == "card 1 of 2"
    assert to_print("{kg:.1f} kg", kg=2) == "2.0 kg"
    assert to_print("{title}", title="{oak}") == "{oak}"
    assert to_print("{bar:g} mm") == "{bar:g} mm"
