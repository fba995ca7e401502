from __future__ import annotations

from dataclasses import replace

import pytest

from service.geometry import Rect
from service.pages.page import (
    Block,
    MarkBlock,
    Page,
    PictureBlock,
    Shade,
    ShapeBlock,
    SymbolBlock,
    TextBlock,
    TextStyle,
)
from service.render.frames.frame import (
    Look,
    MarkLook,
    PictureLook,
    ShapeLook,
    SymbolLook,
    TextLook,
)
from service.render.frames.looks import has_picture, look_of, looks_in
from service.symbols.symbol import Level, encode_symbol
from tests.render.frames.made import FACE, KIND

RECT = Rect(1.0, 2.0, 30.0, 10.0)
STYLE = TextStyle(10.0)
TEXT = TextBlock("title", RECT, ("B-042",), STYLE, "B-042")
PHOTO = PictureBlock("photo", RECT, "front.jpg", "a block")
CASES: dict[str, tuple[Block, Look]] = {
    "text": (TEXT, TextLook("title", "black")),
    "picture": (PHOTO, PictureLook("photo", is_empty=True)),
    "symbol": (
        SymbolBlock("symbol", RECT, encode_symbol("B", level=Level.M), 0.5, 4, "B"),
        SymbolLook("symbol"),
    ),
    "mark": (MarkBlock("mark", RECT, "caution", "Take care"), MarkLook("mark")),
    "rule": (
        ShapeBlock("rule", RECT, Shade.BLACK),
        ShapeLook("rule", "black", has_outline=False, is_dashed=False),
    ),
    "dashes": (
        ShapeBlock("gap", RECT, outline_mm=0.2, dashed=True),
        ShapeLook("gap", "", has_outline=True, is_dashed=True),
    ),
    "dashes-of-no-width": (
        ShapeBlock("gap", RECT, dashed=True),
        ShapeLook("gap", "", has_outline=False, is_dashed=False),
    ),
}


@pytest.mark.parametrize(("block", "look"), CASES.values(), ids=CASES)
def test_a_look_is_what_a_template_may_tell_apart(block: Block, look: Look) -> None:
    """Purpose, shade, filling and outline make the look; words, place and size do not."""
    assert look_of(block, has_picture=False) == look
    moved = replace(block, rect=RECT.moved(5.0, 5.0))
    assert look_of(moved, has_picture=False) == look


def test_a_frame_with_a_photo_is_another_look() -> None:
    """A frame whose photo is not there is drawn as one that never had any."""
    none = replace(PHOTO, photo="")
    assert has_picture(PHOTO, {"front.jpg"})
    assert not has_picture(PHOTO, set())
    assert not has_picture(none, {""})
    pages = [Page(KIND, "", "", 1, 1, FACE, blocks) for blocks in ((PHOTO,), (none, TEXT), (TEXT,))]
    full, empty = PictureLook("photo", is_empty=False), PictureLook("photo", is_empty=True)
    title = TextLook("title", "black")
    assert looks_in(pages, {"front.jpg"}) == {full, empty, title}
    assert looks_in(pages, set()) == {empty, title}
