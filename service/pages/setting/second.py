"""Sets the words of a second language: regular and small, after the English they stand beside."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from service.cards.parts import SecondWords
from service.pages.page import Direction, TextBlock, TextStyle
from service.pages.ruler import Ruler
from service.pages.setting.text import Spot, set_text
from service.pages.setting.type import LEAST_CAPTION_PT, caps_mm

PURPOSE = "second"
_GAP_MM = 1.2
STYLE = TextStyle(LEAST_CAPTION_PT, leading_ratio=1.18)


def set_second(
    ruler: Ruler,
    second: SecondWords | None,
    english: Sequence[str],
    spot: Spot,
    style: TextStyle = STYLE,
) -> tuple[TextBlock, ...]:
    """Set what stands beside some English words; nothing where nothing does.

    A spot without a width takes the words in one line.
    """
    words = second.beside(*english) if second else ""
    return set_said(ruler, second, words, spot, style)


def set_beside(
    ruler: Ruler,
    second: SecondWords | None,
    english: str,
    block: TextBlock,
    style: TextStyle = STYLE,
) -> tuple[TextBlock, ...]:
    """Set second words behind the last line of a block, on its base line, or else below it."""
    below = Spot(block.rect.x_mm, block.rect.bottom_mm, block.rect.width_mm)
    gap_mm = _GAP_MM * style.size_pt / STYLE.size_pt
    x_mm = block.rect.x_mm + ruler.width_mm(block.lines[-1], block.style) + gap_mm
    said = set_second(ruler, second, (english,), Spot(x_mm, 0, 0), style)
    starts_left = block.direction is Direction.LEFT_TO_RIGHT
    if not starts_left or (said and said[0].rect.right_mm > block.rect.right_mm):
        return set_second(ruler, second, (english,), below, style)
    lower_mm = (caps_mm(block.style.size_pt) - caps_mm(style.size_pt)) / 2
    down_mm = block.rect.bottom_mm - (block.style.leading_mm + style.leading_mm) / 2 + lower_mm
    return tuple(replace(one, rect=one.rect.moved(0, down_mm)) for one in said)


def set_said(
    ruler: Ruler, second: SecondWords | None, words: str, spot: Spot, style: TextStyle = STYLE
) -> tuple[TextBlock, ...]:
    """Set words of the second language as they are; nothing where there are none."""
    if second is None or not words:
        return ()
    style = replace(style, language=second.language)
    width_mm = spot.width_mm or ruler.width_mm(words, style) + 0.1
    return (set_text(ruler, words, style, replace(spot, width_mm=width_mm), PURPOSE),)


def names_only(second: SecondWords) -> SecondWords:
    """Leave out whole sentences, which take most room: what stays names things."""
    words = tuple(pair for pair in second.words if not pair[0].endswith("."))
    return replace(second, words=words)
