from __future__ import annotations

import io
from collections.abc import Iterable
from pathlib import Path

import pikepdf
import pytest

from service.render.proof.finished.outlines import outline_faults
from service.render.reading.objects import Ref
from service.render.reading.pdf_file import PdfFile
from tests.render.proof.finished.made_file import FONTS, font_object, glyphs_of

GLYPHS = set(glyphs_of("Brass 042", 0))


def faults_of(embedded: Path, glyphs: set[int], wanted: Iterable[int]) -> list[str]:
    """Embed glyphs of a font, and look for others in it."""
    with pikepdf.new() as pdf:
        pdf.add_blank_page()
        pdf.Root.Kept = font_object(pdf, embedded, glyphs)
        data = io.BytesIO()
        pdf.save(data, object_stream_mode=pikepdf.ObjectStreamMode.generate)
    file = PdfFile(data.getvalue())
    kept = file.dictionary(file.trailer["/Root"])["/Kept"]
    assert isinstance(kept, Ref)
    return list(outline_faults(file, kept.number, FONTS[0], wanted))


def test_glyphs_that_are_embedded_have_no_fault() -> None:
    """Blanks have no outline and are there all the same."""
    assert faults_of(FONTS[0], GLYPHS, GLYPHS) == []


def test_a_glyph_that_was_left_out_is_told() -> None:
    """One glyph missing is one fault."""
    (missing,) = glyphs_of("M", 0)
    assert faults_of(FONTS[0], GLYPHS, {*GLYPHS, missing}) == [
        f"glyph {missing} of the font {FONTS[0].stem} is not embedded as it is shipped"
    ]


@pytest.mark.parametrize("other", [1, 4], ids=["another weight", "another family"])
def test_glyphs_of_another_font_are_told(other: int) -> None:
    """Glyphs of the same numbers with other outlines are not taken for them."""
    assert len(faults_of(FONTS[other], GLYPHS, GLYPHS)) > len(GLYPHS) / 2
