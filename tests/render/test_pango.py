from __future__ import annotations

import pytest

from service.render.pango import UNITS_PER_PIXEL, Paragraphs
from service.render.task import FONTS_CONF


@pytest.fixture(scope="module")
def paragraphs() -> Paragraphs:
    """Load the shipped fonts once."""
    return Paragraphs(FONTS_CONF)


def lines(paragraphs: Paragraphs, text: str, *, width_px: float | None = None) -> list[str]:
    """Lay a text out and give its lines."""
    raw = text.encode()
    paragraphs.set_paragraph(raw, size_px=16, weight=400, language="", width_px=width_px)
    return [raw[one.start : one.start + one.length].decode() for one in paragraphs.lines()]


def width_px(paragraphs: Paragraphs, text: str, *, size_px: float = 16, weight: int = 400) -> float:
    """Give the width of a text on one line."""
    paragraphs.set_paragraph(
        text.encode(), size_px=size_px, weight=weight, language="", width_px=None
    )
    return paragraphs.lines()[0].width / UNITS_PER_PIXEL


def test_without_a_width_a_text_stays_on_one_line(paragraphs: Paragraphs) -> None:
    """However long it is; with a width it breaks."""
    text = "Day dress, printed cotton " * 20
    assert lines(paragraphs, text) == [text]
    assert len(lines(paragraphs, text, width_px=100)) > 20


def test_lines_are_counted_in_bytes(paragraphs: Paragraphs) -> None:
    """Letters of several bytes are not cut in two."""
    text = "漆塗りの箱と硝子の杯"
    found = lines(paragraphs, text, width_px=60)
    assert len(found) > 1
    assert "".join(found) == text


def test_widths_grow_evenly_with_the_size(paragraphs: Paragraphs) -> None:
    """Positions are not rounded to pixels: twice the size is twice the width."""
    small, large = (width_px(paragraphs, "Brass buckle", size_px=size) for size in (8, 16))
    assert large == pytest.approx(2 * small, rel=0.002)


def test_weights_and_paragraphs_do_not_mix(paragraphs: Paragraphs) -> None:
    """A measure is the same after another text in another weight was laid out."""
    before = width_px(paragraphs, "Brass")
    assert width_px(paragraphs, "Brass", weight=800) > before
    lines(paragraphs, "漆", width_px=5)
    assert width_px(paragraphs, "Brass") == before


def test_a_language_chooses_the_face(paragraphs: Paragraphs) -> None:
    """Han characters are laid out in every language, with a glyph in each."""
    for language in ("ja", "zh", "ko", "", "ja"):
        paragraphs.set_paragraph(
            "骨".encode(), size_px=16, weight=400, language=language, width_px=None
        )
        assert paragraphs.unknown_glyphs() == 0


def test_unknown_glyphs_are_counted(paragraphs: Paragraphs) -> None:
    """Cuneiform is in no shipped font, and no font of the machine steps in."""
    lines(paragraphs, "a\U00012000\U00012001")
    assert paragraphs.unknown_glyphs() == 2


@pytest.mark.parametrize(
    ("text", "leftward"), [("Brass", False), ("كأس", True), ("7 כוס", True), ("7", False)]
)
def test_base_direction(paragraphs: Paragraphs, text: str, *, leftward: bool) -> None:
    """The first strong letter decides (Unicode Standard Annex 9)."""
    assert paragraphs.is_right_to_left(text.encode()) is leftward
