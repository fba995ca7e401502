"""Whether a file holds what it should, read by libraries that made none of the files."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

import pypdfium2
import zxingcpp

from service.units import POINTS_PER_INCH, mm_from_points
from tests.benchmarks.content.measures import LABELS_A_SHEET
from tests.benchmarks.content.records import Card, Record

_PAGES = 3
_DPI = 203
"""The coarsest printer that is common for labels."""


@dataclass(frozen=True, slots=True)
class Checked:
    """What was found on the first pages, and what should be there."""

    pages: int
    width_mm: float
    height_mm: float
    symbols: int
    symbols_wanted: int
    numbers: int
    numbers_wanted: int

    @property
    def words(self) -> str:
        """Say it in a cell of the table."""
        return (
            f"{self.width_mm:.3f} x {self.height_mm:.3f} mm, symbols"
            f" {self.symbols}/{self.symbols_wanted}, numbers {self.numbers}/{self.numbers_wanted}"
        )


def check_file(path: Path, records: Sequence[Record]) -> Checked:
    """Read page size, symbols and numbers of the first pages."""
    a_page = 1 if isinstance(records[0], Card) else LABELS_A_SHEET
    shown = records[: _PAGES * a_page]
    with pypdfium2.PdfDocument(path) as document:
        width, height = document[0].get_size()
        count = min(_PAGES, len(document))
        read = {text for number in range(count) for text in _symbols(document[number])}
        text = "\n".join(document[n].get_textpage().get_text_range() for n in range(count))
        pages = len(document)
    numbers = list(_numbers(shown))
    return Checked(
        pages,
        mm_from_points(width),
        mm_from_points(height),
        len(read & {record.address for record in shown}),
        len(shown),
        sum(number in text for number in numbers),
        len(numbers),
    )


def _symbols(page: pypdfium2.PdfPage) -> Iterator[str]:
    picture = page.render(scale=_DPI / POINTS_PER_INCH, grayscale=True).to_numpy()
    for found in zxingcpp.read_barcodes(picture.squeeze()):
        yield found.text


def _numbers(records: Sequence[Record]) -> Iterator[str]:
    for record in records:
        yield record.number
        if isinstance(record, Card):
            yield from (item.number for item in record.items)
