"""How like the layout engine's own drawing of the same pages the filled frames are, at 150 dpi."""

from __future__ import annotations

import sys
from collections.abc import Iterator, Sequence

import numpy as np
import pypdfium2

from service.geometry import Rect
from service.pages.page import Page
from service.pipeline.printing.shelf import Shelf
from service.render.context import Picture
from service.render.draw import draw_pages
from service.render.task import DrawTask
from service.units import POINTS_PER_INCH, dots_from_mm, mm_from_dots
from tests.benchmarks.content.photos import THUMBNAIL_PX
from tests.benchmarks.engine import Job, read_job, say
from tests.benchmarks.ours.press import Press, ready_pictures

_DPI = 150.0
_LEVELS = 64
"""A pixel differs when it is a quarter of the way from black to white apart."""
_FINER = 4
"""Drawn so many times finer first, as some readers move each glyph to a whole pixel."""
_AT_ONCE = 10

_Pixels = np.ndarray[tuple[int, ...], np.dtype[np.bool_]]


def main() -> None:
    """Draw every record both ways and say how much the worst page differs."""
    job = read_job(sys.argv[1:])
    press, shelf, records = Press(job), Shelf(), job.records()
    keys = press.ink(records, shelf, is_proved=False)
    press.write(keys, shelf, job.out)
    pages = [press.page_of(record) for record in records]
    press.close()
    pixels, blobs, slots = [], [], []
    for page, differing in zip(pages, _differences(job, pages), strict=True):
        pixels.append(float(differing.mean()))
        blobs.append(_largest_blob_mm2(differing))
        slots.append(max(float(_part(differing, block.rect).mean()) for block in page.blocks))
    say({"pixels_ratio": max(pixels), "blob_mm2": max(blobs), "slot_ratio": max(slots)})


def _differences(job: Job, pages: Sequence[Page]) -> Iterator[_Pixels]:
    with pypdfium2.PdfDocument(job.out) as ours:
        number = 0
        for start in range(0, len(pages), _AT_ONCE):
            group = tuple(pages[start : start + _AT_ONCE])
            with pypdfium2.PdfDocument(draw_pages(DrawTask(group, _pictures(job)))) as theirs:
                for page in theirs:
                    yield np.abs(_levels(ours[number]) - _levels(page)) > _LEVELS
                    number += 1


def _pictures(job: Job) -> dict[str, Picture]:
    return {
        name: Picture(kept.largest.jpeg, kept.largest.sha256, THUMBNAIL_PX, THUMBNAIL_PX)
        for name, kept in ready_pictures(job.store).items()
    }


def _levels(page: pypdfium2.PdfPage) -> np.ndarray[tuple[int, ...], np.dtype[np.float32]]:
    fine = page.render(scale=_FINER * _DPI / POINTS_PER_INCH, grayscale=True).to_numpy().squeeze()
    rows, columns = (side // _FINER for side in fine.shape)
    cut = fine[: rows * _FINER, : columns * _FINER]
    squares = cut.reshape(rows, _FINER, columns, _FINER)
    return np.asarray(squares.mean(axis=(1, 3), dtype="f4"))


def _part(differing: _Pixels, rect: Rect) -> _Pixels:
    left, top, right, bottom = (
        max(0, round(dots_from_mm(length, resolution_dpi=_DPI)))
        for length in (rect.x_mm, rect.y_mm, rect.right_mm, rect.bottom_mm)
    )
    return differing[top : bottom + 1, left : right + 1]


def _largest_blob_mm2(differing: _Pixels) -> float:
    """Give the area of the largest patch: squares of 2 x 2 differing pixels that touch.

    A line one pixel wide is an edge that two readers of outlines put elsewhere, and no patch.
    """
    solid = differing[:-1, :-1] & differing[1:, :-1] & differing[:-1, 1:] & differing[1:, 1:]
    left = {(int(row), int(column)) for row, column in np.argwhere(solid)}
    largest = 0
    while left:
        waiting, size = [left.pop()], 0
        while waiting:
            row, column = waiting.pop()
            size += 1
            around = {(row + i, column + j) for i in (-1, 0, 1) for j in (-1, 0, 1)} & left
            left -= around
            waiting += around
        largest = max(largest, size)
    return float(largest * mm_from_dots(1, resolution_dpi=_DPI) ** 2)


if __name__ == "__main__":
    main()
