"""Fits a cover card: two faces side by side, to be folded between them and tied on with tape.

The front face is the right half, so that after folding the left half behind it both read upright.
The two holes lie at the same distance from the fold and meet when it is closed.
"""

from __future__ import annotations

from collections.abc import Sequence

from service.cards.card import CoverCard
from service.cards.words import join_words
from service.errors import DoesNotFitError
from service.geometry import Insets, Rect, Size
from service.pages.lid.cells import set_picture
from service.pages.lid.foot import NOBODY, NOT_AN_ASSESSMENT
from service.pages.lid.strip import set_strip
from service.pages.look import HAIRLINE_MM, RULE_MM
from service.pages.page import (
    Align,
    Block,
    MarkBlock,
    Page,
    PictureBlock,
    Shade,
    ShapeBlock,
    TextStyle,
)
from service.pages.ruler import Ruler
from service.pages.setting.stack import bottom_of, move_blocks
from service.pages.setting.text import Spot, set_number, set_text
from service.pages.setting.type import CAPTION_PT, LEAST_CAPTION_PT, size_for_caps_pt
from service.pages.symbol import dark_part, set_symbol
from service.printed import to_print

HOLE_MM = 5.0
"""Diameter of the hole, for the tape and a common paper punch (common practice, no source)."""
_PHOTO = "photo"
_BACK = "back of the cover card"
_HOLE_TOP_MM = 5.0
_MARGIN_MM = 6.5
_TOP_MM = _HOLE_TOP_MM + HOLE_MM + 3.0
_NUMBER_CAPS_MM = 6.5
_SYMBOL_MM = 20.0
_LEAST_PHOTO_MM = 30.0
_LEAST_BACK_PHOTO_MM = 18.0

_TITLE = TextStyle(12.0, weight=700, leading_ratio=1.15)
_BODY = TextStyle(CAPTION_PT, leading_ratio=1.22)
_BOLD = TextStyle(CAPTION_PT, weight=700, leading_ratio=1.22)
_ADVICE = TextStyle(11.0, weight=800, leading_ratio=1.15)
_NOTE = TextStyle(LEAST_CAPTION_PT, leading_ratio=1.2)


def fit_cover_card(card: CoverCard, size: Size, ruler: Ruler) -> Page:
    """Lay the two faces out; raises `DoesNotFitError` when a face is too small for its words."""
    half_mm = size.width_mm / 2
    back = _inside(Rect(0, 0, half_mm, size.height_mm))
    front = _inside(Rect(half_mm, 0, half_mm, size.height_mm))
    blocks = (
        *_set_front(ruler, card, front),
        *_set_back(ruler, card, back),
        *_set_fold(size),
    )
    head = card.head
    return Page(card.kind, head.container_number, head.title, 1, 1, size, blocks)


def _inside(face: Rect) -> Rect:
    return face.inset(Insets(_TOP_MM, _MARGIN_MM, _MARGIN_MM, _MARGIN_MM))


def _set_fold(size: Size) -> tuple[Block, ...]:
    """Mark the fold at both ends, and a hole in each face."""
    middle_mm = size.width_mm / 2
    ends = (5.0, size.height_mm - 5.0 - 6.0)
    folds = (
        ShapeBlock("fold", Rect(middle_mm - HAIRLINE_MM / 2, y_mm, HAIRLINE_MM, 6.0), Shade.BLACK)
        for y_mm in ends
    )
    holes = (
        ShapeBlock(
            "hole",
            Rect(x_mm - HOLE_MM / 2, _HOLE_TOP_MM, HOLE_MM, HOLE_MM),
            outline_mm=HAIRLINE_MM,
            radius_mm=HOLE_MM / 2,
        )
        for x_mm in (middle_mm / 2, middle_mm * 1.5)
    )
    return (*folds, *holes)


