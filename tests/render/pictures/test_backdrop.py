from __future__ import annotations

import pytest
from PIL import Image, ImageDraw

from service.render.pictures.backdrop import fit_backdrop

SIZE = (160, 120)


def _lit(x: int, y: int) -> tuple[int, int, int]:
    """Give a grey that falls off to the right and, more and more, towards the bottom."""
    across, down = x / SIZE[0], y / SIZE[1]
    level = 170 - 40 * across - 30 * down * down
    return (round(level), round(level) - 4, round(level) - 8)


def _sheet() -> Image.Image:
    sheet = Image.new("RGB", SIZE)
    sheet.putdata([_lit(x, y) for y in range(SIZE[1]) for x in range(SIZE[0])])
    return sheet


def _colour(picture: Image.Image, x: int, y: int) -> tuple[float, ...]:
    colour = picture.getpixel((x, y))
    assert isinstance(colour, tuple)
    return colour


@pytest.mark.parametrize("place", [(2, 2), (80, 60), (157, 3), (3, 117), (157, 117)])
def test_falling_light_is_followed(place: tuple[int, int]) -> None:
    """A light that falls off evenly is found again everywhere, under the object too."""
    sheet = _sheet()
    ImageDraw.Draw(sheet).ellipse((50, 30, 110, 90), fill=(90, 40, 20))
    backdrop = fit_backdrop(sheet)
    assert backdrop is not None
    assert _colour(backdrop.surface, *place) == pytest.approx(_lit(*place), abs=3)
    assert backdrop.noise_levels < 2


def test_an_object_that_reaches_the_border_does_not_bend_it() -> None:
    """A quarter of the border under an object leaves the rest of the surface as it is."""
    sheet = _sheet()
    ImageDraw.Draw(sheet).rectangle((0, 40, 30, 119), fill=(20, 20, 20))
    backdrop = fit_backdrop(sheet)
    assert backdrop is not None
    assert _colour(backdrop.surface, 120, 20) == pytest.approx(_lit(120, 20), abs=4)


def test_a_border_of_many_levels_is_not_plain() -> None:
    """A checked cloth is no surface."""
    sheet = Image.new("RGB", SIZE, "white")
    draw = ImageDraw.Draw(sheet)
    for x in range(0, SIZE[0], 20):
        for y in range(x % 40 // 2, SIZE[1], 20):
            draw.rectangle((x, y, x + 9, y + 9), fill="black")
    draw.rectangle((0, 0, 79, 119), fill="green")
    assert fit_backdrop(sheet) is None


def test_tiny_pictures_have_a_backdrop() -> None:
    """A picture of one pixel is all background."""
    backdrop = fit_backdrop(Image.new("RGB", (1, 1), (9, 9, 9)))
    assert backdrop is not None
    assert _colour(backdrop.surface, 0, 0) == pytest.approx((9, 9, 9), abs=1)
