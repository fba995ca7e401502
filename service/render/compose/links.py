"""Links: where a viewer opens an address, over the symbol that holds it (ISO 32000-1, 12.5.6.5)."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from functools import lru_cache

from service.geometry import Rect, Size
from service.render.compose.literals import references, text_literal
from service.render.compose.place import correction_matrix, placed_matrix, written
from service.render.compose.writer import PdfWriter
from service.render.matrix import Matrix, times
from service.render.plates.plate import Link
from service.sheets.correction import Correction
from service.sheets.impose import Sheet
from service.units import points_from_mm


def write_links(writer: PdfWriter, sheet: Sheet, links: Mapping[str, Sequence[Link]]) -> bytes:
    """Write the links of a sheet by the keys of its faces; gives the page's entries.

    An address with other signs than ASCII is left out: no viewer agrees with another on those.
    """
    numbers = [
        writer.add(
            b"<</Type/Annot/Subtype/Link/Border[0 0 0]/Rect[%b]/A<</S/URI/URI%b>>>>"
            % (box, text_literal(address))
        )
        for box, address in _links_on(sheet, links)
        if address.isascii()
    ]
    return b"/Annots%b" % references(numbers) if numbers else b""


def _links_on(sheet: Sheet, links: Mapping[str, Sequence[Link]]) -> Iterator[tuple[bytes, str]]:
    page, correction = sheet.stock.page, sheet.correction
    for placement in sheet.placements:
        for link in links.get(placement.key, ()):
            place = placement.rect, placement.turned_deg
            yield _written_box(link.rect, place, page, correction), link.address


# Sheets of labels are alike: most symbols stand where one stood on the sheet before.
@lru_cache(maxsize=1024)
def _written_box(rect: Rect, place: tuple[Rect, int], page: Size, correction: Correction) -> bytes:
    placed, turned_deg = place
    height_mm = placed.height_mm if turned_deg % 180 == 0 else placed.width_mm
    matrix = times(
        placed_matrix(placed, page=page, turned_deg=turned_deg),
        correction_matrix(correction, page=page),
    )
    return written(_box(rect, height_mm, matrix)).encode("ascii")


def _box(rect: Rect, face_height_mm: float, matrix: Matrix) -> tuple[float, float, float, float]:
    """Give left, bottom, right and top of the upright box around a link on the sheet."""
    xs_pt = points_from_mm(rect.x_mm), points_from_mm(rect.right_mm)
    ys_pt = (
        points_from_mm(face_height_mm - rect.bottom_mm),
        points_from_mm(face_height_mm - rect.y_mm),
    )
    a, b, c, d, e, f = matrix
    corners = [(a * x + c * y + e, b * x + d * y + f) for x in xs_pt for y in ys_pt]
    across, up = zip(*corners, strict=True)
    return min(across), min(up), max(across), max(up)