def _set_front(ruler: Ruler, card: CoverCard, area: Rect) -> tuple[Block, ...]:
    """Set number, title, the photo as large as it gets, and below it how the garment is kept.

    Raises:
        DoesNotFitError: When the photo would be too small to tell anything.
    """
    above = _set_names(ruler, card, area)
    below = _set_advice(ruler, card, area)
    top_mm = bottom_of(above) + 2.0
    height_mm = below[0].rect.y_mm - 2.0 - top_mm
    if height_mm < _LEAST_PHOTO_MM:
        raise DoesNotFitError(_PHOTO, needed_mm=_LEAST_PHOTO_MM, available_mm=height_mm)
    frame = Rect(area.x_mm, top_mm, area.width_mm, height_mm)
    if card.main.photo:
        alt = f"{card.main.object_number}: {card.main.title}"
        return (*above, PictureBlock("photo", frame, card.main.photo, alt), *below)
    return (*above, *set_picture(ruler, card.main, frame), *below)


def _set_names(ruler: Ruler, card: CoverCard, area: Rect) -> tuple[Block, ...]:
    where = f"{card.head.kind_words} {card.head.container_number}"
    label = set_text(
        ruler, where, _BOLD, Spot(area.x_mm, area.y_mm, area.width_mm), "container-number"
    )
    number = _set_object_number(ruler, card.main.object_number, area, label.rect.bottom_mm)
    spot = Spot(area.x_mm, number.rect.bottom_mm + 0.4, area.width_mm, 3)
    title = set_text(ruler, card.main.title, _TITLE, spot, "title")
    blocks: list[Block] = [label, number, title]
    words = join_words((card.object_name, card.period))
    if words:
        below = Spot(area.x_mm, title.rect.bottom_mm + 0.3, area.width_mm, 2)
        blocks.append(set_text(ruler, words, _BODY, below, "period"))
    return tuple(blocks)


def _set_object_number(ruler: Ruler, number: str, area: Rect, y_mm: float) -> Block:
    style = TextStyle(size_for_caps_pt(_NUMBER_CAPS_MM), weight=800, leading_ratio=1.0)
    ratio = min(1.0, area.width_mm / (ruler.width_mm(number, style) + 0.2))
    shrunk = TextStyle(style.size_pt * max(0.55, ratio), weight=800, leading_ratio=1.0)
    return set_number(ruler, number, shrunk, Spot(area.x_mm, y_mm, area.width_mm), "object-number")


def _set_advice(ruler: Ruler, card: CoverCard, area: Rect) -> tuple[Block, ...]:
    """Set the hang advice, its reason and the marks of hazards below a rule, at the bottom."""
    rule = ShapeBlock("rule", Rect(area.x_mm, 0, area.width_mm, RULE_MM), Shade.BLACK)
    spot = Spot(area.x_mm, 1.6, area.width_mm)
    advice = set_text(ruler, card.hang_advice, _ADVICE, spot, "hang-advice")
    blocks: list[Block] = [rule, advice]
    if card.hang_reason:
        below = Spot(area.x_mm, advice.rect.bottom_mm + 0.4, area.width_mm)
        blocks.append(
            set_text(
                ruler,
                to_print("Recorded: {hang_reason}", hang_reason=card.hang_reason),
                _BODY,
                below,
                "hang-reason",
            )
        )
    y_mm = bottom_of(blocks) + 1.4
    for warn in card.handling.hazards:
        mark = MarkBlock("mark", Rect(area.x_mm, y_mm, 8.0, 8.0), warn.mark, warn.heading)
        words_spot = Spot(area.x_mm + 9.6, y_mm, area.width_mm - 9.6)
        words = set_text(ruler, warn.heading, _ADVICE, words_spot, "hazard")
        lift_mm = max(0.0, (8.0 - words.rect.height_mm) / 2)
        blocks.extend((mark, *move_blocks((words,), 0, lift_mm)))
        y_mm = bottom_of(blocks) + 1.0
    return move_blocks(blocks, 0, area.bottom_mm - bottom_of(blocks))


