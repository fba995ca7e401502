"""What stands on every page of a lid card, and the space it leaves for the contents."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from service.cards.card import LidCard, SideCard
from service.errors import DoesNotFitError
from service.geometry import Rect, Size
from service.pages.lid.foot import set_foot
from service.pages.lid.head import HeadText, set_head
from service.pages.lid.strip import set_strip
from service.pages.look import HAIRLINE_MM, inner_rect, look_for
from service.pages.page import Block, MarkBlock, Page, Shade, ShapeBlock, TextStyle
from service.pages.ruler import Ruler
from service.pages.setting.stack import bottom_of
from service.pages.setting.text import Spot, set_text
from service.pages.setting.type import LEAST_OBJECT_NUMBER_PT
from service.printed import to_print

LEAST_AREA_MM = 30.0
"""Below a picture of the least size with its caption a space counts as full."""
LEAST_LIST_MM = 9.0
"""On a card without pictures two lines are worth printing."""
_BREATH_MM = 2.0
STRIP = "handling strip"
_SMALL_MARK_MM = 8.0
_REMINDER = to_print("Lifting and hazards: see card 1")


@dataclass(frozen=True, slots=True)
class CardSpace:
    """Blocks above and below and the area between them, on page `number` of `of`."""

    number: int
    of: int
    size: Size
    above: tuple[Block, ...]
    below: tuple[Block, ...]
    area: Rect
    least_mm: float = LEAST_AREA_MM

    @property
    def is_full(self) -> bool:
        """Whether handling leaves no room for contents worth printing."""
        return self.area.height_mm < self.least_mm


def make_spaces(card: LidCard | SideCard, size: Size, ruler: Ruler, *, of: int) -> list[CardSpace]:
    """Make the spaces of all pages of a card that has `of` of them.

    Raises `DoesNotFitError` when head, handling and foot are higher than a page.
    """
    return [make_space(card, size, ruler, number=number, of=of) for number in range(1, of + 1)]


def make_space(
    card: LidCard | SideCard, size: Size, ruler: Ruler, *, number: int, of: int
) -> CardSpace:
    """Set head, handling and foot of one page; only the first carries the whole strip.

    Raises:
        DoesNotFitError: When they are higher than the page: handling is never set over the foot.
    """
    look = look_for(size)
    inside = inner_rect(size, look.margin_mm)
    part = to_print("card {number} of {of}", number=number, of=of) if of > 1 else ""
    head = set_head(ruler, card.head, HeadText((card.count_words,), part), inside, look)
    top_mm = bottom_of(head) + _BREATH_MM
    strip_area = Rect(inside.x_mm, top_mm, inside.width_mm, 0)
    if number == 1:
        strip = set_strip(ruler, card.handling, strip_area, card.head.second)
    else:
        strip = _set_reminder(ruler, card, strip_area)
    rule_mm = bottom_of(strip) + _BREATH_MM * 0.8
    rule = ShapeBlock("rule", Rect(inside.x_mm, rule_mm, inside.width_mm, HAIRLINE_MM), Shade.BLACK)
    foot = set_foot(ruler, card.head, card.orientation, inside)
    start_mm = rule.rect.bottom_mm + _BREATH_MM
    height_mm = min(block.rect.y_mm for block in foot) - _BREATH_MM - start_mm
    over_mm = -height_mm - 2 * _BREATH_MM
    if over_mm > 0:
        needed_mm = size.height_mm + over_mm
        raise DoesNotFitError(STRIP, needed_mm=needed_mm, available_mm=size.height_mm)
    area = Rect(inside.x_mm, start_mm, inside.width_mm, height_mm)
    least_mm = LEAST_LIST_MM if isinstance(card, SideCard) else LEAST_AREA_MM
    return CardSpace(number, of, size, (*head, *strip, rule), foot, area, least_mm)


def finish_page(card: LidCard | SideCard, space: CardSpace, contents: Sequence[Block]) -> Page:
    """Put the contents between head and foot."""
    return Page(
        kind=card.kind,
        container_number=card.head.container_number,
        title=card.head.title,
        number=space.number,
        of=space.of,
        size=space.size,
        blocks=(*space.above, *contents, *space.below),
    )


def _set_reminder(ruler: Ruler, card: LidCard | SideCard, area: Rect) -> tuple[Block, ...]:
    """Say on a further card where lifting and hazards stand, with the marks themselves."""
    marks = list(dict.fromkeys((warn.mark, warn.heading) for warn in card.handling.hazards))
    step_mm = _SMALL_MARK_MM + 1.5
    style = TextStyle(LEAST_OBJECT_NUMBER_PT, weight=700, leading_ratio=1.2)
    words_mm = ruler.width_mm(_REMINDER, style) + 0.2
    columns = max(1, int(area.width_mm / step_mm))
    blocks: list[Block] = []
    for index, (mark, words) in enumerate(marks):
        row, column = divmod(index, columns)
        rect = Rect(
            area.x_mm + column * step_mm,
            area.y_mm + row * step_mm,
            _SMALL_MARK_MM,
            _SMALL_MARK_MM,
        )
        blocks.append(MarkBlock("mark", rect, mark, words))
    row, column = divmod(len(marks), columns)
    if area.x_mm + column * step_mm + words_mm > area.right_mm:
        row, column = row + 1, 0
    down_mm = (_SMALL_MARK_MM - style.leading_mm) / 2 if marks else 0.0
    spot = Spot(area.x_mm + column * step_mm, area.y_mm + row * step_mm + down_mm, words_mm)
    return (*blocks, set_text(ruler, _REMINDER, style, spot, "reminder"))
