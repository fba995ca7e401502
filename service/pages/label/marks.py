"""The row of an end label that says what the hands must know: weight, advice, marks."""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import suppress
from dataclasses import dataclass

from service.cards.card import EndLabel
from service.cards.parts import Warn
from service.errors import DoesNotFitError
from service.geometry import TOLERANCE_MM, Point, Rect
from service.handling.lifting.effort import ADVICE, Effort
from service.pages.page import Block, MarkBlock, TextStyle
from service.pages.ruler import Ruler
from service.pages.setting.give_way import in_english
from service.pages.setting.second import PURPOSE
from service.pages.setting.stack import move_blocks
from service.pages.setting.text import Spot, set_text
from service.printed import to_print

_GAP_MM = 2.0
_MARK_LINES = 2
_MARKS = "row of marks"
_TOLD = frozenset(ADVICE[effort] for effort in Effort if effort > Effort.WAIST)
"""Advice that a label tells: whoever takes the container from its shelf must not be alone."""


@dataclass(frozen=True, slots=True)
class Scale:
    """Type and mark sizes of one label, which follow from its height."""

    title: TextStyle
    small: TextStyle
    mark_mm: float


@dataclass(frozen=True, slots=True)
class Space:
    """The space below the number: narrow beside the symbol, as wide as the label below it."""

    scale: Scale
    left_mm: float
    beside_mm: float
    right_mm: float
    beside_until_mm: float
    bottom_mm: float

    def edge_mm(self, y_mm: float) -> float:
        """Give the right edge for something that begins at `y_mm`."""
        return self.beside_mm if y_mm < self.beside_until_mm else self.right_mm


def set_marks(ruler: Ruler, card: EndLabel, top_mm: float, space: Space) -> tuple[Block, ...]:
    """Set the weight in figures and the marks with their words, hazards first.

    Advice that one person does not lift alone stands behind the weight, if no mark gives way to it.
    The first hazard is named in the second language too, if nothing gives way to that. Raises
    `DoesNotFitError` when a hazard has no room.
    """
    english = _set_row(ruler, in_english(card), top_mm, space)
    if card.head.second is None:
        return english
    with suppress(DoesNotFitError):
        both = _set_row(ruler, card, top_mm, space)
        if len(both) > len(english) and _stays_inside(both, space):
            return both
    return english


def _stays_inside(blocks: Sequence[Block], space: Space) -> bool:
    """Tell whether the words of the second language end before the edge of their row."""
    row_mm = next(block.rect.y_mm for block in blocks if isinstance(block, MarkBlock))
    edge_mm = space.edge_mm(row_mm) + TOLERANCE_MM
    return all(block.rect.right_mm <= edge_mm for block in blocks if block.purpose == PURPOSE)


def _set_row(ruler: Ruler, card: EndLabel, top_mm: float, space: Space) -> tuple[Block, ...]:
    figure = _set_figure(ruler, card, Point(space.left_mm, top_mm), space.scale)
    plain = _flow_marks(ruler, card, figure, top_mm, space)
    advice = _set_advice(ruler, card, figure, space.scale)
    if not advice or advice[0].rect.right_mm > space.edge_mm(top_mm):
        return plain
    with suppress(DoesNotFitError):
        worded = _flow_marks(ruler, card, (*figure, *advice), top_mm, space)
        return worded if len(worded) > len(plain) else plain
    return plain


