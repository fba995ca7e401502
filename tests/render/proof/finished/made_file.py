"""A finished file, its plates, and what they are made of."""

from __future__ import annotations

import hashlib
import io
import zlib
from array import array
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

import pikepdf
import uharfbuzz
from pikepdf import Array, Dictionary, Name
from PIL import Image

from service.geometry import Point, Rect, Size
from service.render.compose.sheets import Parts, write_sheets
from service.render.matrix import Matrix
from service.render.plates.plate import FontUse, PictureUse, Plate, PlateProof, ProvedPlate
from service.render.reading.fonts import shipped_fonts
from service.render.task import FONTS_CONF
from service.sheets.correction import Correction
from service.sheets.impose import Sheet
from service.sheets.stock import Medium, Stock
from service.units import points_from_mm

FACE = Size(100.0, 60.0)
INK = Rect(5.0, 5.0, 80.0, 50.0)
_SHIPPED = shipped_fonts(FONTS_CONF.parent)
FONTS = tuple(_SHIPPED.values())
MARK = b"0 g 0.1 0.1 0.8 0.8 re f"


def stock(*, columns: int = 1, rows: int = 2, label: Size = FACE) -> Stock:
    """Make card for faces, two to an A4 sheet."""
    return Stock(
        name="test card",
        page=Size(210.0, 297.0),
        columns=columns,
        rows=rows,
        label=label,
        pitch_x_mm=label.width_mm + 5.0,
        pitch_y_mm=label.height_mm + 5.0,
        left_mm=20.0,
        top_mm=30.0,
        radius_mm=0.0,
        medium=Medium.CARD,
    )


def jpeg(tone: int) -> bytes:
    """Make a small grey photo."""
    data = io.BytesIO()
    Image.new("RGB", (120, 90), (tone, tone, tone)).save(data, "JPEG")
    return data.getvalue()


def use_of(tone: int) -> PictureUse:
    """Name a photo as a plate does."""
    return PictureUse(hashlib.sha256(jpeg(tone)).hexdigest(), 120, 90)


PHOTOS = {use_of(tone).sha256: jpeg(tone) for tone in (99, 120)}
PARTS = Parts(
    PHOTOS.__getitem__,
    {"caution": MARK}.__getitem__,
    tuple(shipped_fonts(FONTS_CONF.parent).items()),
)


@dataclass(frozen=True)
class MadePlates:
    """Plates at hand."""

    made: Mapping[str, ProvedPlate]

    def proved(self, keys: Sequence[str]) -> Mapping[str, ProvedPlate]:
        """Give those asked for."""
        return {key: self.made[key] for key in keys}

    def plates(self, keys: Sequence[str]) -> Mapping[str, Plate]:
        """Give those asked for without their proofs."""
        return {key: self.made[key].plate for key in keys}


def glyphs_of(text: str, font: int) -> dict[int, str]:
    """Give the glyphs of a text, each with its letter."""
    own = _font(FONTS[font])
    return {own.get_nominal_glyph(ord(letter)) or 0: letter for letter in text}


def plate(text: str, *, font: int = 0, tone: int | None = None, ink: Rect = INK) -> ProvedPlate:
    """Make a plate that says a text, and may show a photo and a mark."""
    glyphs = dict(sorted(glyphs_of(text, font).items()))
    written = "".join(f"{number:04x}" for number in glyphs_of(text, font))
    content = [f"0 g 15 15 60 8 re f BT 20 100 Td /F{font} 24 Tf <{written}> Tj ET"]
    pictures: tuple[PictureUse, ...] = ()
    if tone is not None:
        pictures = (use_of(tone),)
        content.append("q 60 0 0 45 150 60 cm /P0 Do Q q 20 0 0 20 150 20 cm /Mcaution Do Q")
    use = FontUse(font, array("H", glyphs).tobytes(), tuple(glyphs.values()))
    marks = ("caution",) if pictures else ()
    deflated = zlib.compress("\n".join(content).encode())
    made = Plate(FACE, deflated, (use,), pictures, marks, text)
    return ProvedPlate(made, PlateProof(1, 0, len(pictures), len(marks), ink))


def composed(path: Path, sheets: Sequence[Sheet], plates: Mapping[str, ProvedPlate]) -> Path:
    """Put plates on sheets."""
    with path.open("wb") as target:
        write_sheets(target, sheets, MadePlates(plates), PARTS, title="Lid cards")
    return path


def first_of(page: pikepdf.Page) -> pikepdf.Object:
    """Give the form a page names that was written first."""
    forms = page.obj.Resources.XObject
    return forms[min(forms.keys(), key=lambda name: int(name.removeprefix("/X")))]


def sent_matrix(rect: Rect, turned_deg: int, correction: Correction, page: Size) -> Matrix:
    """Give the matrix that takes three corners of a face to where they belong."""
    face = rect.size.turned if turned_deg else rect.size
    origin = Point(rect.x_mm, rect.y_mm if turned_deg else rect.bottom_mm)
    right = Point(rect.x_mm, rect.bottom_mm) if turned_deg else Point(rect.right_mm, rect.bottom_mm)
    top = Point(rect.right_mm, rect.y_mm) if turned_deg else Point(rect.x_mm, rect.y_mm)
    ends = [correction.moved(point) for point in (origin, right, top)]
    (x, y), (x1, y1), (x2, y2) = ((end.x_mm, page.height_mm - end.y_mm) for end in ends)
    width, height = face.width_mm, face.height_mm
    return (
        *((x1 - x) / width, (y1 - y) / width, (x2 - x) / height, (y2 - y) / height),
        *(points_from_mm(x), points_from_mm(y)),
    )


def font_object(pdf: pikepdf.Pdf, path: Path, glyphs: set[int]) -> pikepdf.Object:
    """Embed some glyphs of a font under their own numbers."""
    own = _font(path)
    wanted = uharfbuzz.SubsetInput()
    wanted.glyph_set.update(glyphs)
    wanted.flags = uharfbuzz.SubsetFlags.RETAIN_GIDS | uharfbuzz.SubsetFlags.NO_HINTING
    program = uharfbuzz.subset(own.face, wanted).blob.data
    widths = Array()
    for glyph in sorted(glyphs):
        widths.append(glyph)
        widths.append(Array([round(own.get_glyph_h_advance(glyph) * 1000 / own.face.upem)]))
    described = Dictionary(
        Type=Name.FontDescriptor, FontName=Name("/" + path.stem), FontFile2=pdf.make_stream(program)
    )
    inner = Dictionary(
        Type=Name.Font,
        Subtype=Name.CIDFontType2,
        BaseFont=Name("/" + path.stem),
        CIDToGIDMap=Name.Identity,
        FontDescriptor=pdf.make_indirect(described),
        W=widths,
    )
    return pdf.make_indirect(
        Dictionary(
            Type=Name.Font,
            Subtype=Name.Type0,
            BaseFont=Name("/" + path.stem),
            Encoding=Name("/Identity-H"),
            DescendantFonts=Array([pdf.make_indirect(inner)]),
        )
    )


def _font(path: Path) -> uharfbuzz.Font:
    return uharfbuzz.Font(uharfbuzz.Face(uharfbuzz.Blob.from_file_path(str(path))))
