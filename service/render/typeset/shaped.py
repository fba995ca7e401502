"""Lines as the shaper gives them: runs of glyphs, still in its own units and with its own fonts."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any, NamedTuple

from service.render.pango import Paragraphs

EMPTY_GLYPH = 0x0FFFFFFF
"""The number of a glyph that shows nothing; above it are those of characters no font holds."""
NOTDEF = 0
"""The glyph every font has for a character it does not hold."""
_INTS_PER_GLYPH = 5
_BYTES_PER_INT = 4


class Run(NamedTuple):
    """Glyphs in one font from left to right, in Pango units, y downwards.

    `start` and `length` tell the bytes of the line they stand for, `clusters` the byte from `start`
    at which the text of each glyph begins. `font` is a C pointer, good until the next line is set.
    A tuple because one is made for every piece of text.
    """

    font: Any
    start: int
    length: int
    is_leftward: bool
    numbers: list[int]
    widths: list[int]
    x_offsets: list[int]
    y_offsets: list[int]
    clusters: list[int]


class Extents(NamedTuple):
    """The advance width of a line, and how far it reaches above and below its baseline."""

    width: int
    ascent: int
    descent: int


class LineShaper(Paragraphs):
    """Shapes single lines, besides all that paragraphs can do."""

    def shape_line(
        self, text: bytes, *, size_px: float, weight: int, language: str, is_right_to_left: bool
    ) -> None:
        """Lay a text out on one line in a base direction that is given, not found."""
        self._speak(language, is_right_to_left=is_right_to_left)
        self._set(text, self._describe(size_px, weight), -1)

    def extents(self) -> Extents:
        """Measure the line laid out last."""
        logical = self._extents(self._lib.pango.pango_layout_get_line_readonly(self._layout, 0))
        top, height = logical.y, logical.height
        return Extents(logical.width, -top, height + top)

    def runs(self) -> Iterator[Run]:
        """Give the glyphs of the line laid out last, from the left."""
        ffi = self._lib.ffi
        node = self._lib.pango.pango_layout_get_line_readonly(self._layout, 0).runs
        while node:
            run = node.run
            item, glyphs = run.item, run.glyphs
            count = glyphs.count
            raw = ffi.buffer(glyphs.glyphs, count * _INTS_PER_GLYPH * _BYTES_PER_INT)
            ints = memoryview(raw).cast("i").tolist()
            yield Run(
                item.font,
                item.offset,
                item.length,
                bool(item.level & 1),
                ints[0::_INTS_PER_GLYPH],
                ints[1::_INTS_PER_GLYPH],
                ints[2::_INTS_PER_GLYPH],
                ints[3::_INTS_PER_GLYPH],
                ffi.unpack(glyphs.clusters, count),
            )
            node = node.next

    def font_file(self, font: Any) -> Path:  # noqa: ANN401 - a C pointer
        """Name the file a font was loaded from."""
        ffi = self._lib.ffi
        pattern = self._lib.pangoft2.pango_fc_font_get_pattern(font)
        name = ffi.new("const char **")
        self._lib.fontconfig.FcPatternGetString(pattern, b"file", 0, name)
        return Path(ffi.string(name[0]).decode())

    def kept(self, font: Any) -> Any:  # noqa: ANN401 - a C pointer
        """Keep a font from being given up, as long as the pointer returned lives."""
        return self._owned(self._lib.gobject.g_object_ref(font))
