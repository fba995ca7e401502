"""Fits warning labels: the mark and its words as large as they go, then which objects, then whom.

Each hazard begins a label of its own; one with many objects goes on, under the same mark.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from contextlib import suppress
from dataclasses import dataclass, replace
from itertools import groupby

from service.cards.card import WarningLabel
from service.cards.parts import HazardGroup, Head, WarnedObject
from service.cards.words import join_words, lower_first
from service.errors import DoesNotFitError
from service.geometry import Rect, Size
from service.pages.lid.cells import set_tag
from service.pages.lid.foot import NOBODY, NOT_AN_ASSESSMENT
from service.pages.look import HAIRLINE_MM, NEAREST_EDGE_MM, RULE_MM, inner_rect
from service.pages.page import Align, Block, MarkBlock, Page, Shade, ShapeBlock, TextStyle
from service.pages.ruler import Ruler
from service.pages.setting.rows import Row, share_rows, stack_rows
from service.pages.setting.stack import bottom_of, move_blocks
from service.pages.setting.text import Spot, break_number, set_number, set_text
from service.pages.setting.type import CAPTION_PT, LEAST_CAPTION_PT, LEAST_OBJECT_NUMBER_PT

_MARGIN_MM = NEAREST_EDGE_MM + 0.1
"""Well inside the die line, and within reach of the printer where labels fill the page."""
_GAP_MM = 3.5
_MARK_RATIO = 0.5
"""Of the height, or of half the width: a mark is as large as leaves room for its words."""
_LARGEST_MARK_MM = 34.0
_NAME_SIZES_PT = (26.0, 24.0, 22.0, 20.0, 17.0, 14.0)
_SMALL_NAME_SIZES_PT = (17.0, 15.5, 14.0)
"""Where there is little room: still read from more than a metre away."""
_LEAST_ONE_LINE_PT = 20.0
"""A name goes into two lines rather than below this size."""
_MOST_NAME_LINES = 2
_MOST_NUMBER_RATIO = 0.4
_WIDE_MM = 150.0
"""From this width on, a label has a second column of objects."""
_LABEL = "warning label"
_LONGEST_PART = "label 88 of 88"

_STATE = TextStyle(13.0, weight=600, leading_ratio=1.15)
_INSTRUCTION = TextStyle(11.5, weight=700, leading_ratio=1.15)
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

    group: HazardGroup
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
        part = f"label {number} of {len(faces)}" if len(faces) > 1 else ""
        foot = _set_foot(ruler, head, face.group, inside, part)
        blocks = (*face.blocks, *foot)
        page = Page(card.kind, head.container_number, head.title, number, len(faces), size, blocks)
        pages.append(page)
    return tuple(pages)


def _share_out(ruler: Ruler, head: Head, group: HazardGroup, inside: Rect) -> list[_Face]:
    """Share the objects of a hazard between labels; what is worn at worst gives way first.

    Raises:
        DoesNotFitError: When the words alone are higher than a label.
    """
    usual = replace(group, protection=_shorten(group.protection))
    for words in (group, usual):
        with suppress(DoesNotFitError):
            return list(_share(ruler, head, words, inside, _NAME_SIZES_PT))
    return list(_share(ruler, head, usual, inside, _SMALL_NAME_SIZES_PT))


def _shorten(protection: str) -> str:
    """Keep what is always worn, and say where the rest stands."""
    usual, more, _ = protection.partition(";")
    return f"{usual}; more on the contents list" if more else usual


def _share(
    ruler: Ruler, head: Head, group: HazardGroup, inside: Rect, sizes_pt: Sequence[float]
) -> Iterator[_Face]:
    """Share the objects of a hazard between labels; there is always one.

    Raises:
        DoesNotFitError: When the words alone are higher than a label.
    """
    above = _set_hazard(ruler, group, inside, sizes_pt)
    foot = _set_foot(ruler, head, group, inside, _LONGEST_PART)
    top_mm = bottom_of(above)
    room_mm = min(block.rect.y_mm for block in foot) - 1.0 - top_mm
    if room_mm < 0:
        needed_mm, available_mm = inside.height_mm - room_mm, inside.height_mm
        raise DoesNotFitError(_LABEL, needed_mm=needed_mm, available_mm=available_mm)
    count = 2 if inside.width_mm > _WIDE_MM else 1
    step_mm = (inside.width_mm + _GAP_MM) / count
    columns = share_rows(list(_make_rows(ruler, group, step_mm - _GAP_MM)), room_mm)
    for start in range(0, len(columns), count):
        rows = [
            block
            for index, column in enumerate(columns[start : start + count])
            for block in stack_rows(column, inside.x_mm + index * step_mm, top_mm)
        ]
        yield _Face(group, (*above, *rows))


def _set_hazard(
    ruler: Ruler, group: HazardGroup, inside: Rect, sizes_pt: Sequence[float]
) -> tuple[Block, ...]:
    """Set the mark, and beside it the name, how much is known, and what to do."""
    widest_mm = min(_LARGEST_MARK_MM, inside.width_mm * _MARK_RATIO / 2)
    side_mm = min(inside.height_mm * _MARK_RATIO, widest_mm)
    mark = MarkBlock(
        "mark", Rect(inside.x_mm, inside.y_mm, side_mm, side_mm), group.mark, group.name
    )
    x_mm = inside.x_mm + side_mm + _GAP_MM
    width_mm = inside.right_mm - x_mm
    name = set_text(
        ruler,
        group.name,
        _name_style(ruler, group.name, width_mm, sizes_pt),
        Spot(x_mm, 0, width_mm),
        "hazard",
    )
    words: list[Block] = [name]
    for purpose, said, style in (
        ("state", _write_states(group.objects), _STATE),
        ("instruction", group.instruction, _INSTRUCTION),
    ):
        if said:
            spot = Spot(x_mm, bottom_of(words) + 0.6, width_mm)
            words.append(set_text(ruler, said, style, spot, purpose))
    height_mm = max(side_mm, bottom_of(words))
    down_mm = inside.y_mm + (height_mm - bottom_of(words)) / 2
    rule = ShapeBlock(
        "rule",
        Rect(inside.x_mm, inside.y_mm + height_mm + 2.0, inside.width_mm, RULE_MM),
        Shade.BLACK,
    )
    (centred,) = move_blocks((mark,), 0, (height_mm - side_mm) / 2)
    return (centred, *move_blocks(words, 0, down_mm), rule)


def _name_style(ruler: Ruler, name: str, width_mm: float, sizes_pt: Sequence[float]) -> TextStyle:
    """Take the largest type in which the name takes one line, or two, and breaks no word."""
    styles = [TextStyle(size_pt, weight=800, leading_ratio=1.0) for size_pt in sizes_pt]
    for most in range(1, _MOST_NAME_LINES + 1):
        for style in styles:
            if most == 1 and style.size_pt < min(_LEAST_ONE_LINE_PT, sizes_pt[0]):
                break
            whole = max(ruler.width_mm(word, style) for word in name.split()) <= width_mm
            if whole and len(ruler.break_text(name, style, width_mm=width_mm).lines) <= most:
                return style
    return styles[-1]


def _write_states(objects: Sequence[WarnedObject]) -> str:
    """Say how much is known: one word where it is the same of all, else how many of each."""
    states = Counter(item.state for item in objects)
    if len(states) == 1:
        return next(iter(states))
    return ", ".join(f"{number} {state}" for state, number in states.items())


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
    ruler: Ruler, head: Head, group: HazardGroup, inside: Rect, part: str
) -> tuple[Block, ...]:
    """Set what to wear, which container it is, whom to ask, and what such a label is not."""
    rule = ShapeBlock("rule", Rect(inside.x_mm, 0, inside.width_mm, HAIRLINE_MM), Shade.BLACK)
    version = join_words((part, head.check_letters))
    version_mm = ruler.width_mm(version, _PART) + 0.2
    which_mm = inside.width_mm - version_mm - _GAP_MM
    at_right = Spot(inside.right_mm - version_mm, 1.2, version_mm)
    which = f"{head.kind_words} {head.container_number}"
    worn = lower_first(group.protection)
    blocks: list[Block] = [
        rule,
        set_number(ruler, which, _WHICH, Spot(inside.x_mm, 1.0, which_mm), "container-number"),
        set_text(ruler, version, _PART, at_right, "part"),
    ]
    asked = join_words((head.questions or NOBODY, group.ask), between="; or ")
    for purpose, words, style in (
        ("protection", f"Protection: {worn}" if worn else "", _CHECK),
        ("questions", f"Ask first: {asked}", _ASK),
        ("disclaimer", NOT_AN_ASSESSMENT, _NOTE),
    ):
        if not words:
            continue
        spot = Spot(inside.x_mm, bottom_of(blocks) + 0.3, inside.width_mm)
        blocks.append(set_text(ruler, words, style, spot, purpose))
    return move_blocks(blocks, 0, inside.bottom_mm - bottom_of(blocks))
