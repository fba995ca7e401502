from __future__ import annotations

import io

import pytest
from PIL import Image

from service.errors import PictureError
from service.render.compose.pictures import PictureBook
from service.render.compose.sheets import Parts
from service.render.compose.writer import PdfWriter
from tests.render.compose.made_plates import (
    PARTS,
    PHOTOS,
    jpeg,
    opened,
    plate,
    streams,
    written_faces,
)

ONE, OTHER = PHOTOS


def book_of(data: bytes) -> PictureBook:
    """Begin a file whose only picture is this one."""
    return PictureBook(PdfWriter(io.BytesIO()), lambda _: data)


def test_pictures_are_taken_over_byte_for_byte_and_once() -> None:
    """Three plates that show two photos bring two objects, each the very JPEG."""
    data = written_faces(
        plate("one", photos=[ONE]), plate("two", photos=[OTHER, ONE]), plate("three", photos=[ONE])
    )
    with opened(data) as pdf:
        found = [picture.read_raw_bytes() for picture in streams(pdf, subtype="Image")]
        assert found == [PHOTOS[ONE], PHOTOS[OTHER]]


@pytest.mark.parametrize(
    ("mode", "colours"), [("RGB", "/DeviceRGB"), ("L", "/DeviceGray")], ids=["colour", "grey"]
)
@pytest.mark.parametrize("progressive", [False, True], ids=["sequential", "progressive"])
def test_size_and_colours_are_read_from_the_picture(
    mode: str, colours: str, *, progressive: bool
) -> None:
    """Comments and other segments before the header are passed over."""
    data = io.BytesIO()
    picture = Image.new(mode, (31, 17))
    picture.save(data, "JPEG", progressive=progressive, comment=b"\xff\xc0 no header", dpi=(72, 72))
    parts = Parts(lambda _: data.getvalue(), PARTS.marks, PARTS.fonts)
    with opened(written_faces(plate("one", photos=[ONE]), parts=parts)) as pdf:
        (image,) = streams(pdf, subtype="Image")
        assert (int(image.Width), int(image.Height), str(image.ColorSpace)) == (31, 17, colours)


@pytest.mark.parametrize(
    "data",
    [
        pytest.param(b"", id="nothing"),
        pytest.param(b"\x89PNG\r\n", id="another format"),
        pytest.param(jpeg(90)[:60], id="cut short"),
        pytest.param(b"\xff\xd8\xff\xd9\xff\xff\x00\x00", id="no header"),
        pytest.param(jpeg(90, mode="CMYK"), id="four colours"),
    ],
)
def test_what_cannot_be_shown_is_refused(data: bytes) -> None:
    """A picture that would come out blank or in wrong colours stops the file."""
    with pytest.raises(PictureError, match="aaaaaaaaaaaa"):
        book_of(data).number("a" * 64)


def test_fill_bytes_and_bare_markers_are_passed_over() -> None:
    """Any marker may be preceded by fill bytes, some stand alone (ISO/IEC 10918-1, B.1.1.2)."""
    data = jpeg(90)
    filled = data[:2] + b"\xff\x01\xff\xff\xff" + data[3:]
    assert book_of(filled).number("a" * 64) == 1
