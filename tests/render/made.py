"""Pages made by hand, and their ink, for tests that look at ink."""

from __future__ import annotations

import io
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import replace

from PIL import Image

from service.geometry import Rect, Size
from service.pages.page import (
    Block,
    Direction,
    MarkBlock,
    Page,
    PictureBlock,
    SymbolBlock,
    TextBlock,
    TextStyle,
)
from service.render.context import Picture
from service.render.draw import draw_pages
from service.render.task import ENVIRONMENT, FONTS_CONF, DrawTask
from service.render.worker import Workers
from service.sheets.stock import Medium, Stock
from service.symbols.symbol import Level, encode_symbol

FONTS = FONTS_CONF.parent
FACE = Size(100.0, 60.0)
PAYLOAD = "https://collections.example/c/B-042"
PHOTO = "front.jpg"


class Ink:
    """Draws in a child process that knows the shipped fonts alone."""

    def __init__(self, workers: Workers) -> None:
        """Draw with these workers."""
        self._workers = workers

    def of(self, *pages: Page, pictures: Mapping[str, Picture] | None = None) -> bytes:
        """Draw pages by the real templates."""
        task = DrawTask(pages, {PHOTO: picture()} if pictures is None else pictures)
        return self._first(self._workers.run(draw_pages, [task]))

    def of_html(self, body: str, size: Size = FACE) -> bytes:
        """Draw a page of one's own, its blocks placed in mm."""
        return self._first(self._workers.run(draw_html, [document(body, size)]))

    @staticmethod
    def _first(results: Iterator[object]) -> bytes:
        result = next(results)
        if isinstance(result, Exception):
            raise result
        assert isinstance(result, bytes)
        return result


@contextmanager
def ink_process() -> Iterator[Ink]:
    """Start the child, and end it."""
    with Workers(1, environment=ENVIRONMENT, tasks_per_process=200) as workers:
        yield Ink(workers)


def draw_html(html: str) -> bytes:
    """Draw HTML as it comes, faults and all; runs in the child."""
    from weasyprint import HTML  # noqa: PLC0415 - only the child has the fonts.

    return bytes(HTML(string=html).write_pdf())


def document(body: str, size: Size) -> str:
    """Give a whole document with the faces and figures of the real one."""
    return (
        f"<html lang=en><style>@page {{ size: {size.width_mm}mm {size.height_mm}mm; margin: 0 }}"
        "body { margin: 0; font-family: 'Atkinson Hyperlegible Next' }"
        "html { font-feature-settings: 'tnum' }"
        "div, svg { position: absolute; display: block; white-space: pre; line-height: 1.25 }"
        f"</style>{body}</html>"
    )


def text(
    line: str,
    *,
    x_mm: float = 5.0,
    y_mm: float = 5.0,
    size_pt: float = 10.0,
    width_mm: float = 60.0,
) -> TextBlock:
    """Make a block of one line."""
    style = TextStyle(size_pt)
    rect = Rect(x_mm, y_mm, width_mm, style.leading_mm)
    return TextBlock("title", rect, (line,), style, line)


def from_the_right(line: str, *, language: str, y_mm: float = 5.0) -> TextBlock:
    """Make a block of one line that runs from right to left."""
    block = text(line, y_mm=y_mm)
    return replace(block, direction=Direction.RIGHT_TO_LEFT, language=language)


def symbol(
    payload: str = PAYLOAD, *, level: Level = Level.M, module_mm: float = 0.5
) -> SymbolBlock:
    """Make a symbol in the lower right of the face."""
    made = encode_symbol(payload, level=level)
    side_mm = made.full_side_modules * module_mm
    return SymbolBlock("symbol", Rect(70.0, 30.0, side_mm, side_mm), made, module_mm, 4, payload)


def photo() -> PictureBlock:
    """Make a frame for the one photo."""
    return PictureBlock("photo", Rect(5.0, 20.0, 30.0, 30.0), PHOTO, "a block")


def mark() -> MarkBlock:
    """Make a mark that is shipped."""
    return MarkBlock("mark", Rect(45.0, 20.0, 15.0, 15.0), "caution", "Take care")


def page(*blocks: Block, size: Size = FACE) -> Page:
    """Make a face of blocks."""
    return Page("lid-card", "B-042", "Brass and glass", 1, 1, size, blocks)


def without(whole: Page, block: Block) -> Page:
    """Take a block from a page."""
    return replace(whole, blocks=tuple(one for one in whole.blocks if one is not block))


def picture() -> Picture:
    """Make a small grey photo."""
    data = io.BytesIO()
    Image.new("RGB", (120, 90), (110, 120, 130)).save(data, "JPEG")
    return Picture(data.getvalue(), "a" * 64, 120, 90)


def stock(*, columns: int = 1, rows: int = 2, label: Size = FACE) -> Stock:
    """Make card for faces, two to an A4 sheet."""
    return Stock(
        name="test card",
        page=Size(210.0, 297.0),
        columns=columns,
        rows=rows,
        label=label,
        pitch_x_mm=label.width_mm + 5.0,
        pitch_y_mm=label.height_mm + 5.0,
        left_mm=20.0,
        top_mm=30.0,
        radius_mm=0.0,
        medium=Medium.CARD,
    )
