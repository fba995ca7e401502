from __future__ import annotations

import io

import pikepdf
import pytest
from pikepdf import Dictionary, Name

from service.render.reading.digests import face_digests, form_digest


def file_of(*contents: bytes, picture: bytes = b"grey") -> bytes:
    """Make a file of pages that all list one picture and draw it."""
    with pikepdf.new() as pdf:
        drawn = pdf.make_stream(picture, Type=Name.XObject, Subtype=Name.Image)
        for content in contents:
            made = pdf.add_blank_page(page_size=(100, 100))
            made.obj.Resources = Dictionary(XObject=Dictionary(P=drawn))
            made.obj.Contents = pdf.make_stream(content)
        data = io.BytesIO()
        pdf.save(data)
    return data.getvalue()


def test_a_form_made_of_a_page_is_the_same_ink() -> None:
    """A form has the digest of the page it was made of."""
    data = file_of(b"q /P Do Q")
    with pikepdf.open(io.BytesIO(data)) as pdf:
        assert [form_digest(pdf.pages[0].as_form_xobject())] == list(face_digests([data]))


@pytest.mark.parametrize(
    "other",
    [
        pytest.param(file_of(b"q 1 0 0 1 0 1 cm /P Do Q"), id="other instructions"),
        pytest.param(file_of(b"q /P Do Q", picture=b"gray"), id="another picture"),
    ],
)
def test_other_ink_has_another_digest(other: bytes) -> None:
    """A change in what is drawn, or in the picture drawn, changes the digest."""
    assert set(face_digests([file_of(b"q /P Do Q")])).isdisjoint(face_digests([other]))


def test_what_a_page_does_not_draw_does_not_count() -> None:
    """A picture that only a neighbour draws is no part of a face."""
    first, _ = face_digests([file_of(b"0 g", b"/P Do")])
    again, _ = face_digests([file_of(b"0 g", b"/P Do", picture=b"another")])
    assert first == again
