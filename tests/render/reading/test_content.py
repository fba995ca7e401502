from __future__ import annotations

import pytest

from service.geometry import Rect
from service.render.reading.content import Content, Drawn, Run, read_content
from service.units import mm_from_points

HEIGHT_MM = mm_from_points(100.0)
MASK = b"BI /W 2 /H 2 /IM true /BPC 1 /D [1 0] /F /AHx ID 80c0> EI Q"


def read(content: bytes) -> Content:
    """Read the content of a plate 100 points high."""
    return read_content(content, height_mm=HEIGHT_MM)


def rect_pt(x: float, y: float, width: float, height: float) -> Rect:
    """Give a rectangle in mm from the top by points from the bottom left."""
    inner = Rect(mm_from_points(x), mm_from_points(100 - y - height), 0, 0)
    return Rect(inner.x_mm, inner.y_mm, mm_from_points(width), mm_from_points(height))


def test_lines_of_glyphs_come_in_order() -> None:
    """Each line says where it begins and what shows it, whatever letters stand in it."""
    content = b"BT 10.5 -20 Td /F0 8 Tf [<00EE>-3<0001>] TJ ET\nBT 1 2 Td /F12 9 Tf <AE>Tj ET"
    assert read(content) == Content(
        (Run(10.5, -20.0, b"/F0 8 Tf [<00EE>-3<0001>] TJ "), Run(1.0, 2.0, b"/F12 9 Tf <AE>Tj ")),
        (),
        "",
    )


def test_what_a_reader_is_told_belongs_to_the_line() -> None:
    """A line may be wrapped in a text that stands for it."""
    told = b"/Span <</ActualText<FEFF0645>>> BDC /F9 10 Tf [<0004>] TJ EMC "
    assert read(b"BT 1 2 Td " + told + b"ET").runs == (Run(1.0, 2.0, told),)


@pytest.mark.parametrize(
    ("content", "name"),
    [
        pytest.param(b"q 30 0 0 20 5 10 cm /P7 Do Q", "P7", id="a picture"),
        pytest.param(b"q 30 0 0 20 5 10 cm /Mdo-not-tilt Do Q", "Mdo-not-tilt", id="a mark"),
        pytest.param(b"q 30 0 0 20 5 10 cm " + MASK, "", id="a symbol"),
    ],
)
def test_drawings_have_their_place(content: bytes, name: str) -> None:
    """A picture, a mark or a symbol fills the rectangle its matrix gives."""
    (drawn,) = read(content).drawn
    assert (drawn.name, read(content).unread) == (name, "")
    wanted = rect_pt(5, 10, 30, 20)
    assert drawn.rect.x_mm == pytest.approx(wanted.x_mm)
    assert drawn.rect.y_mm == pytest.approx(wanted.y_mm)
    assert drawn.rect.width_mm == pytest.approx(wanted.width_mm)
    assert drawn.rect.height_mm == pytest.approx(wanted.height_mm)


def test_paths_and_colours_are_understood() -> None:
    """What a plate paints besides is passed over, but what stands among it is found."""
    content = (
        b" q\n0.1 0 0 rg 1 2 3 4 re f Q 0 g 0 0 1 RG .4 w [1.5] 0 d 1 2 m -3 4 l S [] 0 d"
        b" 1 2 m 1 2 3 4 5 6 c h f* q 1 0 0 1 2 3 cm 0 0 5 5 re s Q"
        b" BT 1 2 Td /F0 8 Tf [<0001>] TJ ET q 1 0 0 1 0 0 cm /P0 Do Q 0 0 1 1 re f "
    )
    found = read(content)
    assert (len(found.runs), len(found.drawn), found.unread) == (1, 1, "")
    assert isinstance(found.drawn[0], Drawn)


@pytest.mark.parametrize(
    "unknown",
    [
        b"0 0 1 1 re W n",
        b"/G0 gs",
        b"/Sh0 sh",
        b"BT /F0 8 Tf 1 0 0 1 5 5 Tm <0001> Tj ET",
        b"BX 1 EX",
        b"q 0 1 -1 0 5 5 cm /P0 Do Q",
        b"BI /W 1 /H 1 /BPC 8 /CS /G ID x EI",
        b"\x00",
    ],
)
def test_the_rest_is_told(unknown: bytes) -> None:
    """Reading stops where something is not known, and says what it is."""
    found = read(b"0 g BT 1 2 Td /F0 8 Tf [<0001>] TJ ET\n" + unknown + b" BT 3 4 Td ET")
    assert len(found.runs) == 1
    assert found.unread
    assert found.unread[0] in unknown.decode("latin-1")


def test_an_empty_plate_says_nothing() -> None:
    """No content is no fault of the reader's."""
    assert read(b"") == read(b" \n") == Content((), (), "")