def _set_back(ruler: Ruler, card: CoverCard, area: Rect) -> tuple[Block, ...]:
    """Set handling, accessories and notes from the top, symbol and whom to ask at the bottom.

    Raises:
        DoesNotFitError: When the words do not fit.
    """
    foot = _set_foot(ruler, card, area)
    limit_mm = min(block.rect.y_mm for block in foot) - 1.5
    strip = set_strip(ruler, card.handling, area, card.head.second)
    words = _set_words(ruler, card, Rect(area.x_mm, bottom_of(strip) + 2.4, area.width_mm, 0))
    bottom_mm = bottom_of((*strip, *words))
    if bottom_mm > limit_mm:
        needed_mm, available_mm = bottom_mm - area.y_mm, limit_mm - area.y_mm
        raise DoesNotFitError(_BACK, needed_mm=needed_mm, available_mm=available_mm)
    photo = _set_back_photo(card, area, top_mm=bottom_mm + 2.4, bottom_mm=limit_mm)
    return (*strip, *words, *photo, *foot)


def _set_back_photo(
    card: CoverCard, area: Rect, *, top_mm: float, bottom_mm: float
) -> tuple[Block, ...]:
    """Set the second photo where there is room for one that still shows something."""
    height_mm = bottom_mm - top_mm
    if not card.back_photo or height_mm < _LEAST_BACK_PHOTO_MM:
        return ()
    frame = Rect(area.x_mm, top_mm, area.width_mm, height_mm)
    alt = to_print("{object_number}: back or detail", object_number=card.main.object_number)
    return (PictureBlock("back-photo", frame, card.back_photo, alt),)


def _set_words(ruler: Ruler, card: CoverCard, area: Rect) -> tuple[Block, ...]:
    lines = [(to_print("with it"), words) for words in card.accessories]
    lines += [
        (to_print("also here"), join_words((item.object_number, item.title), between=" "))
        for item in card.others
    ]
    lines += [("", words) for words in card.notes]
    blocks: list[Block] = []
    y_mm = area.y_mm
    for label, words in lines:
        said = f"{label.capitalize()}: {words}" if label else words
        style = _BOLD if label else _BODY
        block = set_text(ruler, said, style, Spot(area.x_mm, y_mm, area.width_mm), "note")
        blocks.append(block)
        y_mm = block.rect.bottom_mm + 0.6
    return tuple(blocks)


def _set_foot(ruler: Ruler, card: CoverCard, area: Rect) -> tuple[Block, ...]:
    head = card.head
    symbol = set_symbol(
        head, right_mm=area.right_mm, top_mm=area.bottom_mm - 18.0, space_mm=_SYMBOL_MM
    )
    dark = dark_part(symbol)
    symbol_moved = move_blocks((symbol,), 0, area.bottom_mm - dark.bottom_mm)
    width_mm = dark.x_mm - 3.0 - area.x_mm
    lines = _foot_lines(card)
    blocks: list[Block] = []
    y_mm = 0.0
    for purpose, words, style in lines:
        block = set_text(ruler, words, style, Spot(area.x_mm, y_mm, width_mm), purpose)
        blocks.append(block)
        y_mm = block.rect.bottom_mm
    return (*move_blocks(blocks, 0, area.bottom_mm - y_mm), *symbol_moved)


def _foot_lines(card: CoverCard) -> Sequence[tuple[str, str, TextStyle]]:
    head = card.head
    small = TextStyle(CAPTION_PT, weight=600, leading_ratio=1.22, align=Align.START)
    asked = to_print("Ask first: {asked}", asked=head.questions or NOBODY)
    letters = head.check_letters
    version = to_print("r{revision} {check_letters}", revision=head.revision, check_letters=letters)
    lines = (
        ("questions", asked, _BOLD),
        ("museum", join_words((head.museum, head.location)), _BODY),
        ("packed", head.packed, _BODY),
        ("revision", version, small),
        ("disclaimer", NOT_AN_ASSESSMENT, _NOTE),
    )
    return [line for line in lines if line[1]]
