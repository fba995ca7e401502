"""Fits warning labels: the mark and its words as large as they go, then which objects, then whom.

Each hazard begins a label of its own; one with many objects goes on, under the same mark.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import suppress
from dataclasses import dataclass
from itertools import groupby

from service.cards.card import WarningLabel
from service.cards.parts import HazardGroup, Head, WarnedObject
from service.cards.words import join_words, lower_first
from service.errors import DoesNotFitError
from service.geometry import Rect, Size
from service.pages.asked.warning_words import (
    GAP_MM,
    Wording,
    set_hazard,
    set_second_foot,
    speak,
    word_group,
)
from service.pages.lid.cells import set_tag
from service.pages.lid.foot import NOBODY, NOT_AN_ASSESSMENT
from service.pages.look import HAIRLINE_MM, NEAREST_EDGE_MM, inner_rect
from service.pages.page import Align, Block, Page, Shade, ShapeBlock, TextStyle
from service.pages.ruler import Ruler
from service.pages.setting.rows import Row, share_rows, stack_rows
from service.pages.setting.stack import bottom_of, move_blocks
from service.pages.setting.text import Spot, break_number, set_number, set_text
from service.pages.setting.type import CAPTION_PT, LEAST_CAPTION_PT, LEAST_OBJECT_NUMBER_PT
from service.printed import to_print

_MARGIN_MM = NEAREST_EDGE_MM + 0.1
"""Well inside the die line, and within reach of the printer where labels fill the page."""
_MOST_NUMBER_RATIO = 0.4
_WIDE_MM = 150.0
"""From this width on, a label has a second column of objects."""
_LABEL = "warning label"
_LONGEST_PART = to_print("label {number} of {of}", number=88, of=88)

_NUMBER = TextStyle(LEAST_OBJECT_NUMBER_PT, weight=700, leading_ratio=1.2)
_TITLE = TextStyle(CAPTION_PT, leading_ratio=1.2)
_CHECK = TextStyle(CAPTION_PT, weight=600, leading_ratio=1.2)
_WHICH = TextStyle(LEAST_OBJECT_NUMBER_PT, weight=800, leading_ratio=1.15)
_PART = TextStyle(CAPTION_PT, weight=600, leading_ratio=1.2, align=Align.END)
_ASK = TextStyle(CAPTION_PT, weight=700, leading_ratio=1.2)
_NOTE = TextStyle(LEAST_CAPTION_PT, leading_ratio=1.2)


@dataclass(frozen=True, slots=True)
class _Face:
    """One label before it is numbered: its hazard, and all above the foot."""

    wording: Wording
    blocks: tuple[Block, ...]


def fit_warning_label(card: WarningLabel, size: Size, ruler: Ruler) -> tuple[Page, ...]:
    """Lay out the labels of a container, those of one hazard one behind the other.

    Raises:
        DoesNotFitError: When the words of a hazard leave no room for its objects.
    """
    inside = inner_rect(size, _MARGIN_MM)
    faces = [face for group in card.groups for face in _share_out(ruler, card.head, group, inside)]
    head = card.head
    pages = []
    for number, face in enumerate(faces, start=1):
        part = (
            to_print("label {number} of {of}", number=number, of=len(faces))
            if len(faces) > 1
            else ""
        )
        foot = _set_foot(ruler, head, face.wording, inside, part)
        blocks = (*face.blocks, *foot)
        page = Page(card.kind, head.container_number, head.title, number, len(faces), size, blocks)
        pages.append(page)
    return tuple(pages)


def _share_out(ruler: Ruler, head: Head, group: HazardGroup, inside: Rect) -> list[_Face]:
    """Share the objects of a hazard between labels; what is worn at worst gives way first.

    Raises:
        DoesNotFitError: When the words alone are higher than a label.
    """
    *tried, last = word_group(group)
    for wording in tried:
        with suppress(DoesNotFitError):
            return _share_in_both(ruler, head, wording, inside)
    return _share_in_both(ruler, head, last, inside)


def _share_in_both(ruler: Ruler, head: Head, wording: Wording, inside: Rect) -> list[_Face]:
    """Add the second language as large as costs no further label and none of the English.

    Raises:
        DoesNotFitError: When the English words alone are higher than a label.
    """
    english = list(_share(ruler, head, wording, inside))
    for spoken in speak(wording, head.second):
        with suppress(DoesNotFitError):
            both = list(_share(ruler, head, spoken, inside))
            if len(both) == len(english):
                return both
    return english


def _share(ruler: Ruler, head: Head, wording: Wording, inside: Rect) -> Iterator[_Face]:
    """Share the objects of a hazard between labels; there is always one.

    Raises:
        DoesNotFitError: When the words alone are higher than a label.
    """
    above = set_hazard(ruler, wording, inside)
    foot = _set_foot(ruler, head, wording, inside, _LONGEST_PART)
    top_mm = bottom_of(above)
    room_mm = min(block.rect.y_mm for block in foot) - 1.0 - top_mm
    if room_mm < 0:
        needed_mm, available_mm = inside.height_mm - room_mm, inside.height_mm
        raise DoesNotFitError(_LABEL, needed_mm=needed_mm, available_mm=available_mm)
    count = 2 if inside.width_mm > _WIDE_MM else 1
    step_mm = (inside.width_mm + GAP_MM) / count
    columns = share_rows(list(_make_rows(ruler, wording.group, step_mm - GAP_MM)), room_mm)
    for start in range(0, len(columns), count):
        rows = [
            block
            for index, column in enumerate(columns[start : start + count])
            for block in stack_rows(column, inside.x_mm + index * step_mm, top_mm)
        ]
        yield _Face(wording, (*above, *rows))


def _make_rows(ruler: Ruler, group: HazardGroup, width_mm: float) -> Iterator[Row]:
    """Give a row for each object, under a heading that says since when it is known."""
    mixed = len({item.state for item in group.objects}) > 1
    for known, items in groupby(group.objects, key=lambda item: (item.state, item.checked)):
        words = join_words((known[0] if mixed else "", known[1]))
        heading = _set_heading(ruler, words, width_mm) if words else None
        for item in items:
            yield _set_object(ruler, item, width_mm, heading)


def _set_heading(ruler: Ruler, words: str, width_mm: float) -> Row:
    said = words[:1].upper() + words[1:]
    block = set_text(ruler, said, _CHECK, Spot(0, 0.9, width_mm), "check")
    return Row((block,), block.rect.bottom_mm)


def _set_object(ruler: Ruler, item: WarnedObject, width_mm: float, heading: Row | None) -> Row:
    tag = set_tag(ruler, item.place, Spot(0, 0.4, 0), _NUMBER)
    x_mm = tag[0].rect.right_mm + 1.4 if tag else 0.0
    most_mm = max(width_mm * _MOST_NUMBER_RATIO, width_mm / 2 - x_mm)
    number_mm = min(ruler.width_mm(item.object_number, _NUMBER) + 0.2, most_mm)
    lines = break_number(ruler, item.object_number, _NUMBER, width_mm=number_mm)
    number_mm = max(ruler.width_mm(line, _NUMBER) for line in lines) + 0.2
    number = set_number(
        ruler, item.object_number, _NUMBER, Spot(x_mm, 0.4, number_mm), "object-number"
    )
    x_mm += number_mm + 2.0
    down_mm = 0.4 + (_NUMBER.leading_mm - _TITLE.leading_mm) / 2
    title = set_text(ruler, item.title, _TITLE, Spot(x_mm, down_mm, width_mm - x_mm, 1), "title")
    return Row((*tag, number, title), max(number.rect.bottom_mm, title.rect.bottom_mm), heading)


def _set_foot(
    ruler: Ruler, head: Head, wording: Wording, inside: Rect, part: str
) -> tuple[Block, ...]:
    """Set what to wear, which container it is, whom to ask, and what such a label is not."""
    rule = ShapeBlock("rule", Rect(inside.x_mm, 0, inside.width_mm, HAIRLINE_MM), Shade.BLACK)
    version = join_words((part, head.check_letters))
    version_mm = ruler.width_mm(version, _PART) + 0.2
    which_mm = inside.width_mm - version_mm - GAP_MM
    at_right = Spot(inside.right_mm - version_mm, 1.2, version_mm)
    which = f"{head.kind_words} {head.container_number}"
    worn = lower_first(wording.group.protection)
    blocks: list[Block] = [
        rule,
        set_number(ruler, which, _WHICH, Spot(inside.x_mm, 1.0, which_mm), "container-number"),
        set_text(ruler, version, _PART, at_right, "part"),
    ]
    asked = join_words((head.questions or NOBODY, wording.group.ask), between=to_print("; or "))
    for purpose, words, style in (
        ("protection", to_print("Protection: {worn}", worn=worn) if worn else "", _CHECK),
        ("questions", to_print("Ask first: {asked}", asked=asked), _ASK),
        ("disclaimer", NOT_AN_ASSESSMENT, _NOTE),
    ):
        if not words:
            continue
        if purpose == "disclaimer":
            blocks += set_second_foot(ruler, wording, _below(blocks, inside))
        blocks.append(set_text(ruler, words, style, _below(blocks, inside), purpose))
    return move_blocks(blocks, 0, inside.bottom_mm - bottom_of(blocks))


def _below(blocks: Sequence[Block], inside: Rect) -> Spot:
    return Spot(inside.x_mm, bottom_of(blocks) + 0.3, inside.width_mm)
