"""Tests for a page of a PDF as a picture."""

from __future__ import annotations

import io
from collections.abc import Iterator
from pathlib import Path

import pikepdf
import pytest
from PIL import Image

from service.errors import JobError
from service.render.screen.pages import PageTask, draw_page, drawing_sha256
from service.render.worker import Workers

A4_PT = (595.276, 841.89)
RED_CORNER = b"1 0 0 rg 0 741.89 100 100 re f"


@pytest.fixture(scope="module")
def workers() -> Iterator[Workers]:
    """Give one child process."""
    with Workers(1) as opened:
        yield opened


@pytest.fixture
def pdf() -> bytes:
    """Give two pages: A4 with a red square in its top left corner, and an empty one lying wide."""
    target = io.BytesIO()
    with pikepdf.new() as made:
        made.add_blank_page(page_size=A4_PT)
        made.pages[0].Contents = made.make_stream(RED_CORNER)
        made.add_blank_page(page_size=(A4_PT[1], A4_PT[0]))
        made.save(target)
    return target.getvalue()


@pytest.mark.parametrize("width_px", [50, 333, 900, 2400])
def test_a_page_is_exactly_as_wide_as_asked(pdf: bytes, workers: Workers, width_px: int) -> None:
    """Its height follows from the page, to the dot; what is red on paper is red on the screen."""
    drawn = draw_page(PageTask(pdf, 1, width_px), workers)
    image = Image.open(io.BytesIO(drawn.png)).convert("RGB")
    assert image.width == width_px
    assert abs(image.height - width_px * A4_PT[1] / A4_PT[0]) <= 1
    assert image.getpixel((2, 2)) == (255, 0, 0)
    assert image.getpixel((image.width - 2, image.height - 2)) == (255, 255, 255)
    assert drawn.pages == 2


def test_a_file_on_disk_is_drawn_alike(pdf: bytes, workers: Workers, tmp_path: Path) -> None:
    """Bytes and the file that holds them give the same picture."""
    path = tmp_path / "two.pdf"
    path.write_bytes(pdf)
    assert draw_page(PageTask(path, 2, 100), workers) == draw_page(PageTask(pdf, 2, 100), workers)


@pytest.mark.parametrize("page", [0, 3])
def test_a_page_that_is_not_there_gives_nothing(pdf: bytes, workers: Workers, page: int) -> None:
    """Pages are counted from 1; how many there are is told."""
    drawn = draw_page(PageTask(pdf, page, 100), workers)
    assert (drawn.png, drawn.pages) == (b"", 2)


def test_what_is_no_pdf_is_told(workers: Workers) -> None:
    """A damaged file is an error of the work, and the child goes on."""
    with pytest.raises(JobError):
        draw_page(PageTask(b"no PDF", 1, 100), workers)


def test_the_way_of_drawing_has_a_name() -> None:
    """It stays the same while nothing changes."""
    assert len(drawing_sha256()) == 64
    assert drawing_sha256() == drawing_sha256()
