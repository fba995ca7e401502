"""Tests for filling a frame with a page; the figures are worked out by hand."""

from __future__ import annotations

import re
import zlib
from array import array
from dataclasses import replace

import pytest

from service.geometry import Rect, Size
from service.pages.page import Align, Block, Direction, Shade, ShapeBlock, TextBlock, TextStyle
from service.render.frames.frame import Colour, Frame, Look, Mould, StaticInk
from service.render.frames.looks import look_of
from service.render.plates.make import make_plate
from service.render.plates.plate import FontUse, PictureUse, Plate
from service.units import points_from_mm
from tests.render.made import FACE, PHOTO, mark, page, photo, symbol
from tests.render.plates.fake_setter import FakeSetter

BLACK: Colour = (0.0, 0.0, 0.0)
GREY: Colour = (0.4667, 0.4667, 0.4667)
USE = PictureUse("a" * 64, 120, 90)


def block(align: Align = Align.START, *lines: str, way: str = "ltr") -> TextBlock:
    """Make a block 60 mm wide at 5 mm from the left and top, 10 pt set on 15 pt."""
    style = TextStyle(10.0, leading_ratio=1.5, align=align)
    rect = Rect(5.0, 5.0, 60.0, style.leading_mm * len(lines))
    return TextBlock("title", rect, lines, style, " ".join(lines), Direction(way))


def filled(*blocks: Block, static: StaticInk | None = None, **moulds: Mould) -> Plate:
    """Fill a frame whose moulds are black, but those named by purpose."""
    known: dict[Look, Mould] = {}
    for one in blocks:
        mould = moulds.get(one.purpose.replace("-", "_"), Mould(BLACK, GREY, 0.15))
        known[look_of(one, has_picture=one == photo())] = mould
    frame = Frame("lid-card", "f", known, {FACE: static} if static else {})
    return make_plate(page(*blocks), frame, {PHOTO: USE}, FakeSetter())


def operators(plate: Plate) -> str:
    """Give the operators of a plate."""
    return zlib.decompress(plate.content).decode("latin-1")


def origins(plate: Plate) -> list[tuple[float, float]]:
    """Give where each line begins, in points."""
    found = re.findall(r"BT ([-\d.]+) ([-\d.]+) Td", operators(plate))
    return [(float(x), float(y)) for x, y in found]


@pytest.mark.parametrize(
    ("align", "way", "before_pt"),
    [
        (Align.START, "ltr", 0.0),
        (Align.CENTRE, "ltr", 0.5),
        (Align.END, "ltr", 1.0),
        (Align.START, "rtl", 1.0),
        (Align.END, "rtl", 0.0),
    ],
)
def test_lines_stand_as_they_are_aligned(align: Align, way: str, before_pt: float) -> None:
    """A line of ten signs at 10 pt is 50 pt wide; the rest of 60 mm stands before or after it."""
    ((x_pt, _),) = origins(filled(block(align, "ABCDEFGHIJ", way=way)))
    free_pt = points_from_mm(60.0) - 50.0
    assert x_pt == pytest.approx(points_from_mm(5.0) + before_pt * free_pt, abs=0.001)


def test_baselines_follow_the_pitch() -> None:
    """Ascent 9 and descent 3 on 15 leave 1.5 pt above: baselines 10.5 and 25.5 pt down."""
    top_pt = points_from_mm(FACE.height_mm - 5.0)
    heights = [y_pt for _, y_pt in origins(filled(block(Align.START, "one", "two")))]
    assert heights == pytest.approx([top_pt - 10.5, top_pt - 25.5], abs=0.001)


def test_a_tall_face_lets_its_line_grow() -> None:
    """Ascent 18 on 15 puts the baseline at 15 and ends the line 4.5 below it (CSS 2.1, 10.8)."""
    top_pt = points_from_mm(FACE.height_mm - 5.0)
    heights = [y_pt for _, y_pt in origins(filled(block(Align.START, "^one", "two")))]
    assert heights == pytest.approx([top_pt - 15.0, top_pt - 30.0], abs=0.001)


def test_what_is_used_is_named() -> None:
    """Glyphs ascend, each once; pictures, marks and the words of the face are listed."""
    plate = filled(block(Align.START, "baab"), photo(), mark(), symbol())
    assert plate.fonts == (FontUse(0, array("H", [97, 98]).tobytes(), ("a", "b")),)
    assert plate.pictures == (USE,)
    assert plate.marks == ("caution",)
    assert plate.alt.startswith("baab. a block. Take care")
    assert plate.size == FACE


