"""The glyphs of a line, read from the operators that show it (ISO 32000-1, 9.3 and 9.4).

Fonts are written by their own glyph numbers as two-byte codes, so what is drawn can be compared
with what a shaper gives, whatever the text extracted from the file would be. Lengths are mm from
where the line begins, y downwards.
"""

from __future__ import annotations

import re
import struct
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from service.geometry import Point, Rect
from service.render.reading.shaping import Shaper
from service.units import mm_from_points

_KEPT_RUNS = 2048
_UNITS_PER_EM = 1000.0
_NUMBER = rb"([+-]?+[\d.]++)\s++"
_STEPS = {
    "font": rb"/F(\d++)\s++" + _NUMBER + rb"Tf\b",
    "show": rb"\[((?:<[0-9A-Fa-f]*+>|[-+.\d\s]++)*+)\]\s*+TJ\b",
    "show one": rb"(<[0-9A-Fa-f]++>)\s*+Tj\b",
    "rise": _NUMBER + rb"Ts\b",
    "say": rb"/Span\s*+<<\s*+/ActualText\s*+<(?:FEFF|feff)([0-9A-Fa-f]*+)>\s*+>>\s*+BDC\b",
    "said": rb"(EMC)\b",
}
_STEP = re.compile(rb"(?:" + rb"|".join(_STEPS.values()) + rb")\s*+")
_PART = re.compile(rb"<([^>]*+)>|([-+.\d]++)")
_FONT, _SHOW, _SHOW_ONE, _RISE, _SAY = 2, 3, 4, 5, 6


@dataclass(frozen=True, slots=True)
class Glyph:
    """One glyph as it is shown: the name of its font, and the size of the em in mm."""

    font: str
    number: int
    origin: Point
    size_mm: float


@dataclass(frozen=True, slots=True)
class Piece:
    """Glyphs in a row, set in one font and size: their numbers, and where each begins."""

    font: str
    size_mm: float
    rise_mm: float
    numbers: tuple[int, ...]
    starts_mm: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class SetRun:
    """One line as it is inked.

    `lefts_mm` and `rights_mm` are the ends of each glyph that shows anything, and `ink` holds them
    all, None where nothing is shown. `said` is what a reader is told to take it for, None where it
    is told nothing. `unread` is the beginning of what could not be understood.
    """

    pieces: tuple[Piece, ...]
    lefts_mm: tuple[float, ...]
    rights_mm: tuple[float, ...]
    ink: Rect | None
    said: str | None
    unread: str

    @property
    def glyphs(self) -> tuple[Glyph, ...]:
        """Every glyph in the order of drawing."""
        return tuple(
            Glyph(piece.font, number, Point(start_mm, -piece.rise_mm), piece.size_mm)
            for piece in self.pieces
            for number, start_mm in zip(piece.numbers, piece.starts_mm, strict=True)
        )


class RunReader:
    """Reads lines, and remembers those read last: labels repeat many."""

    def __init__(self, names: Sequence[str], shaper: Shaper) -> None:
        """Read with the shipped fonts in the order in which plates count them."""
        self._names = names
        self._shaper = shaper
        self.read = lru_cache(_KEPT_RUNS)(self._read)

    def _read(self, operators: bytes) -> SetRun:
        """Read the operators between where a line begins and its end."""
        pen = _Pen(self._names, self._shaper)
        end = 0
        while end < len(operators) and (step := _STEP.match(operators, end)):
            if not pen.follow(step):
                break
            end = step.end()
        unread = operators[end : end + 40].decode("latin-1")
        return SetRun(
            tuple(pen.pieces), tuple(pen.lefts_mm), tuple(pen.rights_mm), pen.ink, pen.said, unread
        )


class _Pen:
    """Where the next glyph goes, and what has been shown so far."""

    def __init__(self, names: Sequence[str], shaper: Shaper) -> None:
        self._names = names
        self._shaper = shaper
        self._font = ""
        self._size_mm = 0.0
        self._rise_mm = 0.0
        self._along_mm = 0.0
        self._tops_mm: list[float] = []
        self.pieces: list[Piece] = []
        self.lefts_mm: list[float] = []
        self.rights_mm: list[float] = []
        self.said: str | None = None

    def follow(self, step: re.Match[bytes]) -> bool:
        """Take one step; False where there is no such font."""
        kind = step.lastindex
        if kind == _FONT:
            number = int(step[1])
            if number >= len(self._names):
                return False
            self._font, self._size_mm = self._names[number], mm_from_points(float(step[2]))
        elif kind in {_SHOW, _SHOW_ONE}:
            if not self._font:
                return False
            self._show(step[kind])
        elif kind == _RISE:
            self._rise_mm = mm_from_points(float(step[_RISE]))
        elif kind == _SAY:
            said = bytes.fromhex(step[_SAY].decode("ascii")).decode("utf-16-be")
            self.said = (self.said or "") + said
        return True

    @property
    def ink(self) -> Rect | None:
        """What holds all that is shown."""
        if not self.lefts_mm:
            return None
        left_mm, right_mm = min(self.lefts_mm), max(self.rights_mm)
        top_mm, bottom_mm = min(self._tops_mm), max(self._tops_mm)
        return Rect(left_mm, top_mm, right_mm - left_mm, bottom_mm - top_mm)

    def _show(self, parts: bytes) -> None:
        numbers: list[int] = []
        starts_mm: list[float] = []
        advances = self._shaper.advances(self._font)
        along_mm, size_mm = self._along_mm, self._size_mm
        for codes, shift in _PART.findall(parts):
            if shift:
                along_mm -= float(shift) / _UNITS_PER_EM * size_mm
                continue
            for number in _numbers(codes):
                numbers.append(number)
                starts_mm.append(along_mm)
                along_mm += advances[number] * size_mm
        self._along_mm = along_mm
        if not numbers:
            return
        piece = Piece(self._font, size_mm, self._rise_mm, tuple(numbers), tuple(starts_mm))
        self.pieces.append(piece)
        self._ink(piece)

    def _ink(self, piece: Piece) -> None:
        boxes = self._shaper.boxes(piece.font)
        size_mm, baseline_mm = piece.size_mm, -piece.rise_mm
        lowest, highest = 0.0, 0.0
        shown = False
        for number, start_mm in zip(piece.numbers, piece.starts_mm, strict=True):
            left, bottom, right, top = boxes[number]
            if left < right:
                self.lefts_mm.append(start_mm + left * size_mm)
                self.rights_mm.append(start_mm + right * size_mm)
                lowest = bottom if not shown or bottom < lowest else lowest
                highest = top if not shown or top > highest else highest
                shown = True
        if shown:
            self._tops_mm += (baseline_mm - highest * size_mm, baseline_mm - lowest * size_mm)


def _numbers(codes: bytes) -> tuple[int, ...]:
    """Give the two-byte codes of a string of hexadecimal digits, high byte first."""
    return struct.unpack(f">{len(codes) // 4}H", bytes.fromhex(codes.decode("ascii")))
