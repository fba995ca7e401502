"""What a shaper of our own makes of a word, to compare with the glyphs in the file.

A separate HarfBuzz (not the one the layout engine loads) with the shipped font files.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from enum import Enum
from itertools import groupby
from pathlib import Path
from typing import Literal

import uharfbuzz

from service.render.reading.measures import Advances, Box, Boxes

_FEATURES = {"tnum": True}
_BLANKS = (0x20, 0xA0)
_FORMS: tuple[Literal["NFC", "NFD"], ...] = ("NFC", "NFD")


class Way(Enum):
    """Which way a part of a line runs.

    Figures run rightward, but stand among their neighbours as those ask; a neutral sign runs as
    its neighbours do.
    """

    RIGHTWARD = 1
    LEFTWARD = 2
    FIGURES = 3
    NEUTRAL = 4


# Bidirectional classes (Unicode Standard Annex 9).
_WAYS = {
    "L": Way.RIGHTWARD,
    "EN": Way.FIGURES,
    "AN": Way.FIGURES,
    "R": Way.LEFTWARD,
    "AL": Way.LEFTWARD,
}


@dataclass(frozen=True, slots=True)
class Part:
    """A piece of a word that runs one way."""

    text: str
    way: Way


@dataclass(frozen=True, slots=True)
class ShapedGlyph:
    """A glyph and its origin from the start of its part, in ems, y upwards."""

    number: int
    x_ratio: float
    y_ratio: float


def split_parts(line: str) -> tuple[Part, ...]:
    """Split a line into parts at blanks and where the way changes; neutral signs stand alone."""
    clusters = [cluster for word in line.split() for cluster in (*_clusters(word), "")]
    parts: list[Part] = []
    for way, group in groupby(clusters, key=_way_of):
        if way is Way.NEUTRAL:
            parts += [Part(cluster, way) for cluster in group if cluster]
        elif way is not None:
            parts.append(Part("".join(group), way))
    return tuple(parts)


def split_signs(part: Part) -> tuple[Part, ...]:
    """Split a part further, into letters with their marks."""
    return tuple(Part(cluster, part.way) for cluster in _clusters(part.text))


def _way_of(cluster: str) -> Way:
    return (
        _WAYS.get(unicodedata.bidirectional(cluster[:1]), Way.NEUTRAL) if cluster else Way.NEUTRAL
    )


def _clusters(word: str) -> Iterator[str]:
    """Give each sign with the marks and joiners that follow it."""
    cluster = ""
    for character in word:
        if cluster and not _joins_before(character):
            yield cluster
            cluster = ""
        cluster += character
    if cluster:
        yield cluster


def _joins_before(character: str) -> bool:
    return unicodedata.category(character) in {"Mn", "Mc", "Me", "Cf"}


@dataclass(frozen=True, slots=True)
class ShapedLine:
    """The glyphs of a line, blanks and all, and where each begins, in ems from the first one."""

    numbers: tuple[int, ...]
    starts_ratio: tuple[float, ...]
    is_level: bool
    """Whether all of them stand on the baseline."""


class Shaper:
    """Shapes words with the shipped fonts, by the names a PDF calls them."""

    def __init__(self, shipped: Mapping[str, Path]) -> None:
        """Open no font yet."""
        self._files = shipped
        self._fonts: dict[str, uharfbuzz.Font] = {}
        self._blanks: dict[str, frozenset[int]] = {}
        self._advances: dict[str, Advances] = {}
        self._boxes: dict[str, Boxes] = {}

    def knows(self, name: str) -> bool:
        """Tell whether a font of that name is shipped."""
        return name in self._files

    def blanks(self, name: str) -> frozenset[int]:
        """Give the glyphs of a font that stand for blanks."""
        if name not in self._blanks:
            font = self._font(name)
            glyphs = {font.get_nominal_glyph(code) for code in _BLANKS}
            self._blanks[name] = frozenset(glyph for glyph in glyphs if glyph is not None)
        return self._blanks[name]

    def advances(self, name: str) -> Mapping[int, float]:
        """Give the advance widths of a font by glyph, in ems."""
        if name not in self._advances:
            self._advances[name] = Advances(self._font(name))
        return self._advances[name]

    def boxes(self, name: str) -> Mapping[int, Box]:
        """Give how far the ink of each glyph of a font reaches; all zero where it has none."""
        if name not in self._boxes:
            self._boxes[name] = Boxes(self._font(name))
        return self._boxes[name]

    def covers(self, name: str, text: str) -> bool:
        """Tell whether a font has a glyph for each sign of a text but those that show nothing.

        A letter with marks may be held whole or in its pieces.
        """
        font = self._font(name)
        return any(
            all(
                font.get_nominal_glyph(ord(character)) is not None
                for character in unicodedata.normalize(form, text)
                if unicodedata.category(character) != "Cf"
            )
            for form in _FORMS
        )

    def shape_line(self, name: str, text: str, *, language: str) -> ShapedLine:
        """Give a line that runs one way, as the letters in it ask, in one font."""
        font = self._font(name)
        buffer = uharfbuzz.Buffer()
        buffer.add_str(text)
        buffer.guess_segment_properties()
        if language:
            buffer.language = language
        uharfbuzz.shape(font, buffer, _FEATURES)
        units_per_em, along = font.face.upem, 0
        starts: list[float] = []
        positions = buffer.glyph_positions
        for position in positions:
            starts.append((along + position.x_offset) / units_per_em)
            along += position.x_advance
        numbers = tuple(info.codepoint for info in buffer.glyph_infos)
        is_level = not any(position.y_offset for position in positions)
        return ShapedLine(numbers, tuple(starts), is_level)

    def shape(self, name: str, part: Part, *, language: str) -> tuple[ShapedGlyph, ...]:
        """Give the glyphs of a part from left to right, without blanks."""
        font = self._font(name)
        buffer = uharfbuzz.Buffer()
        buffer.add_str(part.text)
        buffer.guess_segment_properties()
        if part.way is not Way.NEUTRAL:
            buffer.direction = "rtl" if part.way is Way.LEFTWARD else "ltr"
        if language:
            buffer.language = language
        uharfbuzz.shape(font, buffer, _FEATURES)
        return tuple(self._shaped(name, buffer, font.face.upem))

    def _shaped(
        self, name: str, buffer: uharfbuzz.Buffer, units_per_em: int
    ) -> Iterator[ShapedGlyph]:
        along = 0
        for info, position in zip(buffer.glyph_infos, buffer.glyph_positions, strict=True):
            if info.codepoint not in self.blanks(name):
                x = (along + position.x_offset) / units_per_em
                yield ShapedGlyph(info.codepoint, x, position.y_offset / units_per_em)
            along += position.x_advance

    def _font(self, name: str) -> uharfbuzz.Font:
        if name not in self._fonts:
            blob = uharfbuzz.Blob.from_file_path(str(self._files[name]))
            self._fonts[name] = uharfbuzz.Font(uharfbuzz.Face(blob))
        return self._fonts[name]


def mirrored(part: Part) -> Iterable[Part]:
    """Give the ways a part may run: both for a neutral sign, whose bracket may be turned round."""
    if part.way is not Way.NEUTRAL:
        return (part,)
    return (Part(part.text, Way.RIGHTWARD), Part(part.text, Way.LEFTWARD))
