"""Fonts in a file: one program a face, cut down to the glyphs that all plates together show.

Glyphs keep their own numbers, so plates made at different times fit one program. Hinting is left
out: it moves outlines onto the dots of a coarse screen, print has no use for it, and without it
every viewer draws the same outline.
"""

from __future__ import annotations

import hashlib
from array import array
from collections.abc import Iterable, Mapping, Sequence
from functools import lru_cache
from pathlib import Path

import uharfbuzz as hb

from service.render.compose.literals import numeral
from service.render.compose.writer import PdfWriter
from service.render.plates.plate import FontUse

_EM = 1000
"""Widths and measures in a PDF are thousandths of the em (ISO 32000-1, 9.2.4)."""
_SYMBOLIC = 4
_MOST_IN_BLOCK = 100
"""Entries in one block of a table of codes (ISO 32000-1, 9.7.5.4)."""
_FACES_KEPT = 32
# What a viewer never asks of a font it shows by glyph numbers.
_LEFT_OUT = (
    *("BASE", "DSIG", "GDEF", "GPOS", "GSUB", "OS/2", "STAT"),
    *("VORG", "cmap", "gasp", "name", "post", "vhea", "vmtx"),
)
_KEPT_AND_DROPPED = (
    hb.SubsetFlags.RETAIN_GIDS
    | hb.SubsetFlags.NO_HINTING
    | hb.SubsetFlags.NO_LAYOUT_CLOSURE
    # A sign the font lacks is seen as an empty box, not passed over.
    | hb.SubsetFlags.NOTDEF_OUTLINE
)
_SILENT = "\N{ZERO WIDTH SPACE}"
"""Stands for a glyph that has no text: left without any, readers make up a letter."""

_TO_UNICODE = b"""/CIDInit /ProcSet findresource begin
12 dict begin
begincmap
/CIDSystemInfo <</Registry (Adobe) /Ordering (UCS) /Supplement 0>> def
/CMapName /Adobe-Identity-UCS def
/CMapType 2 def
1 begincodespacerange
<0000> <ffff>
endcodespacerange
%b
endcmap
CMapName currentdict /CMap defineresource pop
end
end"""


class FontBook:
    """The fonts of one file, gathered from its plates and written at its end."""

    def __init__(self, writer: PdfWriter, shipped: Sequence[tuple[str, Path]]) -> None:
        """Name the shipped fonts in the order plates count them."""
        self._writer = writer
        self._shipped = shipped
        self.dictionary = writer.reserve()
        self._texts: dict[int, dict[int, str]] = {}
        self._settled: dict[int, set[int]] = {}

    def note(self, use: FontUse) -> None:
        """Remember the glyphs of a plate; the first text a glyph was given is kept."""
        glyphs = array("H", use.glyphs)
        settled = self._settled.get(use.font)
        if settled is not None and settled.issuperset(glyphs):
            return
        texts = self._texts.setdefault(use.font, {})
        for glyph, text in zip(glyphs, use.texts, strict=True):
            texts[glyph] = texts.get(glyph) or text
        # A glyph without a text may still be given one by a later plate.
        self._settled[use.font] = {glyph for glyph, text in texts.items() if text}

    def write(self) -> None:
        """Write every font, and the dictionary that names them."""
        entries = [b"/F%d %d 0 R" % (font, self._write_font(font)) for font in sorted(self._texts)]
        self._writer.add(b"<<%b>>" % b"".join(entries), number=self.dictionary)

    def _write_font(self, font: int) -> int:
        name, path = self._shipped[font]
        texts = dict(sorted(self._texts[font].items()))
        face = open_face(path)
        base_name = b"%b+%b" % (_prefix(texts), name.encode("ascii"))
        program = subset(face, texts)
        file = self._writer.add_deflated(b"/Length1 %d" % len(program), program)
        described = self._writer.add(_descriptor(face, base_name, file))
        descendant = self._writer.add(
            b"<</Type/Font/Subtype/CIDFontType2/BaseFont/%b/CIDToGIDMap/Identity"
            b"/CIDSystemInfo<</Registry(Adobe)/Ordering(Identity)/Supplement 0>>"
            b"/FontDescriptor %d 0 R/W[%b]>>" % (base_name, described, _widths(face, texts))
        )
        to_unicode = self._writer.add_deflated(b"", _TO_UNICODE % _code_blocks(texts))
        return self._writer.add(
            b"<</Type/Font/Subtype/Type0/BaseFont/%b/Encoding/Identity-H"
            b"/DescendantFonts[%d 0 R]/ToUnicode %d 0 R>>" % (base_name, descendant, to_unicode)
        )


