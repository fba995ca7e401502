"""The cells of a contents card: picture, place, number, title and the object's own marks."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from service.cards.compose.warn import MARKS_BESIDE
from service.cards.parts import CardObject
from service.geometry import TOLERANCE_MM, Point, Rect
from service.pages.lid.grid import GOOD_MM, CaptionNeeds, GridPlan
from service.pages.page import (
    Align,
    Block,
    MarkBlock,
    PictureBlock,
    Shade,
    ShapeBlock,
    TextStyle,
)
from service.pages.ruler import Ruler
from service.pages.setting.stack import bottom_of, move_blocks
from service.pages.setting.text import Spot, break_number, longest_piece_mm, set_number, set_text
from service.pages.setting.type import CAPTION_PT, LEAST_OBJECT_NUMBER_PT, OBJECT_NUMBER_PT

_LONGEST_NUMBER_MM = 46.0
_LONGEST_PIECE_MM = 60.0
_LEAST_TITLE_MM = 15.0
_TAG_PADDING_MM = 1.0
_MARK_GAP_MM = 0.8
_MARK_MM = 7.0
_LARGE_MARK_MM = 8.5
_GAP_MM = 1.6


@dataclass(frozen=True, slots=True)
class Scale:
    """Type sizes of a caption, and the picture it goes with at least."""

    number_pt: float
    title_pt: float
    least_picture_mm: float

    @property
    def number(self) -> TextStyle:
        """The style of an object's number."""
        return TextStyle(self.number_pt, weight=700, leading_ratio=1.18)

    @property
    def title(self) -> TextStyle:
        """The style of an object's title."""
        return TextStyle(self.title_pt, leading_ratio=1.18)

    @property
    def mark_mm(self) -> float:
        """The side of a mark beside an object."""
        return _LARGE_MARK_MM if self.least_picture_mm >= GOOD_MM else _MARK_MM


SCALES = (
    Scale(22.0, 16.0, 90.0),
    Scale(16.0, 12.0, 52.0),
    Scale(OBJECT_NUMBER_PT, 10.0, 32.0),
    Scale(10.8, CAPTION_PT, 24.0),
    Scale(LEAST_OBJECT_NUMBER_PT, CAPTION_PT, 0.0),
)
"""Largest first; the last one is the least that can be read at its distance."""


def measure_captions(ruler: Ruler, objects: Sequence[CardObject], scale: Scale) -> CaptionNeeds:
    """Work out what the captions of these objects need: the width follows the longest number."""
    numbers = [item.object_number for item in objects]
    tag_mm = max((_tag_mm(ruler, item.place, scale) for item in objects), default=0.0)
    natural_mm = max((ruler.width_mm(number, scale.number) for number in numbers), default=0.0)
    least_mm = longest_piece_mm(ruler, numbers, scale.number)
    number_mm = max(min(least_mm, _LONGEST_PIECE_MM), min(natural_mm, _LONGEST_NUMBER_MM)) + 0.2
    lines = max(
        (len(break_number(ruler, number, scale.number, width_mm=number_mm)) for number in numbers),
        default=1,
    )
    titles = 2 + any(item.aside for item in objects)
    marked = any(item.marks for item in objects)
    return CaptionNeeds(
        width_mm=max(tag_mm + number_mm, _LEAST_TITLE_MM),
        height_mm=lines * scale.number.leading_mm + titles * scale.title.leading_mm,
        gap_mm=_GAP_MM,
        marks_mm=scale.mark_mm + _GAP_MM if marked else 0.0,
    )


def set_cell(
    ruler: Ruler, item: CardObject, corner: Point, plan: GridPlan, scale: Scale
) -> tuple[Block, ...]:
    """Set one object into its cell, whose top left corner is `corner`.

    The picture stands at the left, marks at the right edge of the cell, the caption below the
    picture or between the two.
    """
    frame = Rect(corner.x_mm, corner.y_mm, plan.frame.width_mm, plan.frame.height_mm)
    cell = Rect(corner.x_mm, corner.y_mm, plan.cell.width_mm, plan.cell.height_mm)
    marks = _set_marks(item.marks[:MARKS_BESIDE], cell, scale)
    down = Align.START if plan.beside else Align.END
    picture = set_picture(ruler, item, frame, down=down)
    if plan.beside:
        x_mm = frame.right_mm + _GAP_MM
        right_mm = cell.right_mm - (scale.mark_mm + _GAP_MM if marks else 0.0)
        area = Rect(x_mm, cell.y_mm, right_mm - x_mm, cell.height_mm)
    else:
        y_mm = frame.bottom_mm + _GAP_MM
        area = Rect(cell.x_mm, y_mm, cell.width_mm, cell.bottom_mm - y_mm)
    return (*picture, *_set_caption(ruler, item, area, scale), *marks)


