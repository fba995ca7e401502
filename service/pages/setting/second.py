"""Sets the words of a second language: regular and small, after the English they stand beside."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from service.cards.parts import SecondWords
from service.pages.page import TextBlock, TextStyle
from service.pages.ruler import Ruler
from service.pages.setting.text import Spot, set_text
from service.pages.setting.type import LEAST_CAPTION_PT

PURPOSE = "second"
STYLE = TextStyle(LEAST_CAPTION_PT, leading_ratio=1.18)


def set_second(
    ruler: Ruler, second: SecondWords | None, english: Sequence[str], spot: Spot
) -> tuple[TextBlock, ...]:
    """Set what stands beside some English words; nothing where nothing does.

    A spot without a width takes the words in one line.
    """
    words = second.beside(*english) if second else ""
    if second is None or not words:
        return ()
    style = replace(STYLE, language=second.language)
    width_mm = spot.width_mm or ruler.width_mm(words, style) + 0.1
    return (set_text(ruler, words, style, replace(spot, width_mm=width_mm), PURPOSE),)
