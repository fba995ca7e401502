from __future__ import annotations

import zlib

import pikepdf
import pypdfium2
from pikepdf import Name

from tests.render.compose.made_plates import (
    FACE,
    MASK,
    PHOTOS,
    opened,
    plate,
    streams,
    written_faces,
)

ONE, OTHER = PHOTOS


def first_forms(pdf: pikepdf.Pdf) -> list[pikepdf.Object]:
    """Give the form each page draws."""
    return [form for page in pdf.pages for form in page.obj.Resources.XObject.values()]


def test_the_ink_is_taken_over_byte_for_byte() -> None:
    """A form is the plate's own stream, in a box as large as the face."""
    made = plate("B-042", photos=[ONE], marks=("caution",))
    with opened(written_faces(made)) as pdf:
        (form,) = first_forms(pdf)
        assert form.read_raw_bytes() == made.content
        box_mm = [float(side) * 25.4 / 72 for side in form.BBox]
        assert [round(side, 3) for side in box_mm] == [0, 0, FACE.width_mm, FACE.height_mm]


def test_names_lead_to_what_the_plate_means() -> None:
    """P0 and P1 are its pictures in order, the mark goes by its code, all share the fonts."""
    plates = [
        plate("one", photos=[ONE, OTHER], marks=("caution",)),
        plate("two", photos=[OTHER], marks=("caution",)),
        plate("three"),
    ]
    with opened(written_faces(*plates)) as pdf:
        first, second, third = (form.Resources for form in first_forms(pdf))
        assert first.XObject.P0.read_raw_bytes() == PHOTOS[ONE]
        assert first.XObject.P1.objgen == second.XObject.P0.objgen
        assert first.XObject.Mcaution.objgen == second.XObject.Mcaution.objgen
        assert Name.XObject not in third
        assert first.Font.objgen == second.Font.objgen == third.Font.objgen


def test_plates_without_pictures_share_their_resources() -> None:
    """Labels that show only text need no dictionary of their own."""
    with opened(written_faces(plate("one"), plate("two"))) as pdf:
        first, second = (form.Resources for form in first_forms(pdf))
        assert first.objgen == second.objgen != (0, 0)


def test_a_mark_is_drawn_once_in_the_unit_square() -> None:
    """However often it is shown, its drawing is there once."""
    with opened(written_faces(*[plate(text, marks=("caution",)) for text in "abc"])) as pdf:
        drawn = [form for form in streams(pdf, subtype="Form") if b"re f" in form.read_bytes()]
        (mark,) = [form for form in drawn if [int(side) for side in form.BBox] == [0, 0, 1, 1]]
        assert mark.read_bytes() == b"0.1 0.1 0.8 0.8 re f"


def test_inline_pictures_survive_other_readers() -> None:
    """The 1-bit mask of a symbol reads back as one instruction, and is inked."""
    with opened(written_faces(plate("B-042"))) as pdf:
        (form,) = first_forms(pdf)
        inline = [
            one
            for one in pikepdf.parse_content_stream(form)
            if isinstance(one, pikepdf.ContentStreamInlineImage)
        ]
        assert len(inline) == 1
        assert (inline[0].iimage.width, inline[0].iimage.height) == (8, 2)
    assert MASK.encode() in zlib.decompress(plate("B-042").content)
    with pypdfium2.PdfDocument(written_faces(plate("B-042"))) as pdf:
        page = pdf[0].render(scale=1, grayscale=True).to_numpy()
        height = page.shape[0]
        # The upper row of the mask paints, the lower one does not.
        assert page[height - 35, 210] < 64
        assert page[height - 25, 210] > 192
