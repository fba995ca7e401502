"""The links of a sheet open what the plates on it name, where their symbols stand, and no more."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from service.geometry import Point, Rect
from service.render.plates.plate import Link
from service.render.reading.objects import Value
from service.render.reading.pdf_file import PdfFile
from service.sheets.impose import Placement, Sheet
from service.units import points_from_mm

_SAYS = {"/Type", "/Subtype", "/Border", "/Rect", "/A"}
_NEAR_PT = points_from_mm(0.01)


def link_faults(
    file: PdfFile,
    found: Value,
    sheet: Sheet,
    plates: Sequence[tuple[Placement, Sequence[Link]]],
) -> Iterator[str]:
    """Compare the links of a page, in order, with those of the plates placed on it."""
    wanted = [
        (_box_pt(link.rect, placement, sheet), link.address)
        for placement, links in plates
        for link in links
        if link.address.isascii()
    ]
    links = found if isinstance(found, list) else []
    if len(links) != len(wanted):
        yield f"it has {len(links)} links instead of {len(wanted)}"
        return
    for link, (box_pt, address) in zip(links, wanted, strict=True):
        said = file.dictionary(link)
        if not said.keys() <= _SAYS or said.get("/Subtype") != "/Link":
            yield f"a link says more than it should: {' '.join(sorted(said.keys()))}"
        elif said.get("/A") != {"/S": "/URI", "/URI": address.encode("ascii")}:
            yield f"a link does not lead to {address}"
        elif not _is_near(said.get("/Rect"), box_pt):
            yield f"the link to {address} stands elsewhere than its symbol"


def _box_pt(rect: Rect, placement: Placement, sheet: Sheet) -> tuple[float, ...]:
    """Give left, bottom, right and top of the box around what a rectangle of a face becomes."""
    corners = [
        sheet.correction.moved(_on_sheet(x_mm, y_mm, placement))
        for x_mm in (rect.x_mm, rect.right_mm)
        for y_mm in (rect.y_mm, rect.bottom_mm)
    ]
    xs_mm = [corner.x_mm for corner in corners]
    ys_mm = [sheet.stock.page.height_mm - corner.y_mm for corner in corners]
    return tuple(map(points_from_mm, (min(xs_mm), min(ys_mm), max(xs_mm), max(ys_mm))))


def _on_sheet(x_mm: float, y_mm: float, placement: Placement) -> Point:
    """Turn a point of a face clockwise by quarters into its place on the sheet."""
    placed = placement.rect
    if placement.turned_deg == 0:
        return Point(placed.x_mm + x_mm, placed.y_mm + y_mm)
    return Point(placed.right_mm - y_mm, placed.y_mm + x_mm)


def _is_near(said: Value, wanted_pt: Sequence[float]) -> bool:
    return (
        isinstance(said, list)
        and len(said) == len(wanted_pt)
        and all(
            isinstance(one, float) and abs(one - other) <= _NEAR_PT
            for one, other in zip(said, wanted_pt, strict=True)
        )
    )
