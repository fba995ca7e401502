"""A page of a PDF as a picture so many dots wide, in colour."""

from __future__ import annotations

import hashlib
import io
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from functools import cache
from importlib.metadata import version
from pathlib import Path

import pypdfium2

from service.errors import ServiceError
from service.render.worker import Workers

LIMIT_SECONDS = 30.0
_RENDER = Path(__file__).parents[1]
_SOURCES = ("compose", "screen")
_HALF_DOT = 0.5
_COMPRESSION = 3
"""Beyond it a picture gets hardly smaller, but takes longer than drawing it; measured."""


@dataclass(frozen=True, slots=True)
class PageTask:
    """A page, counted from 1, of a PDF or of the file that holds it, and how wide it is drawn."""

    pdf: bytes | Path
    page: int
    width_px: int


@dataclass(frozen=True, slots=True)
class DrawnPage:
    """A page as PNG; nothing where the file has no such page. `pages` says how many it has."""

    png: bytes
    pages: int


def draw_page(task: PageTask, workers: Workers) -> DrawnPage:
    """Draw a page in a child process.

    Raises:
        JobError: When the file cannot be drawn, or takes too long.
    """
    (drawn,) = workers.run(_draw, [task], limit_seconds=LIMIT_SECONDS)
    if isinstance(drawn, ServiceError):
        raise drawn
    return drawn


@cache
def drawing_sha256() -> str:
    """Name all that decides, beside the PDF's plates, what its picture looks like."""
    digest = hashlib.sha256(version("pypdfium2").encode())
    for name in _SOURCES:
        for source in sorted((_RENDER / name).glob("*.py")):
            digest.update(source.read_bytes())
    return digest.hexdigest()


def _draw(task: PageTask) -> DrawnPage:
    with _opened(task.pdf) as document:
        pages = len(document)
        if not 1 <= task.page <= pages:
            return DrawnPage(b"", pages)
        page = document[task.page - 1]
        # PDFium's wrapper rounds up: half a dot less gives the whole number wanted.
        bitmap = page.render(scale=(task.width_px - _HALF_DOT) / page.get_width())
        data = io.BytesIO()
        bitmap.to_pil().save(data, "PNG", compress_level=_COMPRESSION)
    return DrawnPage(data.getvalue(), pages)


@contextmanager
def _opened(pdf: bytes | Path) -> Iterator[pypdfium2.PdfDocument]:
    """Open a PDF; of one on disk only the parts that are drawn are read."""
    document = pypdfium2.PdfDocument(pdf)
    try:
        yield document
    finally:
        document.close()
