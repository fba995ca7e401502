"""The links of a sheet open what the plates on it name, where their symbols stand, and no more."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from functools import lru_cache

from service.geometry import Point, Rect, Size
from service.render.plates.plate import Link
from service.render.reading.objects import Dictionary, Value
from service.render.reading.pdf_file import PdfFile
from service.sheets.correction import Correction
from service.sheets.impose import Placement, Sheet
from service.units import points_from_mm

_SAYS = {"/Type", "/Subtype", "/Border", "/Rect", "/A"}
_NEAR_PT = points_from_mm(0.01)
_ESCAPED = re.compile(rb"[()\\]")
# A link as most are written: each thing once, and nothing that would have to be spelled otherwise.
_USUAL = re.compile(
    rb"\s*<<\s*/Type\s*/Annot\s*/Subtype\s*/Link\s*/Border\s*\[[\d\s]*\]"
    rb"\s*/Rect\s*\[([-+.\d\s]+)\]"
    rb"\s*/A\s*<<\s*/S\s*/URI\s*/URI\s*\(([^()\\\r\n]*)\)\s*>>\s*>>"
)


def link_faults(
    file: PdfFile,
    found: Value,
    sheet: Sheet,
    plates: Sequence[tuple[Placement, Sequence[Link]]],
) -> Iterator[str]:
    """Compare the links of a page, in order, with those of the plates placed on it."""
    page = sheet.stock.page
    wanted = [
        (_box_pt(link.rect, (placement.rect, placement.turned_deg), page, sheet.correction), link)
        for placement, links in plates
        for link in links
        if link.address.isascii()
    ]
    links = found if isinstance(found, list) else []
    if len(links) != len(wanted):
        yield f"it has {len(links)} links instead of {len(wanted)}"
        return
    for one, (box_pt, link) in zip(links, wanted, strict=True):
        usual = file.match(one, _USUAL)
        if usual is None or not _is_as_wanted(usual, box_pt, link.address):
            yield from _told(file.dictionary(one), box_pt, link.address)


def _is_as_wanted(usual: re.Match[bytes], box_pt: Sequence[float], address: str) -> bool:
    return usual[2] == address.encode("ascii") and _is_near(_numbers(usual[1]), box_pt)


# Sheets of labels are alike: most rectangles come again on the next.
@lru_cache(maxsize=1024)
def _numbers(written: bytes) -> list[Value]:
    return [float(number) for number in written.split()]


def _told(said: Dictionary, box_pt: Sequence[float], address: str) -> Iterator[str]:
    """Say what is wrong with a link, if anything is."""
    if not said.keys() <= _SAYS or said.get("/Subtype") != "/Link":
        yield f"a link says more than it should: {' '.join(sorted(said.keys()))}"
    elif said.get("/A") != {"/S": "/URI", "/URI": _spelled(address)}:
        yield f"a link does not lead to {address}"
    elif not _is_near(said.get("/Rect"), box_pt):
        yield f"the link to {address} stands elsewhere than its symbol"


def _spelled(address: str) -> bytes:
    """Give an address as it stands between the brackets of a string (ISO 32000-1, 7.3.4.2)."""
    return _ESCAPED.sub(rb"\\\g<0>", address.encode("ascii"))


@lru_cache(maxsize=1024)
def _box_pt(
    rect: Rect, place: tuple[Rect, int], page: Size, correction: Correction
) -> tuple[float, ...]:
    """Give left, bottom, right and top of the box around what a rectangle of a face becomes."""
    corners = [
        correction.moved(_on_sheet(x_mm, y_mm, *place))
        for x_mm in (rect.x_mm, rect.right_mm)
        for y_mm in (rect.y_mm, rect.bottom_mm)
    ]
    xs_mm = [corner.x_mm for corner in corners]
    ys_mm = [page.height_mm - corner.y_mm for corner in corners]
    return tuple(map(points_from_mm, (min(xs_mm), min(ys_mm), max(xs_mm), max(ys_mm))))


def _on_sheet(x_mm: float, y_mm: float, placed: Rect, turned_deg: int) -> Point:
    """Turn a point of a face clockwise by quarters into its place on the sheet."""
    if turned_deg == 0:
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