@lru_cache(maxsize=_FACES_KEPT)
def open_face(path: Path) -> hb.Face:
    """Open a font file, which stays open for the files that follow."""
    return hb.Face(hb.Blob.from_file_path(str(path)))


def subset(face: hb.Face, glyphs: Iterable[int]) -> bytes:
    """Give a font program of some glyphs, at their own numbers."""
    wanted = hb.SubsetInput()
    wanted.glyph_set.update(glyphs)
    wanted.flags = _KEPT_AND_DROPPED
    wanted.drop_table_tag_set.update(int.from_bytes(tag.encode(), "big") for tag in _LEFT_OUT)
    return bytes(hb.subset(face, wanted).blob.data)


def _prefix(texts: Mapping[int, str]) -> bytes:
    """Give six capitals that name a set of glyphs (ISO 32000-1, 9.6.4)."""
    digest = hashlib.sha256(array("H", texts).tobytes()).digest()
    return bytes(ord("A") + byte % 26 for byte in digest[:6])


def _descriptor(face: hb.Face, base_name: bytes, file: int) -> bytes:
    font, scale = hb.Font(face), _EM / face.upem
    extents = font.get_font_extents("ltr")
    capitals = font.get_metric_position_with_fallback(hb.OTMetricsTag.CAP_HEIGHT)
    # Four signed numbers stand at byte 36 of this table (OpenType, head).
    head = bytes(face.reference_table("head").data)
    box = [int.from_bytes(head[at : at + 2], "big", signed=True) for at in (36, 38, 40, 42)]
    # Fonts do not tell how thick their stems are, and nobody asks where they are embedded:
    # 0 is "not known" (ISO 32000-2, table 120).
    return (
        b"<</Type/FontDescriptor/FontName/%b/Flags %d/FontBBox[%b]/ItalicAngle 0/Ascent %b"
        b"/Descent %b/CapHeight %b/StemV 0/FontFile2 %d 0 R>>"
        % (
            base_name,
            _SYMBOLIC,
            b" ".join(numeral(side * scale) for side in box),
            numeral(extents.ascender * scale),
            numeral(extents.descender * scale),
            numeral(capitals * scale),
            file,
        )
    )


def _widths(face: hb.Face, glyphs: Iterable[int]) -> bytes:
    """Write advance widths, glyphs that follow each other together."""
    font, scale = hb.Font(face), _EM / face.upem
    parts: list[bytes] = []
    follows = -1
    for glyph in glyphs:
        if glyph != follows:
            parts.append(b"%b%d[" % (b"]" if parts else b"", glyph))
        parts.append(numeral(font.get_glyph_h_advance(glyph) * scale) + b" ")
        follows = glyph + 1
    return b"".join(parts) + b"]"


def _code_blocks(texts: Mapping[int, str]) -> bytes:
    """Write what each glyph stands for."""
    entries = [
        b"<%04x> <%b>" % (glyph, (text or _SILENT).encode("utf-16-be").hex().encode())
        for glyph, text in texts.items()
    ]
    blocks = (entries[at : at + _MOST_IN_BLOCK] for at in range(0, len(entries), _MOST_IN_BLOCK))
    return b"\n".join(
        b"%d beginbfchar\n%b\nendbfchar" % (len(block), b"\n".join(block)) for block in blocks
    )
