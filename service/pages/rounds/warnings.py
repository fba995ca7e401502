"""Sets lift, hazards and cautions for a paper: nothing shortened, every mark with its words."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from service.cards.parts import Handling, Pointer, SecondWords, Warn
from service.cards.words import join_words
from service.geometry import Rect
from service.handling.lifting import LiftAdvice
from service.pages.page import Block, MarkBlock, TextStyle
from service.pages.ruler import Ruler
from service.pages.setting.second import set_said
from service.pages.setting.stack import bottom_of, move_blocks
from service.pages.setting.text import Spot, set_text
from service.printed import to_print

MOST_NAMED = 4
"""Above this many objects a paper says how many; the contents list names them."""
_GAP_MM = 1.4
_LINES_TOGETHER = 5
_NO_BREAK = "\N{NO-BREAK SPACE}"


@dataclass(frozen=True, slots=True)
class Item:
    """Blocks set from the origin, which no page divides, and their height."""

    blocks: tuple[Block, ...]
    height_mm: float


@dataclass(frozen=True, slots=True)
class WarningLook:
    """How warnings are set: the side of a mark, and the type of headings and of the rest."""

    mark_mm: float
    heading: TextStyle
    body: TextStyle


@dataclass(frozen=True, slots=True)
class Voice:
    """What sets English words and those of the second language after them."""

    ruler: Ruler
    second: SecondWords | None = None

    def say(self, *english: str) -> str:
        """Give what stands beside some English words."""
        return self.second.beside(*english) if self.second else ""


def set_warnings(
    voice: Voice, handling: Handling, look: WarningLook, width_mm: float
) -> tuple[Item, ...]:
    """Set what must be known, the most urgent first: hazards, lift, cautions, limits.

    Words of a second language stand after the English of each item.
    """
    items = [_set_hazard(voice, warn, look, width_mm) for warn in handling.hazards]
    lift = handling.lift
    said = voice.say("" if lift.figure_kg else lift.qualifier, lift.advice)
    items.append(_set_lines(voice, _lift_lines(lift, look), width_mm, said))
    cautions = join_words(map(_word_caution, handling.cautions))
    named = join_words(voice.say(warn.heading) for warn in handling.cautions)
    others = [(cautions, "caution", named)]
    others += [(words, "limit", voice.say(words)) for words in handling.limits]
    for words, purpose, said in others:
        items += _set_running(voice, (words, said), look.body, width_mm, purpose)
    return tuple(items)


def set_sentence(voice: Voice, words: str, style: TextStyle, width_mm: float) -> Item:
    """Set a sentence that stands where no hazard does, with that of the second language."""
    return _set_lines(voice, [("silent", words, style)], width_mm, voice.say(words))


def stack_items(items: Iterable[Item], x_mm: float, y_mm: float, *, gap_mm: float) -> list[Block]:
    """Put items one below the other."""
    blocks: list[Block] = []
    for item in items:
        blocks += move_blocks(item.blocks, x_mm, y_mm)
        y_mm += item.height_mm + gap_mm
    return blocks


def pair_items(items: Sequence[Item], step_mm: float) -> tuple[Item, ...]:
    """Put each two items side by side, the second one `step_mm` to the right."""
    pairs = (items[first : first + 2] for first in range(0, len(items), 2))
    return tuple(
        Item(
            tuple(
                block
                for column, item in enumerate(pair)
                for block in move_blocks(item.blocks, column * step_mm, 0)
            ),
            max(item.height_mm for item in pair),
        )
        for pair in pairs
    )


def share_items(
    items: Sequence[Item], rooms_mm: Iterator[float], *, gap_mm: float
) -> list[list[Item]]:
    """Fill room after room with whole items, in their order; the first may stay empty."""
    shared: list[list[Item]] = [[]]
    left_mm = next(rooms_mm)
    for item in items:
        if item.height_mm > left_mm and (shared[-1] or len(shared) == 1):
            shared.append([])
            left_mm = next(rooms_mm)
        shared[-1].append(item)
        left_mm -= item.height_mm + gap_mm
    return shared


def _set_hazard(voice: Voice, warn: Warn, look: WarningLook, width_mm: float) -> Item:
    x_mm = look.mark_mm + _GAP_MM
    lines = [
        ("hazard", warn.heading, look.heading),
        ("instruction", warn.instruction, look.body),
        ("pointers", write_numbers(warn.pointers), look.body),
    ]
    said = voice.say(warn.heading, warn.instruction)
    item = _set_lines(voice, lines, width_mm - x_mm, said)
    mark = MarkBlock("mark", Rect(0, 0.2, look.mark_mm, look.mark_mm), warn.mark, warn.heading)
    blocks = (mark, *move_blocks(item.blocks, x_mm, 0))
    return Item(blocks, bottom_of(blocks))


def _lift_lines(lift: LiftAdvice, look: WarningLook) -> list[tuple[str, str, TextStyle]]:
    figure = to_print("{figure_kg} kg", figure_kg=lift.figure_kg) if lift.figure_kg else ""
    weight = join_words((figure, lift.qualifier), between=", ")
    return [("weight", weight, look.heading), ("lift-advice", lift.advice, look.body)]


def _word_caution(warn: Warn) -> str:
    return " ".join((warn.heading, write_numbers(warn.pointers))).strip()


def write_numbers(pointers: Sequence[Pointer]) -> str:
    """Name the objects a warning is about, or say how many they are."""
    if len(pointers) > MOST_NAMED:
        return to_print("{number} objects: see the contents list", number=len(pointers))
    named = (f"{one.place}{_NO_BREAK}{one.object_number}".strip(_NO_BREAK) for one in pointers)
    return ", ".join(named)


def _set_running(
    voice: Voice, texts: tuple[str, str], style: TextStyle, width_mm: float, purpose: str
) -> Iterator[Item]:
    """Set a text of any length in pieces that a page may part; the last has the second words."""
    words, said = texts
    lines = voice.ruler.break_text(words, style, width_mm=width_mm).lines if words else ()
    for first in range(0, len(lines), _LINES_TOGETHER):
        piece = " ".join(lines[first : first + _LINES_TOGETHER])
        is_last = first + _LINES_TOGETHER >= len(lines)
        yield _set_lines(voice, [(purpose, piece, style)], width_mm, said if is_last else "")


def _set_lines(
    voice: Voice, lines: Iterable[tuple[str, str, TextStyle]], width_mm: float, said: str
) -> Item:
    blocks: list[Block] = []
    for purpose, words, style in lines:
        if words:
            spot = Spot(0, bottom_of(blocks), width_mm)
            blocks.append(set_text(voice.ruler, words, style, spot, purpose))
    below = Spot(0, bottom_of(blocks), width_mm)
    blocks += set_said(voice.ruler, voice.second, said, below)
    return Item(tuple(blocks), bottom_of(blocks))
