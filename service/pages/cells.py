"""The cells of a contents card: picture, place, number, title and the object's own marks."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from service.cards.card import CardObject
from service.cards.warn import MARKS_BESIDE
from service.geometry import Point, Rect
from service.pages.grid import CaptionNeeds, GridPlan
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
from service.pages.stack import bottom_of, move_blocks
from service.pages.text import Spot, break_number, longest_piece_mm, set_number, set_text
from service.pages.type import CAPTION_PT, LEAST_OBJECT_NUMBER_PT, OBJECT_NUMBER_PT

_LONGEST_NUMBER_MM = 46.0
_LEAST_TITLE_MM = 15.0
_TAG_PADDING_MM = 1.0
_MARK_GAP_MM = 0.8
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
        """The side of a mark: two lines of the title, but never too small for its strokes."""
        return max(6.5, 2 * self.title.leading_mm)


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
    number_mm = max(least_mm, min(natural_mm, _LONGEST_NUMBER_MM)) + 0.2
    lines = max(
        (len(break_number(ruler, number, scale.number, width_mm=number_mm)) for number in numbers),
        default=1,
    )
    marks = max((min(len(item.marks), MARKS_BESIDE) for item in objects), default=0)
    marks_mm = marks * (scale.mark_mm + _MARK_GAP_MM)
    titles = 2 + any(item.aside for item in objects)
    height_mm = lines * scale.number.leading_mm + titles * scale.title.leading_mm
    return CaptionNeeds(
        width_mm=max(tag_mm + number_mm, _LEAST_TITLE_MM + marks_mm),
        below_mm=height_mm,
        beside_mm=height_mm + (scale.mark_mm + _GAP_MM if marks else 0.0),
        gap_mm=_GAP_MM,
    )


def set_cell(
    ruler: Ruler, item: CardObject, corner: Point, plan: GridPlan, scale: Scale
) -> tuple[Block, ...]:
    """Set one object into its cell, whose top left corner is `corner`."""
    frame = Rect(corner.x_mm, corner.y_mm, plan.frame.width_mm, plan.frame.height_mm)
    cell = Rect(corner.x_mm, corner.y_mm, plan.cell.width_mm, plan.cell.height_mm)
    if plan.beside:
        x_mm = frame.right_mm + _GAP_MM
        area = Rect(x_mm, cell.y_mm, cell.right_mm - x_mm, cell.height_mm)
        return (
            *set_picture(ruler, item, frame, down=Align.START),
            *_caption_beside(ruler, item, area, scale),
        )
    area = Rect(cell.x_mm, frame.bottom_mm + _GAP_MM, cell.width_mm, 0)
    return (
        *set_picture(ruler, item, frame, down=Align.END),
        *_caption_below(ruler, item, area, scale),
    )


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


def _caption_below(
    ruler: Ruler, item: CardObject, area: Rect, scale: Scale
) -> tuple[Block, ...]:
    named = _set_numbered(ruler, item, area, scale)
    y_mm = bottom_of(named)
    marks = item.marks[:MARKS_BESIDE]
    marks_mm = len(marks) * (scale.mark_mm + _MARK_GAP_MM)
    spot = Spot(area.x_mm, y_mm, area.width_mm - marks_mm, 2)
    titled = _set_titled(ruler, item, spot, scale, aside_lines=1)
    placed = _set_marks(marks, area.right_mm - marks_mm + _MARK_GAP_MM, y_mm + 0.2, scale)
    return (*named, *titled, *placed)


def _caption_beside(
    ruler: Ruler, item: CardObject, area: Rect, scale: Scale
) -> tuple[Block, ...]:
    named = _set_numbered(ruler, item, area, scale)
    y_mm = bottom_of(named) + 0.3
    marks = item.marks[:MARKS_BESIDE]
    room_mm = area.bottom_mm - y_mm - (scale.mark_mm + _GAP_MM if marks else 0.0)
    lines = max(1, int(room_mm / scale.title.leading_mm))
    aside_lines = min(2, lines - 1) if item.aside else 0
    spot = Spot(area.x_mm, y_mm, area.width_mm, lines - aside_lines)
    titled = _set_titled(ruler, item, spot, scale, aside_lines=aside_lines)
    return (*named, *titled, *_set_marks(marks, area.x_mm, bottom_of(titled) + _GAP_MM, scale))


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


def _set_titled(
    ruler: Ruler, item: CardObject, spot: Spot, scale: Scale, *, aside_lines: int
) -> tuple[Block, ...]:
    title = set_text(ruler, item.title, scale.title, spot, "caption")
    if not item.aside or not aside_lines:
        return (title,)
    style = TextStyle(scale.title_pt, leading_ratio=1.18, shade=Shade.GREY)
    below = Spot(spot.x_mm, title.rect.bottom_mm, spot.width_mm, aside_lines)
    return (title, set_text(ruler, item.aside, style, below, "aside"))


def _set_marks(
    marks: Sequence[tuple[str, str]], x_mm: float, y_mm: float, scale: Scale
) -> tuple[Block, ...]:
    side_mm = scale.mark_mm
    return tuple(
        MarkBlock(
            "object-mark", Rect(x_mm + index * (side_mm + 0.8), y_mm, side_mm, side_mm), mark, words
        )
        for index, (mark, words) in enumerate(marks)
    )
