from __future__ import annotations

from dataclasses import replace

from service.render.proof.text.fonts import PlateFonts
from service.render.proof.text.lines import InkedLine
from service.render.reading.fonts import shipped_fonts
from service.render.reading.glyphs import Piece, SetRun
from tests.render.made import FONTS, page, text
from tests.render.proof.plated import plate_of

NAMES = tuple(shipped_fonts(FONTS))
PLATE = plate_of(page(text("BB-2")))


def inked(*numbers: int, font: str = NAMES[0]) -> InkedLine:
    """Give a line of these glyphs."""
    piece = Piece(font, 4.0, 0.0, numbers, (0.0,) * len(numbers))
    return InkedLine(5.0, 8.0, b"", SetRun((piece,), (), (), None, None, ""), None)


def test_listed_glyphs_are_no_fault() -> None:
    """A line may show any glyph its plate lists, in the font it lists it for."""
    fonts = PlateFonts(PLATE, NAMES)
    listed = sorted(fonts.glyphs[NAMES[0]])
    assert len(listed) == 3
    assert list(fonts.faults([inked(*listed)])) == []
    assert sorted(fonts.texts.values()) == ["-", "2", "B"]


def test_others_are_told_with_their_place() -> None:
    """A glyph or a font that is not listed would be missing from the file."""
    fonts = PlateFonts(PLATE, NAMES)
    for line in (inked(4999), inked(*fonts.glyphs[NAMES[0]], font=NAMES[1])):
        (told,) = fonts.faults([line])
        assert "left out of the list" in told
        assert "at 5.0 mm from the left and 8.0 mm from the top" in told


def test_an_empty_box_is_told() -> None:
    """Glyph 0 stands for whatever a font has not, even where it is listed."""
    use = replace(PLATE.fonts[0], glyphs=b"\0\0", texts=("",))
    (told,) = PlateFonts(replace(PLATE, fonts=(use,)), NAMES).faults([inked(0)])
    assert "an empty box stands for a sign no font has" in told
