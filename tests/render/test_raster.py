from __future__ import annotations

import io
import math

import pikepdf
import pytest
from PIL import Image

from service.geometry import Point, Rect
from service.render.raster import draw_dots, opened, raster_of, render_page_png
from service.units import points_from_mm

SQUARE = Rect(60.0, 20.0, 10.0, 10.0)


@pytest.fixture(scope="module")
def pdf() -> bytes:
    """Make two pages of 100 x 50 mm, the second with a black square."""
    with pikepdf.new() as made:
        for content in (b"", _square()):
            page = made.add_blank_page(page_size=(points_from_mm(100), points_from_mm(50)))
            page.obj.Contents = made.make_stream(content)
        data = io.BytesIO()
        made.save(data)
    return data.getvalue()


def _square() -> bytes:
    x_pt, side_pt = points_from_mm(SQUARE.x_mm), points_from_mm(SQUARE.width_mm)
    return f"0 g {x_pt} {points_from_mm(50 - SQUARE.bottom_mm)} {side_pt} {side_pt} re f".encode()


def test_a_page_becomes_a_picture(pdf: bytes) -> None:
    """A PNG in colour at the resolution asked for: 100 mm are 590.6 dots at 150 dpi."""
    with Image.open(io.BytesIO(render_page_png(pdf, 2, resolution_dpi=150))) as image:
        assert (image.format, image.mode, image.size) == ("PNG", "RGB", (591, 296))
        assert image.info["dpi"] == pytest.approx((150, 150), abs=0.02)
        assert image.getpixel((384, 148)) == (0, 0, 0)


@pytest.mark.parametrize("number", [0, 3, -1])
def test_a_page_that_is_not_there_is_refused(pdf: bytes, number: int) -> None:
    """Pages count from 1 to the last."""
    with pytest.raises(IndexError, match=f"page {number} of 2"):
        render_page_png(pdf, number, resolution_dpi=50)


@pytest.mark.parametrize("rect", [None, Rect(55.3, 17.7, 22.2, 18.8)], ids=["whole", "a part"])
@pytest.mark.parametrize("dpi", [203, 300])
def test_places_on_a_raster(pdf: bytes, rect: Rect | None, dpi: int) -> None:
    """Millimetres of the page lead to the right dots, in a part of the page as in the whole."""
    with opened(pdf) as document:
        raster = raster_of(document[1], resolution_dpi=dpi, rect=rect)
    inside = raster.crop(Rect(60.3, 20.3, 9.4, 9.4))
    assert inside.getextrema() == (0, 0)
    assert raster.tone(Point(59.7, 25.0)) == raster.tone(Point(70.3, 25.0)) == 255
    assert raster.tone(Point(60.3, 20.3)) == raster.tone(Point(69.7, 29.7)) == 0
    around = raster.crop(Rect(58.0, 18.0, 14.0, 14.0))
    assert around.size == pytest.approx((14 / 25.4 * dpi,) * 2, abs=1.5)


def test_a_part_holds_all_dots_it_touches(pdf: bytes) -> None:
    """The picture of a part begins at or before it and ends at or behind it."""
    rect = Rect(55.3, 17.7, 22.2, 18.8)
    with opened(pdf) as document:
        raster = raster_of(document[1], resolution_dpi=300, rect=rect)
    left, top, right, bottom = raster.box_of(rect)
    assert min(left, top) >= 0
    assert right <= raster.image.width
    assert bottom <= raster.image.height


@pytest.mark.parametrize("width_mm", [10.0, 10.1, 10.4], ids=["whole dots", "a bit more", "odd"])
def test_dots_are_exactly_to_scale(pdf: bytes, width_mm: float) -> None:
    """Three dots to the mm from the corner asked for, in rows that begin on whole words."""
    with opened(pdf) as document:
        dots = draw_dots(document[1], Rect(59.0, 19.0, width_mm, 12.0), dots_per_mm=3)
    assert dots.image.size == (math.ceil(width_mm * 3), 36)
    assert dots.row_bytes % 4 == 0
    dark = [dots.image.getpixel((x, 18)) == 0 for x in range(dots.image.width)]
    assert dark == [3 <= x < 33 for x in range(dots.image.width)]
    assert dots.memory[18 * dots.row_bytes + 3] == 0
    assert dots.memory[2 * dots.row_bytes + 3] == 255


def test_dots_beyond_the_page_are_paper(pdf: bytes) -> None:
    """A rectangle that leaves the page is drawn as far as the page goes."""
    with opened(pdf) as document:
        dots = draw_dots(document[1], Rect(-5.0, -5.0, 10.0, 10.0), dots_per_mm=4)
    assert set(dots.memory) == {255}
