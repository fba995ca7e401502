from __future__ import annotations

import pytest

from service.pages.page import PictureBlock
from service.render.raster import opened
from service.render.reading.face import ReadFace, read_face
from tests.render.made import FACE, Ink, page, photo, text

pytestmark = [pytest.mark.print, pytest.mark.slow]


@pytest.fixture(scope="module")
def read(ink: Ink) -> ReadFace:
    """Read a face with a line and a photo."""
    with opened(ink.of(page(text("B-042 oo"), photo()))) as pdf:
        return read_face(pdf[0])


def test_characters_come_in_order(read: ReadFace) -> None:
    """Every sign of the line is read, blank and all, from left to right on one baseline."""
    assert "".join(one.text for one in read.characters) == "B-042 oo"
    assert [one.origin.x_mm for one in read.characters] == sorted(
        one.origin.x_mm for one in read.characters
    )
    assert len({round(one.origin.y_mm, 2) for one in read.characters}) == 1


def test_ink_stands_above_the_baseline(read: ReadFace) -> None:
    """A capital reaches up by two thirds of the type size: 10 pt x 0.668 = 2.36 mm."""
    capital = read.characters[0]
    assert capital.ink.bottom_mm == pytest.approx(capital.origin.y_mm, abs=0.1)
    assert capital.ink.height_mm == pytest.approx(2.36, abs=0.1)


def test_pictures_have_their_place(read: ReadFace) -> None:
    """The photo, 4 to 3, stands in the middle of its square frame, to a tenth of a millimetre."""
    assert isinstance(photo(), PictureBlock)
    (found,) = read.pictures
    assert (found.x_mm, found.y_mm) == pytest.approx((5.0, 23.75), abs=0.1)
    assert (found.width_mm, found.height_mm) == pytest.approx((30.0, 22.5), abs=0.1)


def test_the_face_has_its_size(read: ReadFace) -> None:
    """The page is the finished size, and whatever is drawn lies on it."""
    assert read.size.width_mm == pytest.approx(FACE.width_mm, abs=0.001)
    assert read.size.height_mm == pytest.approx(FACE.height_mm, abs=0.001)
    assert all(0 <= extent.x_mm <= extent.right_mm <= 100.0 for extent in read.extents)
