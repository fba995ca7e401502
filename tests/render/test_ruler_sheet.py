"""The ruler sheet as ink, measured on a raster and read by a reader that did not make it."""

from __future__ import annotations

import io
from collections.abc import Iterator
from contextlib import closing
from dataclasses import replace

import numpy as np
import pypdfium2
import pytest
from pypdf import PdfReader

from service.errors import ProofFailedError, ServiceError
from service.geometry import Size
from service.pages.page import Page, ShapeBlock, TextBlock
from service.render.frames.store import FrameStore
from service.render.ruler import PangoRuler
from service.render.ruler_sheet import draw_ruler_sheet, prove_ruler_sheet
from service.render.task import FONTS_CONF
from service.sheets.calibration.ruler_page import ruler_page
from service.sheets.calibration.ruler_sheet import crosses_on
from service.sheets.stocks import A4, PAGES

pytestmark = [pytest.mark.print, pytest.mark.slow]

DPI = 600
DOTS_PER_MM = DPI / 25.4


@pytest.fixture(scope="module")
def frames(tmp_path_factory: pytest.TempPathFactory) -> Iterator[FrameStore]:
    """Give the frames of the real templates."""
    with closing(FrameStore(tmp_path_factory.mktemp("frames"))) as store:
        yield store


@pytest.fixture(scope="module")
def page() -> Page:
    """Set the sheet for A4 with the real ruler."""
    return ruler_page(A4, PangoRuler(FONTS_CONF))


@pytest.fixture(scope="module")
def pdf(page: Page, frames: FrameStore) -> bytes:
    """Draw it."""
    return draw_ruler_sheet(page, frames)


def test_crosses_are_inked_where_they_are_said_to_be(pdf: bytes) -> None:
    """On a raster of 600 dpi the long lines of each cross meet within 0.05 mm of its place."""
    with pypdfium2.PdfDocument(pdf) as document:
        shown = document[0].render(scale=DPI / 72, grayscale=True)
        dark = 255.0 - np.squeeze(shown.to_numpy()).astype(float)
    for cross in crosses_on(A4):
        left, top = (round((at - 9.5) * DOTS_PER_MM) for at in (cross.place.x_mm, cross.place.y_mm))
        side = round(19 * DOTS_PER_MM)
        part = dark[top : top + side, left : left + side]
        across_mm = (left + _middle(part.sum(axis=0))) / DOTS_PER_MM
        down_mm = (top + _middle(part.sum(axis=1))) / DOTS_PER_MM
        assert across_mm == pytest.approx(cross.place.x_mm, abs=0.05)
        assert down_mm == pytest.approx(cross.place.y_mm, abs=0.05)


def _middle(ink: np.ndarray[tuple[int, ...], np.dtype[np.float64]]) -> float:
    """Give the middle of the line that is by far the darkest, in dots."""
    peak = int(ink.argmax())
    near = slice(max(0, peak - 4), peak + 5)
    weights = np.where(ink[near] > ink.max() / 4, ink[near], 0.0)
    return float((np.arange(near.start, near.start + len(weights)) + 0.5) @ weights / weights.sum())


def test_the_file_says_how_it_is_printed(pdf: bytes) -> None:
    """One page of exactly the paper's size, with a title, to be printed without scaling."""
    reader = PdfReader(io.BytesIO(pdf))
    (sheet,) = reader.pages
    assert float(sheet.mediabox.width) == pytest.approx(210 * 72 / 25.4, abs=0.01)
    assert float(sheet.mediabox.height) == pytest.approx(297 * 72 / 25.4, abs=0.01)
    assert "'/PrintScaling': '/None'" in str(reader.root_object["/ViewerPreferences"])
    assert reader.metadata is not None
    assert reader.metadata.title == "Ruler sheet"
    assert "from the LEFT edge of the paper" in sheet.extract_text().replace("\n", " ")


@pytest.mark.parametrize("size", PAGES.values(), ids=PAGES)
def test_every_paper_can_be_drawn(size: Size, frames: FrameStore) -> None:
    """The words of each size fit and are read back."""
    assert draw_ruler_sheet(ruler_page(size, PangoRuler(FONTS_CONF)), frames).startswith(b"%PDF")


def test_the_same_sheet_gives_the_same_bytes(page: Page, pdf: bytes, frames: FrameStore) -> None:
    """Nothing of the hour or the machine is in the file."""
    assert draw_ruler_sheet(page, frames) == pdf


def test_what_is_not_there_is_a_fault(page: Page, pdf: bytes) -> None:
    """A line a twentieth of a millimetre away, or a text that is not read, fails the proof."""
    first = next(block for block in page.blocks if isinstance(block, ShapeBlock))
    words = next(block for block in page.blocks if isinstance(block, TextBlock))
    moved = replace(first, rect=first.rect.moved(0.05, 0))
    with pytest.raises(ProofFailedError) as trouble:
        prove_ruler_sheet(pdf, replace(page, blocks=(moved, replace(words, whole="Other words"))))
    line, text = trouble.value.faults
    assert line.startswith("there is no line at ")
    assert text == "'Other words' cannot be read"


def test_what_cannot_be_drawn_is_raised(page: Page, frames: FrameStore) -> None:
    """A template that is not there is an error."""
    with pytest.raises(ServiceError):
        draw_ruler_sheet(replace(page, kind="no-such-kind"), frames)