def test_a_picture_keeps_its_shape_and_gets_its_outline() -> None:
    """A photo of 4 to 3 in 30 mm is 22.5 mm high and centred; the line stands around it."""
    drawn = operators(filled(photo()))
    width, height, x, y = map(
        float, re.findall(r"q ([\d.]+) 0 0 ([\d.]+) ([\d.]+) ([\d.]+)", drawn)[0]
    )
    assert (width, height) == pytest.approx((points_from_mm(30), points_from_mm(22.5)), abs=0.001)
    assert (x, y) == pytest.approx((points_from_mm(5), points_from_mm(60 - 46.25)), abs=0.001)
    line = points_from_mm(0.15)
    outline = [
        float(part) for part in re.findall(r"w ([\d.]+) ([\d.]+) ([\d.]+) ([\d.]+) re", drawn)[0]
    ]
    assert outline == pytest.approx(
        [x - line / 2, y - line / 2, width + line, height + line], abs=0.001
    )


def test_a_frame_without_its_photo_is_dashed() -> None:
    """Where the photo cannot be had, the empty frame is drawn and no picture."""
    drawn = operators(filled(replace(photo(), photo="lost.jpg")))
    assert "Do" not in drawn
    assert "] 0 d" in drawn


@pytest.mark.parametrize(
    ("fill", "outline_mm", "wanted", "not_wanted"),
    [(Shade.BLACK, 0.0, "f", "s"), (None, 0.3, "s", "f"), (Shade.PALE, 0.3, "s", "q")],
)
def test_shapes_are_filled_and_outlined(
    fill: Shade | None, outline_mm: float, wanted: str, not_wanted: str
) -> None:
    """A shape without a tone has no inside, one without a thickness no outline."""
    shape = ShapeBlock("panel", Rect(5, 5, 20, 10), fill, outline_mm)
    ink = None if fill is None else BLACK
    painted = operators(filled(shape, panel=Mould(ink, BLACK))).split()
    assert wanted in painted
    assert not_wanted not in painted


def test_colour_is_set_when_it_changes() -> None:
    """Two black texts set their colour once, a grey one between them three times."""
    aside = replace(block(Align.START, "aside"), purpose="aside")
    one, other = block(Align.START, "one"), block(Align.START, "other")
    assert operators(filled(one, other)).count("rg") == 1
    assert operators(filled(one, aside, other, aside=Mould(GREY))).count("rg") == 3


def test_what_the_template_draws_by_itself_comes_first() -> None:
    """Static ink lies under everything, its settings shut in, its glyphs among the others."""
    static = StaticInk(b"1 0 0 rg 0 0 9 9 re f", (FontUse(2, array("H", [7]).tobytes(), ("x",)),))
    plate = filled(block(Align.START, "a"), static=static)
    assert operators(plate).startswith("q 1 0 0 rg 0 0 9 9 re f Q\n")
    assert [use.font for use in plate.fonts] == [0, 2]


def test_a_look_without_a_mould_is_refused() -> None:
    """A frame that was not measured for a look cannot ink it."""
    with pytest.raises(KeyError):
        make_plate(page(mark()), Frame("lid-card", "f", {}, {}), {}, FakeSetter())


def test_an_empty_line_takes_no_room() -> None:
    """A line without signs is not drawn, as the layout engine leaves an empty one out."""
    assert len(origins(filled(block(Align.START, "one", "", "two")))) == 2


def test_pages_of_other_sizes_have_no_static_ink() -> None:
    """Static ink belongs to one size."""
    frame = Frame("lid-card", "f", {}, {Size(1, 1): StaticInk(b"0 g", ())})
    assert operators(make_plate(page(), frame, {}, FakeSetter())) == ""


def test_every_blank_is_searched_for_as_a_blank() -> None:
    """A narrow blank (U+202F) that is set with the glyph of the blank spoils no other text."""
    line = FakeSetter().set_line(
        "a\u202fb", size_pt=10, weight=400, language="", is_right_to_left=False
    )
    assert "\u202f" in line.glyphs[0].values()
    (use,) = filled(block(Align.START, "a\u202fb")).fonts
    assert sorted(use.texts) == [" ", "a", "b"]


def test_a_symbol_with_an_address_can_be_clicked() -> None:
    """An https address becomes a link over the symbol with its clear margin; a number does not."""
    assert filled(symbol("B-042")).links == ()
    (link,) = filled(symbol("HTTPS://C.EXAMPLE/B-042")).links
    assert (link.rect, link.address) == (
        symbol("HTTPS://C.EXAMPLE/B-042").rect,
        "HTTPS://C.EXAMPLE/B-042",
    )
