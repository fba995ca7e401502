"""A line of text proved by its glyphs: each word as a separate shaper sets it.

Where text extracted from a file is no evidence (letters that join, marks, lines from the right),
every part of the line that runs one way must stand in the line with the glyphs, and the distances
between them, that our own HarfBuzz run gives for one of the shipped fonts; no glyph may be left
over. Neighbouring parts that run the same way must stand in that order. Not proved is how parts
that run different ways, figures among Arabic for instance, are ordered among each other: that
would take a second bidirectional algorithm.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from service.render.reading.glyphs import Glyph
from service.render.reading.shaping import (
    Part,
    ShapedGlyph,
    Shaper,
    Way,
    mirrored,
    split_parts,
    split_signs,
)

APART_RATIO = 0.04
"""How far a glyph may stand from where the shaper puts it, in ems; ours."""
_ORDERED = frozenset({Way.RIGHTWARD, Way.LEFTWARD})


@dataclass(slots=True)
class _Found:
    """Where a part stands among the glyphs of the line; -1 when it does not."""

    part: Part
    order: int
    at: int = -1


def word_faults(
    line: str, glyphs: Sequence[Glyph], shaper: Shaper, *, language: str
) -> Iterator[str]:
    """Say which words of a line its glyphs do not show; the glyphs come in the order of drawing."""
    matcher = _Matcher(_without_blanks(glyphs, shaper), shaper, language)
    found = [_Found(part, order) for order, part in enumerate(matcher.coverable(split_parts(line)))]
    # The longest first, so that no short part takes its glyphs from the middle of a long one; parts
    # that run leftward stand further right the earlier they come.
    for one in sorted(found, key=lambda one: (-len(one.part.text), one.order)):
        one.at = matcher.take(one.part)
        if one.at < 0:
            yield f"{one.part.text!r} is not set as its script asks"
    if all(one.at >= 0 for one in found):
        if matcher.left_over:
            yield f"{matcher.left_over} signs are printed that no word asked for"
        if not _in_order(found):
            yield "the words stand in another order"


def _without_blanks(glyphs: Sequence[Glyph], shaper: Shaper) -> list[Glyph]:
    return [
        glyph
        for glyph in glyphs
        if shaper.knows(glyph.font) and glyph.number not in shaper.blanks(glyph.font)
    ]


def _in_order(found: Sequence[_Found]) -> bool:
    """Tell whether neighbours stand in their order, whichever way the whole line runs."""
    return any(_agree(found, _deal(found, base)) for base in _ORDERED)


def _agree(found: Sequence[_Found], places: Sequence[int]) -> bool:
    return all(
        (place < other_place) == (one.part.way is Way.RIGHTWARD)
        for (one, place), (other, other_place) in pairwise(zip(found, places, strict=True))
        if one.part.way is other.part.way and one.part.way in _ORDERED
    )


def _deal(found: Sequence[_Found], base: Way) -> list[int]:
    """Give each part its place; those of equal parts are dealt out as a line of this way has them.

    Equal parts have equal glyphs, so nothing tells which of them was found where. Stretches that
    run one way follow each other as the line runs.
    """
    ways = [one.part.way for one in found]
    stretches = _stretches(ways)
    along = 1 if base is Way.RIGHTWARD else -1
    free: dict[Part, list[int]] = defaultdict(list)
    for one in found:
        free[one.part].append(one.at)
    for places in free.values():
        places.sort(reverse=True)
    ranked = sorted(
        range(len(found)),
        key=lambda index: (
            along * stretches[index],
            -index if ways[index] is Way.LEFTWARD else index,
        ),
    )
    dealt = {index: free[found[index].part].pop() for index in ranked}
    return [dealt[index] for index in range(len(found))]


def _stretches(ways: Sequence[Way]) -> list[int]:
    """Number the stretches of a line that run one way; figures and signs go on with the last."""
    numbers: list[int] = []
    number, last = 0, None
    for way in ways:
        if way in _ORDERED:
            number += last is not None and way is not last
            last = way
        numbers.append(number)
    return numbers


class _Matcher:
    """The glyphs of one line, taken away as words are found."""

    def __init__(self, glyphs: list[Glyph], shaper: Shaper, language: str) -> None:
        self._glyphs = glyphs
        self._taken = [False] * len(glyphs)
        self._fonts = tuple(dict.fromkeys(glyph.font for glyph in glyphs))
        self._shaper = shaper
        self._language = language

    @property
    def left_over(self) -> int:
        return self._taken.count(False)

    def coverable(self, parts: Sequence[Part]) -> Iterator[Part]:
        """Give the parts, those no single font of the line holds split into signs."""
        for part in parts:
            whole = any(self._shaper.covers(font, part.text) for font in self._fonts)
            yield from (part,) if whole else split_signs(part)

    def take(self, part: Part) -> int:
        """Find a part, take its glyphs away and say where it stood; -1 when it does not."""
        for font in self._fonts:
            if self._shaper.covers(font, part.text):
                for one in mirrored(part):
                    shaped = self._shaper.shape(font, one, language=self._language)
                    at = self._find(font, shaped, from_end=part.way is Way.LEFTWARD)
                    if at >= 0:
                        self._taken[at : at + len(shaped)] = [True] * len(shaped)
                        return at
        return -1

    def _find(self, font: str, shaped: Sequence[ShapedGlyph], *, from_end: bool) -> int:
        places = range(len(self._glyphs) - len(shaped) + 1)
        for at in reversed(places) if from_end else places:
            end = at + len(shaped)
            if not any(self._taken[at:end]) and _is_same(self._glyphs[at:end], font, shaped):
                return at
        return -1


def _is_same(glyphs: Sequence[Glyph], font: str, shaped: Sequence[ShapedGlyph]) -> bool:
    return all(
        glyph.font == font and glyph.number == wanted.number and _is_near(glyph, wanted, *first)
        for first in zip(glyphs[:1], shaped[:1], strict=True)
        for glyph, wanted in zip(glyphs, shaped, strict=True)
    )


def _is_near(glyph: Glyph, wanted: ShapedGlyph, first: Glyph, first_wanted: ShapedGlyph) -> bool:
    """Tell whether a glyph stands from the first one as the shaper says."""
    allowed_mm = APART_RATIO * glyph.size_mm
    x_mm = (wanted.x_ratio - first_wanted.x_ratio) * glyph.size_mm
    y_mm = (first_wanted.y_ratio - wanted.y_ratio) * glyph.size_mm
    return (
        abs(glyph.origin.x_mm - first.origin.x_mm - x_mm) <= allowed_mm
        and abs(glyph.origin.y_mm - first.origin.y_mm - y_mm) <= allowed_mm
    )
