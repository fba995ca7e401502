"""Tests for the operators of everything but text, seen by PDFium and Pillow."""

from __future__ import annotations

import io

import pikepdf
import pytest
import zxingcpp
from pikepdf import Dictionary
from PIL import Image

from service.geometry import Rect, Size
from service.render.plates.ink import (
    Box,
    box_of,
    dashed,
    fill_colour,
    filled,
    line_colour,
    stroked,
    symbol_mask,
)
from service.render.raster import opened
from service.symbols.symbol import Level, encode_symbol

SIDE_PT = 72.0
DOTS_PER_PT = 4


def shown(operators: str) -> Image.Image:
    """Draw operators on a square inch, four dots a point."""
    with pikepdf.new() as pdf:
        page = pdf.add_blank_page(page_size=(SIDE_PT, SIDE_PT))
        page.obj.Contents = pdf.make_stream(operators.encode())
        page.obj.Resources = Dictionary()
        data = io.BytesIO()
        pdf.save(data)
    with opened(data.getvalue()) as document:
        drawn: Image.Image = document[0].render(scale=DOTS_PER_PT, grayscale=True).to_pil()
    return drawn.convert("L")


def tone(image: Image.Image, x_pt: float, y_pt: float) -> int:
    """Give the tone at a place in points from the bottom left."""
    dot = (int(x_pt * DOTS_PER_PT), int((SIDE_PT - y_pt) * DOTS_PER_PT))
    return int(str(image.getpixel(dot)))


def test_a_rectangle_of_the_face_becomes_points() -> None:
    """An inch from the top left of a face two inches high stands an inch above its bottom."""
    box = box_of(Rect(25.4, 0.0, 12.7, 25.4), Size(100.0, 50.8))
    assert (box.x_pt, box.y_pt, box.width_pt, box.height_pt) == pytest.approx((72, 72, 36, 72))


@pytest.mark.parametrize(("x", "y", "dark"), [(30, 30, True), (21, 21, False), (18, 30, False)])
def test_corners_are_rounded(x: float, y: float, *, dark: bool) -> None:
    """A filled rectangle of radius 8 covers its middle and leaves its corner."""
    image = shown(f"{fill_colour((0, 0, 0))} {filled(Box(20, 20, 40, 30), 8.0)}")
    assert (tone(image, x, y) < 128) is dark


@pytest.mark.parametrize("radius", [0.0, 6.0])
def test_a_line_stands_inside_its_rectangle(radius: float) -> None:
    """A border of 4 points takes the outermost 4 points of the rectangle and no more."""
    image = shown(f"{line_colour((0, 0, 0))} {stroked(Box(20, 20, 40, 30), 4.0, radius)}")
    assert tone(image, 22, 35) < 128
    assert tone(image, 40, 22) < 128
    assert tone(image, 25, 35) > 200
    assert tone(image, 18.5, 35) > 200


def test_dashes_begin_and_end_at_the_corners() -> None:
    """Along the top of 60 points with a line of 2 there are 6 dashes of 60/11 points each."""
    image = shown(f"{line_colour((0, 0, 0))} {dashed(Box(6, 6, 60, 60), 2.0)}")
    row = [tone(image, 6.2 + step * 0.25, 65) < 128 for step in range(int(59.6 / 0.25))]
    starts = sum(now and not before for before, now in zip([False, *row], row, strict=False))
    assert row[0]
    assert row[-1]
    assert starts == 6


def test_a_symbol_is_read_by_another_decoder() -> None:
    """The mask of one bit a module holds the symbol, dark on light."""
    symbol = encode_symbol("https://collections.example/c/B-042", level=Level.M)
    drawn = symbol_mask(symbol, Box(10, 10, 52, 52))
    (found,) = zxingcpp.read_barcodes(shown(f"{fill_colour((0, 0, 0))} {drawn}"))
    assert found.text == symbol.payload


def test_a_symbol_is_one_picture_in_the_stream() -> None:
    """A parser of other authors finds one inline picture of as many bits as modules."""
    symbol = encode_symbol("B-042", level=Level.Q)
    with pikepdf.new() as pdf:
        page = pdf.add_blank_page(page_size=(SIDE_PT, SIDE_PT))
        page.obj.Contents = pdf.make_stream(symbol_mask(symbol, Box(0, 0, 50, 50)).encode())
        pictures = [
            part.iimage
            for part in pikepdf.parse_content_stream(page)
            if isinstance(part, pikepdf.ContentStreamInlineImage)
        ]
    assert [(one.width, one.height, one.image_mask) for one in pictures] == [
        (symbol.side_modules, symbol.side_modules, True)
    ]
