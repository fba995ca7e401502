"""The pages of the benchmark as HTML, the same for every engine that reads it."""

from __future__ import annotations

import base64
import struct
import zlib
from collections.abc import Sequence
from pathlib import Path

from jinja2 import Environment, FileSystemLoader
from markupsafe import Markup

from service.symbols.symbol import Symbol
from tests.benchmarks.content import measures
from tests.benchmarks.content.records import Card, Item, Label, Record, Warn
from tests.benchmarks.content.store import MARKS
from tests.benchmarks.engine import Job

TEMPLATES = Path(__file__).parent / "templates"


class Markings:
    """Fills the templates of one job; `layout` is "card", "lean" or "label"."""

    def __init__(self, job: Job, layout: str, *, has_style: bool) -> None:
        """Read and compile the template; `has_style` puts the style sheet into the document."""
        self._job = job
        self.css = (TEMPLATES / f"{layout}.css").read_text("utf-8")
        templates = Environment(loader=FileSystemLoader(TEMPLATES), autoescape=True)
        templates.globals.update(
            css=Markup(self.css if has_style else ""),  # noqa: S704 - ours
            photo=self._photo,
            mark=_mark,
            direction=_direction,
            symbol=self._symbol,
            picture_of_symbol=self._picture_of_symbol,
            photo_place=_photo_place,
            caption_place=_caption_place,
            warn_place=_warn_place,
            label_place=_label_place,
        )
        self._template = templates.get_template(f"{layout}.html")

    def fill(self, records: Sequence[Record]) -> str:
        """Give one HTML document of all records."""
        step = measures.LABELS_A_SHEET
        sheets = [records[start : start + step] for start in range(0, len(records), step)]
        return self._template.render(cards=records, sheets=sheets)

    def _photo(self, item: Item) -> str:
        return self._job.store.thumbnail(item.picture).as_uri()

    def _symbol(self, record: Record) -> Markup:
        return Markup(symbol_svg(self._job.symbols[record.address]))  # noqa: S704 - ours

    def _picture_of_symbol(self, card: Card) -> Markup:
        png = base64.b64encode(_png(self._job.symbols[card.address])).decode("ascii")
        return Markup('<img class="symbol" src="data:image/png;base64,{}">').format(png)


def symbol_svg(symbol: Symbol) -> str:
    """Draw a symbol as one SVG path of runs of dark modules."""
    runs = (f"M{column} {row}h{length}v1h-{length}z" for row, column, length in dark_runs(symbol))
    side = symbol.side_modules
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {side} {side}" width="{side}"'
        f' height="{side}"><path d="{"".join(runs)}"/></svg>'
    )


def dark_runs(symbol: Symbol) -> list[tuple[int, int, int]]:
    """List the runs of dark modules: row, first column, length."""
    runs = []
    for row, modules in enumerate(symbol.modules):
        column = modules.find(1)
        while column >= 0:
            end = modules.find(0, column)
            end = len(modules) if end < 0 else end
            runs.append((row, column, end - column))
            column = modules.find(1, end)
    return runs


def _png(symbol: Symbol) -> bytes:
    """Write a symbol as a PNG of one bit a module."""
    side = symbol.side_modules
    width_bytes = (side + 7) // 8
    rows = b"".join(
        b"\0" + _bits(modules).to_bytes(width_bytes, "big") for modules in symbol.modules
    )
    head = struct.pack(">IIBBBBB", side, side, 1, 0, 0, 0, 0)
    chunks = ((b"IHDR", head), (b"IDAT", zlib.compress(rows)), (b"IEND", b""))
    return b"\x89PNG\r\n\x1a\n" + b"".join(
        struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))
        for name, data in chunks
    )


def _bits(modules: bytes) -> int:
    """Pack a row, light modules as ones, with light ones to the next whole byte."""
    light = modules.translate(bytes.maketrans(b"\0\1", b"10")).decode("ascii")
    return int(light.ljust((len(light) + 7) // 8 * 8, "1"), 2)


def _mark(warn: Warn) -> str:
    return (MARKS / f"{warn.mark}.svg").as_uri()


def _direction(record: Item | Label) -> Markup:
    return Markup(' dir="rtl"') if record.language == "ar" else Markup()


def _photo_place(index: int) -> str:
    left, top = measures.photo_corner(index)
    return f"left:{left}mm;top:{top}mm"


def _caption_place(index: int) -> str:
    left, top = measures.photo_corner(index)
    return f"left:{left}mm;top:{top + 38.6:.1f}mm"


def _warn_place(index: int) -> str:
    return f"left:{measures.warn_left(index):.2f}mm"


def _label_place(index: int) -> str:
    left, top = measures.label_corner(index)
    return f"left:{left}mm;top:{top:.2f}mm"
