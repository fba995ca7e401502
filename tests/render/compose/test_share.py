from __future__ import annotations

import pikepdf
from pikepdf import Dictionary, Name

from service.render.compose.share import share_pictures


def picture(pdf: pikepdf.Pdf, data: bytes, *, width_px: int = 1) -> pikepdf.Object:
    """Make a picture with a mask of its own."""
    mask = pdf.make_stream(b"mask", Subtype=Name.Image)
    return pdf.make_stream(data, Subtype=Name.Image, Width=width_px, SMask=mask)


def form(pdf: pikepdf.Pdf, **drawn: pikepdf.Object) -> pikepdf.Object:
    """Make a form that draws some objects."""
    made = pdf.make_stream(b"", Subtype=Name.Form)
    made.Resources = Dictionary(XObject=Dictionary({f"/{key}": one for key, one in drawn.items()}))
    return made


def test_equal_pictures_become_one() -> None:
    """Two copies of a photo, masks and all, are one object afterwards; other photos stay."""
    with pikepdf.new() as pdf:
        forms = [
            form(pdf, A=picture(pdf, b"grey"), B=picture(pdf, b"black")),
            form(pdf, C=picture(pdf, b"grey")),
        ]
        share_pictures(forms)
        first, second = (one.Resources.XObject for one in forms)
        assert first.A.objgen == second.C.objgen
        assert first.A.objgen != first.B.objgen
        assert first.A.SMask.objgen == first.B.SMask.objgen


def test_equal_bytes_of_another_size_stay_apart() -> None:
    """What is said about a picture counts as much as its bytes."""
    with pikepdf.new() as pdf:
        made = form(pdf, A=picture(pdf, b"grey"), B=picture(pdf, b"grey", width_px=2))
        share_pictures([made])
        assert made.Resources.XObject.A.objgen != made.Resources.XObject.B.objgen


def test_forms_inside_forms_are_searched() -> None:
    """A photo in a group is shared too, and a form without resources does no harm."""
    with pikepdf.new() as pdf:
        inner = form(pdf, A=picture(pdf, b"grey"))
        outer = form(pdf, X=inner, B=picture(pdf, b"grey"))
        share_pictures([outer, outer, pdf.make_stream(b"", Subtype=Name.Form)])
        assert inner.Resources.XObject.A.objgen == outer.Resources.XObject.B.objgen
