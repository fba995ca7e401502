from __future__ import annotations

from dataclasses import replace

import pytest

from service.geometry import Rect, Size
from service.pages.page import Align, Block, PictureBlock, Shade, ShapeBlock
from service.render.context import (
    BlockContext,
    MarkContext,
    Picture,
    PictureContext,
    ShapeContext,
    SymbolContext,
    TextContext,
    make_document,
    place_inside,
)
from tests.render import made

WIDE = Picture(b"", "b" * 64, 200, 100)
FRAME = PictureBlock("photo", Rect(5, 5, 30, 30), made.PHOTO, "a block")


def context(block: Block, pictures: dict[str, Picture] | None = None) -> BlockContext:
    """Turn one block into what the templates get."""
    return make_document([made.page(block)], pictures or {}).pages[0].blocks[0]


def test_a_text_brings_its_lines_and_setting() -> None:
    """Everything is worked out; the template only writes it down."""
    block = made.from_the_right("כוס", language="he")
    found = context(block)
    assert isinstance(found, TextContext)
    assert (found.lines, found.direction, found.language) == (("כוס",), "rtl", "he")
    assert (found.size_pt, found.weight, found.align, found.ink) == (10.0, 400, "start", "black")
    assert found.leading_mm == pytest.approx(12.5 * 25.4 / 72)


def test_a_photo_is_named_by_what_it_is() -> None:
    """The address is the digest of the picture, never a file's name."""
    found = context(FRAME, {made.PHOTO: WIDE})
    assert isinstance(found, PictureContext)
    assert found.address == f"underlid:photo/{WIDE.sha256}"
    assert made.PHOTO not in found.address


@pytest.mark.parametrize("block", [FRAME, replace(FRAME, photo="")], ids=["missing", "none"])
def test_a_frame_without_its_photo_stays(block: PictureBlock) -> None:
    """A photo that could not be used leaves its frame."""
    found = context(block)
    assert isinstance(found, PictureContext)
    assert (found.address, found.inner) == ("", FRAME.rect)


@pytest.mark.parametrize(
    ("across", "down", "frame", "inner"),
    [
        (Align.START, Align.START, Rect(5, 5, 30, 30), Rect(0, 0, 30, 15)),
        (Align.CENTRE, Align.CENTRE, Rect(5, 5, 30, 30), Rect(0, 7.5, 30, 15)),
        (Align.END, Align.END, Rect(5, 5, 30, 30), Rect(0, 15, 30, 15)),
        (Align.END, Align.CENTRE, Rect(5, 5, 60, 10), Rect(40, 0, 20, 10)),
    ],
)
def test_a_photo_is_never_stretched(across: Align, down: Align, frame: Rect, inner: Rect) -> None:
    """It keeps its shape, as large as the frame allows, and stands where it was asked to."""
    assert place_inside(WIDE, replace(FRAME, rect=frame, across=across, down=down)) == inner


def test_a_symbol_has_its_clear_margin() -> None:
    """The view box counts four modules on each side (ISO/IEC 18004)."""
    block = made.symbol()
    found = context(block)
    assert isinstance(found, SymbolContext)
    assert found.side_modules == block.symbol.side_modules + 8
    assert found.path.startswith("M")


def test_marks_and_shapes() -> None:
    """A mark is an address; a shape has a tone or none, and a line that is solid or dashed."""
    mark = context(made.mark())
    assert isinstance(mark, MarkContext)
    assert mark.address == "underlid:mark/caution"
    shape = context(ShapeBlock("frame", Rect(0, 0, 1, 1), outline_mm=0.2, dashed=True))
    assert shape == ShapeContext("frame", Rect(0, 0, 1, 1), "", 0.2, "dashed", 0.0)
    filled = context(ShapeBlock("rule", Rect(0, 0, 1, 1), Shade.PALE))
    assert isinstance(filled, ShapeContext)
    assert (filled.fill, filled.line) == ("pale", "solid")


def test_a_document_has_one_size() -> None:
    """Faces of two sizes are two documents, and no faces are none."""
    small = made.page(size=Size(50, 30))
    with pytest.raises(ValueError, match="one size"):
        make_document([made.page(), small], {})
    with pytest.raises(ValueError, match="one size"):
        make_document([], {})
    document = make_document([small, small], {})
    assert (document.size, len(document.pages)) == (Size(50, 30), 2)
    assert document.pages[0].template == "lid-card/card.html"
