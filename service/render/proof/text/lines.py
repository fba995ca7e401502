"""Lines of text a page asks for, and lines of glyphs a plate shows, each in its place."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from service.geometry import Rect
from service.pages.page import TextBlock
from service.render.reading.content import Run
from service.render.reading.glyphs import RunReader, SetRun
from service.units import mm_from_points

SIDEWAYS_MM = 0.3
"""How far ink may stand out of its rectangle sideways: overhanging letters; ours."""
_SIDEWAYS_RATIO = 0.08
"""The same in ems, for large type: the j of the shipped faces begins 0.07 em before its place."""
_UPWARDS_RATIO = 0.4
"""How far, in ems, up and down: stacked marks and deep letters; ours."""


@dataclass(frozen=True, slots=True)
class Line:
    """One line of a block, and the band of the face it stands in."""

    block: TextBlock
    text: str
    rect: Rect

    @property
    def em_mm(self) -> float:
        """The type size."""
        return mm_from_points(self.block.style.size_pt)

    def holds(self, ink: Rect) -> bool:
        """Tell whether ink goes no further than it may."""
        rect, em_mm = self.rect, self.em_mm
        across_mm, up_mm = max(SIDEWAYS_MM, _SIDEWAYS_RATIO * em_mm), _UPWARDS_RATIO * em_mm
        return (
            rect.x_mm - across_mm <= ink.x_mm
            and ink.right_mm <= rect.right_mm + across_mm
            and rect.y_mm - up_mm <= ink.y_mm
            and ink.bottom_mm <= rect.bottom_mm + up_mm
        )


@dataclass(frozen=True, slots=True)
class InkedLine:
    """A line of glyphs where it stands on the face: `x_mm` and `y_mm` are where it begins.

    `ink` holds all that is shown, None where nothing is.
    """

    x_mm: float
    y_mm: float
    operators: bytes
    run: SetRun
    ink: Rect | None

    def spelled(self, texts: Mapping[tuple[str, int], str]) -> str:
        """Give the text its glyphs stand for, by font and number."""
        return "".join(
            texts.get((piece.font, number), "\ufffd")
            for piece in self.run.pieces
            for number in piece.numbers
        )


def lines_of(blocks: Iterable[TextBlock]) -> tuple[Line, ...]:
    """Give the lines of blocks, each one line pitch high; a line without signs is left out."""
    return tuple(
        Line(block, text, Rect(rect.x_mm, rect.y_mm + number * pitch_mm, rect.width_mm, pitch_mm))
        for block in blocks
        for rect, pitch_mm in [(block.rect, block.style.leading_mm)]
        for number, text in enumerate(block.lines)
        if text.strip()
    )


def inked_lines(runs: Sequence[Run], reader: RunReader, *, height_mm: float) -> list[InkedLine]:
    """Give the lines of a plate that is `height_mm` high, in the order of drawing."""
    return [
        InkedLine(x_mm, y_mm, run.operators, read, read.ink and read.ink.moved(x_mm, y_mm))
        for run in runs
        for x_mm, y_mm in [(mm_from_points(run.x_pt), height_mm - mm_from_points(run.y_pt))]
        for read in [reader.read(run.operators)]
    ]


class Bands:
    """Lines of glyphs by the height at which they stand."""

    def __init__(self, inked: Sequence[InkedLine]) -> None:
        """Sort them."""
        self._inked = inked
        self._order = sorted(range(len(inked)), key=lambda index: inked[index].y_mm)
        self._heights_mm = [inked[index].y_mm for index in self._order]

    def within(self, rect: Rect) -> list[int]:
        """Give which lines begin in a band, in the order of drawing."""
        first = bisect_left(self._heights_mm, rect.y_mm)
        last = bisect_left(self._heights_mm, rect.bottom_mm)
        left_mm, right_mm = rect.x_mm - SIDEWAYS_MM, rect.right_mm + SIDEWAYS_MM
        found = [
            index
            for index in self._order[first:last]
            if left_mm <= self._inked[index].x_mm <= right_mm
        ]
        found.sort()
        return found