def _flow_marks(
    ruler: Ruler, card: EndLabel, lift: Sequence[Block], y_mm: float, space: Space
) -> tuple[Block, ...]:
    """Set marks behind what is said of lifting; cautions give way where there is no room.

    Raises:
        DoesNotFitError: When a hazard has no room: a hazard is never left out.
    """
    scale, top_mm = space.scale, y_mm
    x_mm = (max(block.rect.right_mm for block in lift) + _GAP_MM) if lift else space.left_mm
    placed: list[Block] = [*lift]
    for warn in card.marks:
        widest_mm = space.right_mm - space.left_mm - scale.mark_mm - 1.0
        words_mm = min(widest_mm, _words_mm(ruler, warn.heading, scale))
        said = _set_said(ruler, card, warn, scale)
        step_mm = scale.mark_mm + 1.0 + words_mm + sum(block.rect.right_mm for block in said)
        if x_mm > space.left_mm and x_mm + step_mm > space.edge_mm(y_mm) + TOLERANCE_MM:
            x_mm, y_mm = space.left_mm, y_mm + scale.mark_mm + 0.8
        if y_mm + scale.mark_mm > space.bottom_mm + TOLERANCE_MM:
            if not warn.instruction:
                break
            needed_mm = y_mm + scale.mark_mm - top_mm
            available_mm = space.bottom_mm - top_mm
            raise DoesNotFitError(_MARKS, needed_mm=needed_mm, available_mm=available_mm)
        placed.extend(_set_mark(ruler, warn, Rect(x_mm, y_mm, words_mm, 0), scale))
        placed.extend(move_blocks(said, x_mm + scale.mark_mm + 1.0 + words_mm, y_mm))
        x_mm += step_mm + _GAP_MM
    return tuple(placed)


def _set_mark(ruler: Ruler, warn: Warn, at: Rect, scale: Scale) -> Sequence[Block]:
    side_mm = scale.mark_mm
    mark = MarkBlock("mark", Rect(at.x_mm, at.y_mm, side_mm, side_mm), warn.mark, warn.heading)
    style = TextStyle(scale.small.size_pt, 700, 1.1)
    spot = Spot(at.x_mm + side_mm + 1.0, at.y_mm, at.width_mm)
    words = set_text(ruler, warn.heading, style, spot, "mark-words")
    return (mark, *move_blocks((words,), 0, (side_mm - words.rect.height_mm) / 2))


def _set_said(ruler: Ruler, card: EndLabel, warn: Warn, scale: Scale) -> tuple[Block, ...]:
    """Set what the first hazard is called in the second language, to stand behind its words."""
    second = card.head.second
    words = second.beside(warn.heading) if second and warn is card.marks[0] else ""
    if second is None or not words:
        return ()
    style = TextStyle(scale.small.size_pt, 400, 1.1, language=second.language)
    block = set_text(ruler, words, style, Spot(1.0, 0, _words_mm(ruler, words, scale)), PURPOSE)
    return move_blocks((block,), 0, (scale.mark_mm - block.rect.height_mm) / 2)


def _words_mm(ruler: Ruler, words: str, scale: Scale) -> float:
    """Give the least width at which words stand in no more than two lines."""
    style = TextStyle(scale.small.size_pt, 700, 1.1)
    whole_mm = ruler.width_mm(words, style) + 0.2
    longest_mm = max(ruler.width_mm(word, style) for word in words.split()) + 0.2
    shares = (0.5, 0.55, 0.6, 0.65, 0.7, 0.8, 0.9)
    tried = (max(longest_mm, whole_mm * share_ratio) for share_ratio in shares)
    return next(
        (
            width_mm
            for width_mm in tried
            if len(ruler.break_text(words, style, width_mm=width_mm).lines) <= _MARK_LINES
        ),
        whole_mm,
    )


def _set_figure(ruler: Ruler, card: EndLabel, at: Point, scale: Scale) -> tuple[Block, ...]:
    if not card.lift.figure_kg:
        return ()
    at_least = card.lift.qualifier.startswith("at least")
    style = TextStyle(scale.title.size_pt * 1.25, 800, 1.0)
    words = to_print("{figure_kg} kg", figure_kg=card.lift.figure_kg) + ("+" if at_least else "")
    width_mm = ruler.width_mm(words, style) + 0.1
    block = set_text(ruler, words, style, Spot(at.x_mm, at.y_mm, width_mm), "weight")
    return move_blocks((block,), 0, (scale.mark_mm - block.rect.height_mm) / 2)


def _set_advice(
    ruler: Ruler, card: EndLabel, figure: Sequence[Block], scale: Scale
) -> tuple[Block, ...]:
    advice = card.lift.advice
    if not figure or advice not in _TOLD:
        return ()
    weight = figure[0].rect
    style = TextStyle(scale.small.size_pt, 700, 1.1)
    spot = Spot(weight.right_mm + _GAP_MM, weight.y_mm, _words_mm(ruler, advice, scale))
    words = set_text(ruler, advice, style, spot, "lift-advice")
    return move_blocks((words,), 0, (weight.height_mm - words.rect.height_mm) / 2)
