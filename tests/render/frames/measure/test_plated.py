from __future__ import annotations

import io

import pikepdf
import pytest

from service.render.frames.frame import Frame, Mould, StaticInk
from service.render.frames.measure.glyphs import page_glyphs
from service.render.frames.measure.plated import plated_pages
from service.render.frames.measure.specimen import (
    SPECIMEN_MARK,
    make_crowd,
    make_specimens,
    specimen_pages,
)
from service.units import points_from_mm
from tests.render.frames import made

FRAME = Frame(
    made.KIND,
    "ab" * 32,
    {look: Mould((0.0, 0.0, 0.0), (0.5, 0.5, 0.5), 0.2) for look in made.LOOKS},
    {made.FACE: StaticInk(b"", ())},
)


@pytest.mark.print
def test_each_specimen_is_a_page_of_its_own() -> None:
    """Page after page has the face's size, and text where there is text to show."""
    specimens = make_specimens(made.LOOKS, made.FACE)
    crowd = make_crowd(made.LOOKS, made.FACE)
    pages = specimen_pages(made.KIND, made.FACE, specimens, crowd)
    marks = {SPECIMEN_MARK: b"0 g 0 0 1 1 re f"}
    with pikepdf.open(io.BytesIO(plated_pages(pages, FRAME, marks))) as pdf:
        assert len(pdf.pages) == len(pages)
        for page, drawn in zip(pages, pdf.pages, strict=True):
            sides_pt = [float(side) for side in drawn.mediabox][2:]
            wanted_pt = [points_from_mm(made.FACE.width_mm), points_from_mm(made.FACE.height_mm)]
            assert sides_pt == pytest.approx(wanted_pt, abs=0.01)
            has_text = any(hasattr(block, "lines") for block in page.blocks)
            assert bool(page_glyphs(drawn)) is has_text


def test_a_look_without_a_mould_is_told() -> None:
    """A frame that lacks a look is never filled in silence."""
    specimens = make_specimens([made.TITLE], made.FACE)
    pages = specimen_pages(made.KIND, made.FACE, specimens, ())
    lacking = Frame(made.KIND, "ab" * 32, {}, FRAME.statics)
    with pytest.raises(KeyError):
        plated_pages(pages, lacking, {})
