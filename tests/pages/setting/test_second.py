"""Tests for setting the words of a second language."""

from __future__ import annotations

from service.cards.parts import SecondWords
from service.pages.setting.second import STYLE, set_second
from service.pages.setting.text import Spot
from service.pages.setting.type import CAPTION_PT, LEAST_CAPTION_PT
from tests.pages.fake_ruler import FakeRuler

WELSH = SecondWords("cy", (("Lead", "Plwm"), ("Wash hands.", "Golchwch eich dwylo.")))
RULER = FakeRuler()


def test_words_are_set_in_their_language_and_clearly_second() -> None:
    """Regular, smaller than the English and still readable at arm's length."""
    (block,) = set_second(RULER, WELSH, ("Lead", "Wash hands."), Spot(2, 3, 60))
    assert block.whole == "Plwm. Golchwch eich dwylo."
    assert (block.language, block.style.language) == ("cy", "cy")
    assert block.style.weight == 400
    assert LEAST_CAPTION_PT <= STYLE.size_pt < CAPTION_PT


def test_what_has_no_words_takes_no_room() -> None:
    """Without a second language, or without words in it, there is no block."""
    assert set_second(RULER, None, ("Lead",), Spot(0, 0, 60)) == ()
    assert set_second(RULER, WELSH, ("Radium",), Spot(0, 0, 60)) == ()


def test_a_spot_without_width_takes_one_line() -> None:
    """The block is as wide as its words."""
    (block,) = set_second(RULER, WELSH, ("Wash hands.",), Spot(0, 0, 0))
    assert block.lines == ("Golchwch eich dwylo.",)
