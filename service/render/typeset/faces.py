"""The shipped fonts as the shaper's pointers name them: their numbers and their own advances."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import uharfbuzz

from service.render.reading.fonts import shipped_fonts
from service.render.typeset.shaped import EMPTY_GLYPH, NOTDEF, LineShaper

_KEPT_POINTERS = 1024
"""Fonts kept at a time; Pango has one for every face in every size."""


class _Codes(dict[int, tuple[int, str]]):
    """Advance width in thousandths of the em, and code in hexadecimal digits, of each glyph.

    The numbers of characters the font does not hold give the glyph for them.
    """

    def __init__(self, font: uharfbuzz.Font, units_per_em: int) -> None:
        super().__init__()
        self._font = font
        self._units_per_em = units_per_em

    def __missing__(self, number: int) -> tuple[int, str]:
        if number > EMPTY_GLYPH:
            return self[NOTDEF]
        advance = self._font.get_glyph_h_advance(number)
        found = round(advance * 1000 / self._units_per_em), f"{number:04x}"
        self[number] = found
        return found


class Face:
    """One font file: its number in the order of `fonts.toml`, and what its glyphs are."""

    def __init__(self, number: int, file: Path) -> None:
        """Open the file."""
        face = uharfbuzz.Face(uharfbuzz.Blob.from_file_path(str(file)))
        self._font = uharfbuzz.Font(face)
        self.number = number
        self.codes = _Codes(self._font, face.upem)

    def shape(self, text: str) -> list[tuple[int, float, int, int]]:
        """Shape a piece of Latin text: number, advance in thousandths of the em, and offsets."""
        buffer = uharfbuzz.Buffer()
        buffer.add_str(text)
        buffer.script, buffer.language, buffer.direction = "Latn", "en", "ltr"
        uharfbuzz.shape(self._font, buffer, {"tnum": True})
        scale = 1000 / self._font.face.upem
        return [
            (info.codepoint, place.x_advance * scale, place.x_offset, place.y_offset)
            for info, place in zip(buffer.glyph_infos, buffer.glyph_positions, strict=True)
        ]

    def shows(self, character: str, glyph: int) -> bool:
        """Tell whether a glyph is the one that stands for a character before any shaping."""
        return bool(self._font.get_nominal_glyph(ord(character)) == glyph)


class Faces:
    """Finds the face behind a font the shaper chose."""

    def __init__(self, fonts_conf: Path, shaper: LineShaper) -> None:
        """Number the files beside a fontconfig file; none is opened yet."""
        self._shaper = shaper
        files = shipped_fonts(fonts_conf.parent).values()
        self._numbers = {file.name: number for number, file in enumerate(files)}
        self._faces: dict[str, Face] = {}
        self._by_pointer: dict[Any, tuple[Face, Any]] = {}
        self._by_number: dict[int, Face] = {}

    def face(self, pointer: Any) -> Face:  # noqa: ANN401 - a C pointer
        """Give the face of a font; it is kept alive, so that its address stays its own."""
        known = self._by_pointer.get(pointer)
        if known is None:
            if len(self._by_pointer) >= _KEPT_POINTERS:
                self._by_pointer.clear()
            known = self._open(self._shaper.font_file(pointer)), self._shaper.kept(pointer)
            self._by_pointer[pointer] = known
        return known[0]

    def numbered(self, number: int) -> Face:
        """Give the face of a number, which a line was set in before."""
        return self._by_number[number]

    def _open(self, file: Path) -> Face:
        if file.name not in self._faces:
            number = self._numbers[file.name]
            self._faces[file.name] = self._by_number[number] = Face(number, file)
        return self._faces[file.name]
