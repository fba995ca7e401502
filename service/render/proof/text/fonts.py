"""Every glyph a plate shows is one its lists name, so that it travels with the file.

That the fonts of a file are the shipped ones, glyph by glyph, is for the proof of the finished file
to say: plates name them by number alone.
"""

from __future__ import annotations

import struct
from collections.abc import Iterator, Mapping, Sequence
from functools import cached_property

from service.render.plates.plate import Plate
from service.render.proof.places import at_point
from service.render.proof.text.lines import InkedLine


class PlateFonts:
    """The glyphs a plate lists, by the names of their fonts."""

    def __init__(self, plate: Plate, names: Sequence[str]) -> None:
        """Read the lists; `names` are the shipped fonts in their order."""
        self._plate = plate
        self._names = names
        self.glyphs = {names[use.font]: frozenset(_numbers(use.glyphs)) for use in plate.fonts}

    @cached_property
    def texts(self) -> Mapping[tuple[str, int], str]:
        """What each glyph stands for, by font and number."""
        return {
            (self._names[use.font], number): text
            for use in self._plate.fonts
            for number, text in zip(_numbers(use.glyphs), use.texts, strict=True)
        }

    def faults(self, inked: Sequence[InkedLine]) -> Iterator[str]:
        """Say where a sign is shown that no font has, or that the lists leave out."""
        for line in inked:
            for piece in line.run.pieces:
                if 0 in piece.numbers:
                    yield (
                        "an empty box stands for a sign no font has, in the line that begins"
                        f" {at_point(line.x_mm, line.y_mm)}"
                    )
                if not self.glyphs.get(piece.font, frozenset()).issuperset(piece.numbers):
                    yield (
                        f"a sign is left out of the list of {piece.font}, in the line that begins"
                        f" {at_point(line.x_mm, line.y_mm)}"
                    )


def _numbers(glyphs: bytes) -> tuple[int, ...]:
    return struct.unpack(f"<{len(glyphs) // 2}H", glyphs)