def set_picture(
    ruler: Ruler, item: CardObject, frame: Rect, *, down: Align = Align.CENTRE
) -> tuple[Block, ...]:
    """Set the photo at the left of its frame, or an empty frame that says why there is none."""
    alt = f"{item.object_number}: {item.title}"
    block = PictureBlock("photo", frame, item.photo, alt, across=Align.START, down=down)
    if item.photo:
        return (block,)
    style = TextStyle(CAPTION_PT, leading_ratio=1.15, align=Align.CENTRE)
    spot = Spot(frame.x_mm + 1, frame.y_mm, frame.width_mm - 2)
    words = set_text(ruler, item.photo_words, style, spot, "no-photo")
    return (block, *move_blocks((words,), 0, (frame.height_mm - words.rect.height_mm) / 2))


def _set_caption(ruler: Ruler, item: CardObject, area: Rect, scale: Scale) -> tuple[Block, ...]:
    """Set number, title and what lies elsewhere, as many lines as the area has room for."""
    named = _set_numbered(ruler, item, area, scale)
    y_mm = bottom_of(named)
    lines = max(1, int((area.bottom_mm - y_mm + TOLERANCE_MM) / scale.title.leading_mm))
    aside_lines = min(2, lines // 2) if item.aside else 0
    spot = Spot(area.x_mm, y_mm, area.width_mm, lines - aside_lines)
    title = set_text(ruler, item.title, scale.title, spot, "caption")
    if not aside_lines:
        return (*named, title)
    style = TextStyle(scale.title_pt, leading_ratio=1.18, shade=Shade.GREY)
    below = Spot(area.x_mm, title.rect.bottom_mm, area.width_mm, aside_lines)
    return (*named, title, set_text(ruler, item.aside, style, below, "aside"))


def _set_numbered(ruler: Ruler, item: CardObject, area: Rect, scale: Scale) -> tuple[Block, ...]:
    """Set the place as a tag and the number behind it."""
    tag_mm = _tag_mm(ruler, item.place, scale)
    spot = Spot(area.x_mm + tag_mm, area.y_mm, area.width_mm - tag_mm)
    number = set_number(ruler, item.object_number, scale.number, spot, "object-number")
    return (*set_tag(ruler, item.place, Spot(area.x_mm, area.y_mm, 0), scale.number), number)


def set_tag(ruler: Ruler, place: str, spot: Spot, style: TextStyle) -> tuple[Block, ...]:
    """Set a place white on black; nothing where there is none."""
    if not place:
        return ()
    white = TextStyle(
        style.size_pt * 0.9, 700, style.leading_ratio / 0.9, Align.CENTRE, Shade.WHITE
    )
    width_mm = ruler.width_mm(place, white) + 2 * _TAG_PADDING_MM
    inset_mm = style.leading_mm * 0.06
    panel = Rect(spot.x_mm, spot.y_mm + inset_mm, width_mm, style.leading_mm - 2 * inset_mm)
    words = set_text(ruler, place, white, Spot(spot.x_mm, spot.y_mm, width_mm), "place")
    return (ShapeBlock("tag", panel, Shade.BLACK, radius_mm=0.5), words)


def _tag_mm(ruler: Ruler, place: str, scale: Scale) -> float:
    if not place:
        return 0.0
    style = TextStyle(scale.number_pt * 0.9, weight=700)
    return ruler.width_mm(place, style) + 2 * _TAG_PADDING_MM + 1.4


def _set_marks(marks: Sequence[tuple[str, str]], cell: Rect, scale: Scale) -> tuple[Block, ...]:
    """Set marks in a column at the right edge of a cell, from its top."""
    side_mm = scale.mark_mm
    step_mm = side_mm + _MARK_GAP_MM
    x_mm = cell.right_mm - side_mm
    return tuple(
        MarkBlock(
            "object-mark", Rect(x_mm, cell.y_mm + index * step_mm, side_mm, side_mm), mark, words
        )
        for index, (mark, words) in enumerate(marks)
    )
