from __future__ import annotations

import io

from PIL import Image

from service.render.proof import standin
from tests.render.made import mark, page, photo
from tests.render.proof.plated import MARKS, plate_of


def test_a_photo_becomes_a_plain_square() -> None:
    """The picture is one tone all over, to within what JPEG makes of it."""
    image = Image.open(io.BytesIO(standin.picture()))
    darkest, lightest = image.getextrema()
    assert abs(float(str(darkest)) - standin.TONE) <= 1
    assert abs(float(str(lightest)) - standin.TONE) <= 1


def test_a_plate_keeps_everything_else() -> None:
    """Only the pictures of a plate change, and there are as many as before."""
    plate = plate_of(page(photo(), mark()))
    plain = standin.with_plain_pictures(plate)
    assert plain.content == plate.content
    assert plain.marks == plate.marks
    assert len(plain.pictures) == len(plate.pictures) == 1
    assert plain.pictures != plate.pictures


def test_each_mark_has_a_square() -> None:
    """Every code that is shipped has one, and no other."""
    assert standin.plain_marks(MARKS).keys() == MARKS.keys()
