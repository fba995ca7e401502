from __future__ import annotations

import pytest

from service.render.proof.finished.drawing import read_drawing

FACE = b"/Figure <</MCID 0>> BDC\nq 1 0 0 1 10.5 -.25 cm /X0 Do Q\nEMC\n"
MARKS = b"/Artifact BMC\nq 0.28 w 0 G\n0 1 m 2 1 l\n3 1 m 3 4.5 l\nS Q\nEMC"


def test_faces_and_lines_are_read_in_order() -> None:
    """Names, matrices and lines are given as they are written."""
    drawing = read_drawing(FACE + b"q 0 -1 1 0 3 4 cm\n/Y Do\nQ " + MARKS)
    assert drawing.faces == [
        ("/X0", (1.0, 0.0, 0.0, 1.0, 10.5, -0.25)),
        ("/Y", (0.0, -1.0, 1.0, 0.0, 3.0, 4.0)),
    ]
    assert drawing.lines == [(0.0, 1.0, 2.0, 1.0), (3.0, 1.0, 3.0, 4.5)]
    assert drawing.width_pt == pytest.approx(0.28)


def test_an_empty_sheet_draws_nothing() -> None:
    """No instructions are no faces and no lines."""
    drawing = read_drawing(b"\n")
    assert (drawing.faces, drawing.lines) == ([], [])


@pytest.mark.parametrize(
    "content",
    [
        b"0 0 5 5 re f " + FACE,
        FACE + b"0 0 5 5 re f",
        FACE + b"q 2 0 0 2 0 0 cm",
        FACE.replace(b"/X0 Do", b"/X0 Do /X0 Do"),
        FACE.replace(b"cm", b"cm 1 g"),
        MARKS.replace(b"0 G", b"1 G"),
        MARKS.replace(b"S Q", b"f Q"),
        b"BT (x) Tj ET",
    ],
)
def test_anything_else_is_refused(content: bytes) -> None:
    """What is neither a face nor a cut mark is not passed over."""
    with pytest.raises(ValueError, match="beside faces and marks"):
        read_drawing(content)
