from __future__ import annotations

import io
from dataclasses import replace

import pikepdf
import pytest

from service.errors import AssetError, EngineComplaintError, ServiceError, TemplateError
from service.geometry import Size
from service.pages.page import Block
from service.render.draw import draw_pages, fill_templates
from service.render.ruler import PangoRuler
from service.render.task import ENVIRONMENT, FONTS_CONF, SOURCE_DATE_EPOCH, DrawTask
from tests.contents.made import A4, A5, GARMENT_COVER, hazard, objects, packing
from tests.pages.made import cover_page, end_page, lid_pages, list_pages
from tests.render import made
from tests.render.made import Ink


def html_of(*blocks: Block) -> str:
    """Fill the templates with one page."""
    return fill_templates(DrawTask((made.page(*blocks),), {made.PHOTO: made.picture()}))


def test_text_is_escaped() -> None:
    """What a carer typed is text, never markup."""
    html = html_of(made.text('<b>Brass</b> & "glass"'))
    assert "<b>" not in html
    assert "&lt;b&gt;Brass&lt;/b&gt; &amp; " in html


def test_templates_name_only_our_own_files() -> None:
    """Every address in a page is one of ours."""
    html = html_of(made.text("B-042"), made.photo(), made.mark(), made.symbol())
    addresses = [part.split('"')[0] for part in html.split('src="')[1:]]
    assert addresses
    assert all(one.startswith("underlid:") for one in addresses)


def test_a_kind_without_a_template_is_refused_by_name() -> None:
    """A kind that cannot be drawn is told from a fault of the page."""
    page = replace(made.page(), kind="no-such-kind")
    with pytest.raises(Exception, match="no-such-kind"):
        fill_templates(DrawTask((page,), {}))


def test_a_child_gets_the_fonts_and_one_constant_day() -> None:
    """Only the shipped fonts can be chosen, and the clock does not get into the ink."""
    assert ENVIRONMENT["FONTCONFIG_FILE"] == str(FONTS_CONF)
    assert FONTS_CONF.exists()
    assert ENVIRONMENT["SOURCE_DATE_EPOCH"] == SOURCE_DATE_EPOCH


@pytest.mark.print
@pytest.mark.slow
def test_equal_pages_give_equal_bytes(ink: Ink) -> None:
    """Nothing of the moment gets into the file, and each face has its finished size."""
    page = made.page(made.text("B-042"), made.photo(), made.mark(), made.symbol())
    first = ink.of(page)
    assert first == ink.of(page)
    with pikepdf.open(io.BytesIO(first)) as pdf:
        box = [float(side) for side in pdf.pages[0].mediabox]
        assert box == pytest.approx([0, 0, 100 / 25.4 * 72, 60 / 25.4 * 72], abs=0.01)


@pytest.mark.print
@pytest.mark.slow
def test_every_kind_is_drawn(ink: Ink) -> None:
    """Cards fitted with the real ruler are drawn, a page each."""
    ruler = PangoRuler(FONTS_CONF)
    records = [replace(one, hazards=(hazard("lead"),)) for one in objects(6)]
    box, cover = packing(records), packing(records, GARMENT_COVER)
    kinds = (
        lid_pages(box, A5, ruler),
        (end_page(box, Size(140, 67.7), ruler),),
        (cover_page(cover, A4.turned, ruler),),
        list_pages(box, A4, ruler),
    )
    photos = {f"{number}.jpg": made.picture() for number in range(1, 7)}
    for pages in kinds:
        with pikepdf.open(io.BytesIO(ink.of(*pages, pictures=photos))) as pdf:
            assert len(pdf.pages) == len(pages)


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.parametrize("kind", ["mark", "photo"])
def test_a_file_that_is_not_ours_is_refused(kind: str, ink: Ink) -> None:
    """A mark nobody ships ends the drawing; a photo nobody handed in leaves its frame."""
    if kind == "mark":
        with pytest.raises(AssetError, match="no-such-mark"):
            ink.of(made.page(replace(made.mark(), mark="no-such-mark")))
    else:
        assert ink.of(made.page(made.photo()), pictures={}).startswith(b"%PDF")


@pytest.mark.print
@pytest.mark.slow
def test_a_picture_that_is_none_stops_the_drawing(ink: Ink) -> None:
    """What the engine complains of is an error, not a blank frame."""
    broken = replace(made.picture(), jpeg=b"no picture at all")
    with pytest.raises(EngineComplaintError, match="complained"):
        ink.of(made.page(made.photo()), pictures={made.PHOTO: broken})


def test_errors_of_drawing_are_ours() -> None:
    """Whoever runs a job catches one tree."""
    for kind in (TemplateError, AssetError, EngineComplaintError):
        assert issubclass(kind, ServiceError)
    assert callable(draw_pages)
