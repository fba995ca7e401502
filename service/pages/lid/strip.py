"""The handling strip: weight, hazards with their state and words, cautions; nothing shortened."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from service.cards.parts import Handling, Pointer, SecondWords, Warn
from service.geometry import Rect
from service.handling.lifting import LiftAdvice
from service.pages.page import Block, MarkBlock, TextStyle
from service.pages.ruler import Ruler
from service.pages.setting.second import STYLE, set_second
from service.pages.setting.stack import bottom_of, move_blocks
from service.pages.setting.text import Spot, set_text
from service.pages.setting.type import CAPTION_PT, LEAST_OBJECT_NUMBER_PT, caps_mm, size_for_caps_pt
from service.printed import to_print

MOST_POINTERS = 4
"""Above this many objects a warning says how many, where each carries the mark itself."""
_MARK_MM = 9.0
_GAP_MM = 1.6
_COLUMN_GAP_MM = 4.0
_ROW_GAP_MM = 1.8
_CHIP_MM = 6.5
_CHIP_GAPS_MM = (4.5, 3.5, 2.6)
_FIGURE_CAPS_MM = 5.0
_LEAST_COLUMN_MM = 34.0
_WIDEST_COLUMN_MM = 62.0

_FIGURE = TextStyle(size_for_caps_pt(_FIGURE_CAPS_MM), weight=800, leading_ratio=1.12)
_HEADING = TextStyle(LEAST_OBJECT_NUMBER_PT, weight=700, leading_ratio=1.15)
_BODY = TextStyle(CAPTION_PT, leading_ratio=1.18)
_POINTER = TextStyle(CAPTION_PT, weight=600, leading_ratio=1.18)
_NO_BREAK = "\N{NO-BREAK SPACE}"


@dataclass(frozen=True, slots=True)
class _Item:
    """A part of the strip set at the origin, and the width it was set for."""

    blocks: tuple[Block, ...]
    height_mm: float


def set_strip(
    ruler: Ruler, handling: Handling, area: Rect, second: SecondWords | None = None
) -> tuple[Block, ...]:
    """Set the strip into the width of `area`, from its top; it grows downwards as it must.

    Words of a second language stand after the English of each item.
    """
    voice = _Voice(ruler, second)
    most = min(len(handling.hazards) + 1, int(area.width_mm / _LEAST_COLUMN_MM))
    tried = [_set_worded(voice, handling, area, columns) for columns in range(max(1, most), 0, -1)]
    # The first of equals has the most columns, so that short strips do not spread out.
    worded = min(tried, key=bottom_of)
    chips = [_set_caution(voice, warn, area.width_mm) for warn in handling.cautions]
    chips += [_set_limit(voice, words, area.width_mm) for words in handling.limits]
    below = Rect(area.x_mm, bottom_of(worded) + _ROW_GAP_MM, area.width_mm, 0)
    return (*worded, *_flow_chips(chips, below))


@dataclass(frozen=True, slots=True)
class _Voice:
    """What sets English words and those of the second language after them."""

    ruler: Ruler
    second: SecondWords | None

    def go_on(self, blocks: Sequence[Block], english: Sequence[str], at: Rect) -> _Item:
        """Set the second words below some blocks, into the width of `at`."""
        spot = Spot(at.x_mm, bottom_of(blocks), at.width_mm)
        return _stack_item(*blocks, *set_second(self.ruler, self.second, english, spot))

    def go_on_beside(self, blocks: Sequence[Block], english: str, widest_mm: float) -> _Item:
        """Set the second words behind the last block on its base line, or below it."""
        last = blocks[-1].rect
        said = set_second(self.ruler, self.second, (english,), Spot(last.right_mm + 1.2, 0, 0))
        if said and (
            said[0].rect.right_mm > widest_mm or last.height_mm > _POINTER.leading_mm * 1.5
        ):
            return self.go_on(blocks, (english,), Rect(last.x_mm, 0, widest_mm - last.x_mm, 0))
        lower_mm = (caps_mm(_POINTER.size_pt) - caps_mm(STYLE.size_pt)) / 2
        down_mm = last.y_mm + (_POINTER.leading_mm - STYLE.leading_mm) / 2 + lower_mm
        return _stack_item(*blocks, *move_blocks(said, 0, down_mm))


def _set_worded(voice: _Voice, handling: Handling, area: Rect, columns: int) -> tuple[Block, ...]:
    """Set weight and hazards in that many columns, none wider than a line is read with ease."""
    width_mm = (area.width_mm - (columns - 1) * _COLUMN_GAP_MM) / columns
    width_mm = min(width_mm, _WIDEST_COLUMN_MM)
    items = [_set_lift(voice, handling.lift, width_mm)]
    items += [_set_hazard(voice, warn, width_mm) for warn in handling.hazards]
    return _flow(items, area, columns=columns, step_mm=width_mm + _COLUMN_GAP_MM)


def _flow(items: Sequence[_Item], area: Rect, *, columns: int, step_mm: float) -> tuple[Block, ...]:
    """Put items in rows of `columns`, each row as high as its highest item."""
    placed: list[Block] = []
    y_mm = area.y_mm
    for start in range(0, len(items), columns):
        row = items[start : start + columns]
        for index, item in enumerate(row):
            placed.extend(move_blocks(item.blocks, area.x_mm + index * step_mm, y_mm))
        y_mm += max(item.height_mm for item in row) + _ROW_GAP_MM
    return tuple(placed)


def _set_lift(voice: _Voice, lift: LiftAdvice, width_mm: float) -> _Item:
    """Set the weight in figures, how it is known, and what it asks of whoever lifts."""
    blocks = _set_weight(voice.ruler, lift, width_mm)
    return voice.go_on(blocks, (lift.qualifier, lift.advice), Rect(0, 0, width_mm, 0))


def _set_weight(ruler: Ruler, lift: LiftAdvice, width_mm: float) -> tuple[Block, ...]:
    if not lift.figure_kg:
        known = set_text(ruler, lift.qualifier, _HEADING, Spot(0, 0, width_mm), "basis")
        below = Spot(0, known.rect.bottom_mm, width_mm)
        return (known, set_text(ruler, lift.advice, _BODY, below, "lift-advice"))
    figure = to_print("{figure_kg} kg", figure_kg=lift.figure_kg)
    figure_mm = ruler.width_mm(figure, _FIGURE) + 0.1
    weight = set_text(ruler, figure, _FIGURE, Spot(0, -0.9, figure_mm), "weight")
    x_mm = figure_mm + _GAP_MM
    beside = width_mm - x_mm >= ruler.width_mm(lift.qualifier, _BODY)
    if beside:
        down_mm = weight.rect.bottom_mm - _BODY.leading_mm - 1.15
        spot = Spot(x_mm, down_mm, width_mm - x_mm)
    else:
        spot = Spot(0, weight.rect.bottom_mm, width_mm)
    known = set_text(ruler, lift.qualifier, _BODY, spot, "basis")
    below = Spot(0, max(weight.rect.bottom_mm, known.rect.bottom_mm), width_mm)
    advice = set_text(ruler, lift.advice, _HEADING, below, "lift-advice")
    if not lift.reason:
        return (weight, known, advice)
    last = Spot(0, advice.rect.bottom_mm, width_mm)
    return (weight, known, advice, set_text(ruler, lift.reason, _BODY, last, "lift-reason"))


def _stack_item(*blocks: Block) -> _Item:
    return _Item(blocks, bottom_of(blocks))


def _set_hazard(voice: _Voice, warn: Warn, width_mm: float) -> _Item:
    ruler = voice.ruler
    x_mm = _MARK_MM + _GAP_MM
    width_mm -= x_mm
    heading = set_text(ruler, warn.heading, _HEADING, Spot(x_mm, 0, width_mm), "hazard")
    spot = Spot(x_mm, heading.rect.bottom_mm, width_mm)
    words = set_text(ruler, warn.instruction, _BODY, spot, "instruction")
    below = Spot(x_mm, words.rect.bottom_mm, width_mm)
    which = set_text(ruler, write_pointers(warn), _POINTER, below, "pointers")
    mark = MarkBlock("mark", Rect(0, 0.3, _MARK_MM, _MARK_MM), warn.mark, warn.heading)
    english = (warn.heading, warn.instruction)
    return voice.go_on((mark, heading, words, which), english, Rect(x_mm, 0, width_mm, 0))


def _set_caution(voice: _Voice, warn: Warn, widest_mm: float) -> _Item:
    """Set a caution as a small mark with its name behind it, as wide as it needs."""
    ruler = voice.ruler
    words = " ".join((warn.heading, write_pointers(warn))).strip()
    x_mm = _CHIP_MM + 1.2
    spot = Spot(x_mm, (_CHIP_MM - _POINTER.leading_mm) / 2, ruler.width_mm(words, _POINTER) + 0.1)
    text = set_text(ruler, words, _POINTER, spot, "caution")
    mark = MarkBlock("mark", Rect(0, 0, _CHIP_MM, _CHIP_MM), warn.mark, warn.heading)
    return voice.go_on_beside((mark, text), warn.heading, widest_mm)


def _set_limit(voice: _Voice, words: str, width_mm: float) -> _Item:
    ruler = voice.ruler
    needed_mm = min(width_mm, ruler.width_mm(words, _POINTER) + 0.1)
    block = set_text(ruler, words, _POINTER, Spot(0, 0, needed_mm), "limit")
    return voice.go_on_beside((block,), words, width_mm)


def _flow_chips(chips: Sequence[_Item], area: Rect) -> tuple[Block, ...]:
    """Put chips one behind the other, as far apart as does not cost another line."""
    rows = [_break_chips(chips, area.width_mm, gap_mm) for gap_mm in _CHIP_GAPS_MM]
    best = min(range(len(rows)), key=lambda index: len(rows[index]))
    placed: list[Block] = []
    y_mm = area.y_mm
    for row in rows[best]:
        line_mm = max(chip.height_mm for chip in row)
        x_mm = area.x_mm
        for chip in row:
            placed.extend(move_blocks(chip.blocks, x_mm, y_mm + (line_mm - chip.height_mm) / 2))
            x_mm += _width_of(chip) + _CHIP_GAPS_MM[best]
        y_mm += line_mm + 1.0
    return tuple(placed)


def _break_chips(chips: Sequence[_Item], width_mm: float, gap_mm: float) -> list[list[_Item]]:
    rows: list[list[_Item]] = []
    used_mm = 0.0
    for chip in chips:
        needed_mm = _width_of(chip)
        if not rows or used_mm + gap_mm + needed_mm > width_mm:
            rows.append([chip])
            used_mm = needed_mm
        else:
            rows[-1].append(chip)
            used_mm += gap_mm + needed_mm
    return rows


def _width_of(chip: _Item) -> float:
    return max(block.rect.right_mm for block in chip.blocks)


def write_pointers(warn: Warn) -> str:
    """Name the objects a warning is about; of many, those that do not carry its mark."""
    if len(warn.pointers) <= MOST_POINTERS or warn.unmarked == warn.pointers:
        return _name_all(warn.pointers)
    total = to_print("{number} objects", number=len(warn.pointers))
    if not warn.unmarked:
        return to_print("{total}, each marked.", total=total)
    return to_print(
        "{total}: marked, and also {unmarked}", total=total, unmarked=_name_all(warn.unmarked)
    )


def _name_all(pointers: Sequence[Pointer]) -> str:
    return ", ".join(
        f"{pointer.place}{_NO_BREAK}{pointer.object_number}".strip(_NO_BREAK)
        for pointer in pointers
    )
