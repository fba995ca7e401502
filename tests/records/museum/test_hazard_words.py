from __future__ import annotations

from service.records.museum.hazard_words import HazardWords


def test_words_of_one_hazard_are_equal_where_they_say_the_same() -> None:
    """A museum whose words were read again has changed nothing."""
    assert HazardWords("lead", "Mittens.") == HazardWords("lead", "Mittens.")
    assert HazardWords("lead", "Mittens.") != HazardWords("lead", "Gloves.")
