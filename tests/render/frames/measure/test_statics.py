from __future__ import annotations

import io
from pathlib import Path

import numpy as np
import pikepdf
import pytest

from service.errors import SlotRefusedError
from service.pages.page import Page
from service.render.frames.frame import StaticInk
from service.render.raster import opened, raster_of
from service.render.worker import Workers
from service.units import points_from_mm
from tests.render.frames import made

pytestmark = [pytest.mark.print, pytest.mark.slow]
PLACE = "position:absolute;left:{x}mm;top:{y}mm;width:40mm;height:{h}mm"
RULE = f'<div style="{PLACE.format(x=10, y=12, h=1)};background:#00f"></div>'
PANEL = f'<div style="{PLACE.format(x=60, y=30, h=20)};border:1mm solid #777"></div>'
WORDS = f'<p style="{PLACE.format(x=10, y=60, h=6)};font-weight:700">Office 1 and Afb</p>'
OTHER_SCRIPT = f'<p style="{PLACE.format(x=60, y=60, h=6)}" dir="rtl">صندوق</p>'


def static_of(templates: Path, workers: Workers) -> StaticInk:
    """Measure what the lid card of some templates draws by itself."""
    return made.frame_of(workers, templates, looks=[made.TITLE]).statics[made.FACE]


def empty_page(templates: Path, workers: Workers) -> bytes:
    """Draw a page without blocks by the engine."""
    page = Page(made.KIND, "", "", 1, 1, made.FACE, ())
    return made.drawn(workers, page, templates=templates)


def without_fonts(static: StaticInk) -> bytes:
    """Make a page of static ink alone."""
    sides_pt = [points_from_mm(side) for side in (made.FACE.width_mm, made.FACE.height_mm)]
    with pikepdf.new() as pdf:
        page = pdf.add_blank_page(page_size=(sides_pt[0], sides_pt[1]))
        page.Contents = pdf.make_stream(static.operators)
        data = io.BytesIO()
        pdf.save(data)
    return data.getvalue()


def test_fixed_shapes_look_as_the_engine_draws_them(tmp_path: Path, workers: Workers) -> None:
    """A rule and a panel stand on a plate where the template puts them, dot for dot."""
    templates = made.templates_with(tmp_path, card=RULE + PANEL)
    static = static_of(templates, workers)
    assert static.fonts == ()
    with (
        opened(empty_page(templates, workers)) as theirs,
        opened(without_fonts(static)) as ours,
    ):
        wanted, found = (raster_of(pdf[0], resolution_dpi=150).image for pdf in (theirs, ours))
    assert np.asarray(found).min() < 200
    assert np.array_equal(np.asarray(wanted), np.asarray(found))


def test_fixed_words_are_set_in_shipped_fonts(tmp_path: Path, workers: Workers) -> None:
    """Their fonts are named by number, with the glyphs shown and what these stand for."""
    templates = made.templates_with(tmp_path, card=WORDS + OTHER_SCRIPT)
    static = static_of(templates, workers)
    first = static.fonts[0]
    glyphs = memoryview(first.glyphs).cast("H").tolist()
    assert glyphs == sorted(set(glyphs))
    assert "".join(sorted(set("".join(first.texts)))) == "".join(sorted(set("Office 1 and Afb")))
    assert [use.font for use in static.fonts] == sorted({use.font for use in static.fonts})
    assert {f"/F{use.font}" for use in static.fonts} == {
        word for word in static.operators.decode("ascii").split() if word.startswith("/")
    }


def test_glyphs_of_fixed_words_are_those_of_the_engine(tmp_path: Path, workers: Workers) -> None:
    """The codes shown are the engine's own, and nothing but fonts is named."""
    templates = made.templates_with(tmp_path, card=WORDS)
    static = static_of(templates, workers)
    with pikepdf.open(io.BytesIO(empty_page(templates, workers))) as pdf:
        shown = pdf.pages[0].obj.Contents.read_bytes()
    (line,) = [one for one in shown.splitlines() if one.endswith(b"TJ")]
    assert line.replace(b" ", b"") in static.operators.replace(b" ", b"")
    assert b" gs" not in static.operators


def test_a_picture_of_the_templates_own_is_refused(tmp_path: Path, workers: Workers) -> None:
    """A plate knows the pictures of its slots alone; the mark is a drawing and may stay."""
    gradient = '<div style="height:9mm;background:linear-gradient(#000,#fff)"></div>'
    veil = '<div style="height:9mm;background:#000;opacity:0.5"></div>'
    for number, card in enumerate((gradient, veil)):
        templates = made.templates_with(tmp_path / str(number), card=card)
        with pytest.raises(SlotRefusedError, match="fixed part"):
            static_of(templates, workers)
    mark = '<img src="underlid:mark/fragile" style="width:9mm">'
    assert static_of(made.templates_with(tmp_path / "mark", card=mark), workers).operators


def test_more_than_a_page_is_refused(tmp_path: Path, workers: Workers) -> None:
    """A template whose own matter runs over gives no frame."""
    templates = made.templates_with(tmp_path, card='<p>one</p><p style="break-before:page">two</p>')
    with pytest.raises(SlotRefusedError, match="stay on its page"):
        static_of(templates, workers)


def test_slots_are_measured_over_static_ink(tmp_path: Path, workers: Workers) -> None:
    """What stands on every page is not taken for a slot's."""
    templates = made.templates_with(tmp_path, card=RULE + WORDS)
    assert made.frame_of(workers, templates).moulds == made.frame_of(workers).moulds
