"""Sets what a warning label says of its hazard, in English and after it in a second language."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from service.cards.parts import HazardGroup, SecondWords, WarnedObject
from service.cards.second.phrases import ASK_FIRST, MORE_WORN, PROTECTION
from service.cards.words import join_words
from service.geometry import Rect
from service.pages.look import RULE_MM
from service.pages.page import Block, MarkBlock, Shade, ShapeBlock, TextStyle
from service.pages.ruler import Ruler
from service.pages.setting.second import STYLE, set_said, set_second
from service.pages.setting.stack import bottom_of, move_blocks
from service.pages.setting.text import Spot, set_text
from service.pages.setting.type import CAPTION_PT, LEAST_CAPTION_PT, LEAST_OBJECT_NUMBER_PT

GAP_MM = 3.5
_MARK_RATIO = 0.5
"""Of the height, or of half the width: a mark is as large as leaves room for its words."""
_LARGEST_MARK_MM = 34.0
_NAME_SIZES_PT = (26.0, 24.0, 22.0, 20.0, 17.0, 14.0)
_SMALL_NAME_SIZES_PT = (17.0, 15.5, 14.0)
"""Where there is little room: still read from more than a metre away."""
_LEAST_ONE_LINE_PT = 20.0
"""A name goes into two lines rather than below this size."""
_MOST_NAME_LINES = 2

_STATE = TextStyle(13.0, weight=600, leading_ratio=1.15)
_INSTRUCTION = TextStyle(11.5, weight=700, leading_ratio=1.15)


@dataclass(frozen=True, slots=True)
class Voice:
    """A second language as one label speaks it: the type of the hazard and of the rest.

    `tells_worn` says whether protection and whom to ask are said again at the foot.
    """

    second: SecondWords
    heading_pt: float
    body_pt: float
    tells_worn: bool


@dataclass(frozen=True, slots=True)
class Wording:
    """A hazard as one label words it: the sizes its name may have, and the second language."""

    group: HazardGroup
    sizes_pt: Sequence[float]
    worn_more: str = ""
    """What is worn at worst, where the label says only what is always worn."""
    voice: Voice | None = None


_VOICES = (
    (_INSTRUCTION.size_pt, LEAST_OBJECT_NUMBER_PT, True),
    (LEAST_OBJECT_NUMBER_PT, CAPTION_PT, True),
    (CAPTION_PT, LEAST_CAPTION_PT, True),
    (LEAST_OBJECT_NUMBER_PT, CAPTION_PT, False),
    (CAPTION_PT, LEAST_CAPTION_PT, False),
)
"""How a second language is tried, the best first; never larger than the English it stands by."""


def word_group(group: HazardGroup) -> tuple[Wording, ...]:
    """Give the ways to word a hazard, the best first; what is worn at worst gives way first."""
    usual = shorten_worn(group.protection, MORE_WORN)
    short = replace(group, protection=usual)
    worn = group.protection if usual != group.protection else ""
    return (
        Wording(group, _NAME_SIZES_PT),
        Wording(short, _NAME_SIZES_PT, worn),
        Wording(short, _SMALL_NAME_SIZES_PT, worn),
    )


def shorten_worn(protection: str, more: str) -> str:
    """Keep what is always worn, and say where the rest stands."""
    usual, rest, _ = protection.partition(";")
    return f"{usual}; {more}" if rest else usual


def speak(wording: Wording, second: SecondWords | None) -> Iterator[Wording]:
    """Give the same wording in a second language too, the best way first."""
    if second is not None:
        for heading_pt, body_pt, tells_worn in _VOICES:
            voice = Voice(second, heading_pt, body_pt, tells_worn)
            yield replace(wording, voice=voice)


def set_hazard(ruler: Ruler, wording: Wording, inside: Rect) -> tuple[Block, ...]:
    """Set the mark, and beside it the name, how much is known, and what to do."""
    group = wording.group
    widest_mm = min(_LARGEST_MARK_MM, inside.width_mm * _MARK_RATIO / 2)
    side_mm = min(inside.height_mm * _MARK_RATIO, widest_mm)
    mark = MarkBlock(
        "mark", Rect(inside.x_mm, inside.y_mm, side_mm, side_mm), group.mark, group.name
    )
    x_mm = inside.x_mm + side_mm + GAP_MM
    width_mm = inside.right_mm - x_mm
    name = set_text(
        ruler,
        group.name,
        _name_style(ruler, group.name, width_mm, wording.sizes_pt),
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
    words += _set_second(ruler, wording, Spot(x_mm, bottom_of(words) + 0.8, width_mm))
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


def _set_second(ruler: Ruler, wording: Wording, spot: Spot) -> tuple[Block, ...]:
    """Set name and state again, as each state is known of some object, and what to do."""
    voice, group = wording.voice, wording.group
    if voice is None:
        return ()
    second = voice.second
    names = join_words((second.beside(words) for words in group.headings), between=", ")
    heading = replace(STYLE, size_pt=voice.heading_pt)
    body = replace(STYLE, size_pt=voice.body_pt)
    named = set_said(ruler, second, names, spot, heading)
    below = replace(spot, y_mm=bottom_of(named) + 0.2 if named else spot.y_mm)
    return (*named, *set_second(ruler, second, (group.instruction,), below, body))


def set_second_foot(ruler: Ruler, wording: Wording, spot: Spot) -> tuple[Block, ...]:
    """Set again what is worn, and that somebody is to be asked first."""
    voice = wording.voice
    if voice is None or not voice.tells_worn:
        return ()
    second = voice.second
    worn = second.beside(wording.worn_more or wording.group.protection)
    if wording.worn_more:
        worn = shorten_worn(worn, second.beside(MORE_WORN))
    named = join_words((second.beside(PROTECTION), worn), between=": ") if worn else ""
    words = join_words((named, second.beside(ASK_FIRST)))
    size_pt = min(voice.body_pt, CAPTION_PT)
    return set_said(ruler, second, words, spot, replace(STYLE, size_pt=size_pt))
