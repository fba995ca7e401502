"""Plates made by hand, and what a file of them is made of."""

from __future__ import annotations

import hashlib
import io
import zlib
from array import array
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

import pikepdf
import uharfbuzz
from PIL import Image

from service.geometry import Size
from service.render.compose.fonts import open_face
from service.render.compose.sheets import Parts, write_faces, write_sheets
from service.render.plates.plate import FontUse, PictureUse, Plate
from service.render.reading.fonts import shipped_fonts
from service.render.task import FONTS_CONF
from service.sheets.impose import Face, Sheet, impose_pages
from service.sheets.stock import Medium, Stock

FACE = Size(100.0, 60.0)
SHIPPED = tuple(shipped_fonts(FONTS_CONF.parent).items())
MASK = "q 20 0 0 20 200 20 cm BI /W 8 /H 2 /IM true /BPC 1 /D [1 0] /F /AHx ID ff00> EI Q"


def jpeg(tone: int, *, mode: str = "RGB", size_px: tuple[int, int] = (12, 9)) -> bytes:
    """Make a small picture of one tone."""
    data = io.BytesIO()
    Image.new(mode, size_px, tone if mode == "L" else (tone,) * len(mode)).save(data, "JPEG")
    return data.getvalue()


PHOTOS = {hashlib.sha256(data).hexdigest(): data for data in (jpeg(90), jpeg(160))}
PARTS = Parts(PHOTOS.__getitem__, {"caution": b"0.1 0.1 0.8 0.8 re f"}.__getitem__, SHIPPED)


def font_use(font: int, texts: Mapping[int, str]) -> FontUse:
    """Give the glyphs of a font with what they stand for."""
    glyphs = sorted(texts)
    return FontUse(font, array("H", glyphs).tobytes(), tuple(texts[glyph] for glyph in glyphs))


def glyphs_of(text: str, *, font: int = 0) -> list[int]:
    """Look up the glyph of each sign."""
    own = uharfbuzz.Font(open_face(SHIPPED[font][1]))
    return [own.get_nominal_glyph(ord(sign)) or 0 for sign in text]


def plate(
    text: str,
    *,
    font: int = 0,
    photos: Sequence[str] = (),
    marks: tuple[str, ...] = (),
    size: Size = FACE,
) -> Plate:
    """Make a face that says a text, and shows photos and marks."""
    glyphs = glyphs_of(text, font=font)
    shown = "".join(f"{glyph:04x}" for glyph in glyphs)
    drawn = [f"BT /F{font} 12 Tf 10 10 Td <{shown}> Tj ET"]
    drawn += [f"q 30 0 0 20 {40 * n} 60 cm /P{n} Do Q" for n in range(len(photos))]
    drawn += [f"q 20 0 0 20 {40 * n} 90 cm /M{code} Do Q" for n, code in enumerate(marks)]
    content = zlib.compress("\n".join([*drawn, MASK]).encode("ascii"))
    uses = (font_use(font, dict(zip(glyphs, text, strict=True))),)
    pictures = tuple(PictureUse(sha256, 12, 9) for sha256 in photos)
    return Plate(size, content, uses, pictures, marks, text)


@dataclass(frozen=True)
class Plates:
    """Plates at hand, and how they were asked for."""

    made: Mapping[str, Plate]
    asked: list[tuple[str, ...]] = field(default_factory=list)

    def plates(self, keys: Sequence[str]) -> Mapping[str, Plate]:
        """Give those asked for."""
        self.asked.append(tuple(keys))
        return {key: self.made[key] for key in keys}


def stock(*, columns: int = 1, rows: int = 2, medium: Medium = Medium.CARD) -> Stock:
    """Make a sheet for faces, two to an A4 page unless told otherwise."""
    return Stock(
        name="test card",
        page=Size(210.0, 297.0),
        columns=columns,
        rows=rows,
        label=FACE,
        pitch_x_mm=FACE.width_mm + 5.0,
        pitch_y_mm=FACE.height_mm + 5.0,
        left_mm=20.0,
        top_mm=30.0,
        radius_mm=0.0,
        medium=medium,
    )


def sheets(*keys: str, on: Stock | None = None) -> tuple[Sheet, ...]:
    """Put faces on sheets of two."""
    return impose_pages([Face(key, FACE) for key in keys], on or stock())


def written(
    made: Mapping[str, Plate], on: Sequence[Sheet], *, parts: Parts = PARTS, tagged: bool = True
) -> bytes:
    """Write plates on sheets."""
    data = io.BytesIO()
    write_sheets(data, on, Plates(made), parts, title="Lid cards", tagged=tagged)
    return data.getvalue()


def written_faces(*plates: Plate, parts: Parts = PARTS) -> bytes:
    """Write plates as they are."""
    data = io.BytesIO()
    write_faces(data, plates, parts)
    return data.getvalue()


def opened(data: bytes) -> pikepdf.Pdf:
    """Open a file that is whole."""
    pdf = pikepdf.open(io.BytesIO(data))
    assert pdf.check_pdf_syntax() == []
    assert pdf.get_warnings() == []
    return pdf


def streams(pdf: pikepdf.Pdf, *, subtype: str) -> list[pikepdf.Stream]:
    """Give all streams of a kind."""
    found = [one for one in pdf.objects if isinstance(one, pikepdf.Stream)]
    return [one for one in found if one.get(pikepdf.Name.Subtype) == pikepdf.Name("/" + subtype)]
