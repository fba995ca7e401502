"""A museum's own stock, from the measures it typed."""

from __future__ import annotations

import contextlib
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from typing import TypeVar

from service.errors import StockError, UnknownStockError
from service.geometry import Size
from service.sentence import Sentence
from service.sheets.grid import Grid, centred_stock
from service.sheets.measures import UNITS, read_count, read_length_mm
from service.sheets.stock import Medium, Stock
from service.sheets.stocks import PAGES, STOCKS, find_stock

T = TypeVar("T")

NEEDED = ("name", "page", "columns", "rows", "label_width", "label_height")
_LONGEST_NAME = 100
OPTIONAL = ("unit", "pitch_x", "pitch_y", "left", "top", "radius", "medium", "edge")


def parse_stock(measures: Mapping[str, object]) -> Stock:
    """Make a stock of typed measures.

    Keys: `name`, which no listed stock has; `page`, which is A4, A5, A6, Letter or a size such as
    `210 mm x 297 mm`; `columns` and `rows`; `label_width` and `label_height`; and, where they
    differ from what is said here, `pitch_x` and `pitch_y` (the label's size), `left` and `top` (the
    labels stand in the middle of the page), `radius` (0), `medium` (sticky), `edge` (what the
    printer leaves white on each side, 1/6 inch). Lengths are texts with a unit, or numbers in
    `unit` (mm or in).

    Raises:
        StockError: Naming the measure that is missing, unknown, unreadable or impossible.
    """
    typed = _Typed(_name_of(measures), measures)
    typed.refuse_unknown_and_missing()
    typed.refuse_taken_name()
    label = Size(typed.length_mm("label_width"), typed.length_mm("label_height"))
    pitch = Size(
        typed.length_mm("pitch_x", otherwise_mm=label.width_mm),
        typed.length_mm("pitch_y", otherwise_mm=label.height_mm),
    )
    columns, rows = typed.read("columns", read_count), typed.read("rows", read_count)
    centred = centred_stock(
        typed.name,
        typed.read("page", typed.page),
        Grid(columns, rows, label, pitch),
        radius_mm=typed.length_mm("radius", otherwise_mm=0.0),
        medium=typed.read("medium", _read_medium, otherwise=Medium.STICKY),
    )
    return replace(
        centred,
        left_mm=typed.length_mm("left", otherwise_mm=centred.left_mm),
        top_mm=typed.length_mm("top", otherwise_mm=centred.top_mm),
        edge_mm=typed.length_mm("edge", otherwise_mm=centred.edge_mm),
    )


@dataclass(frozen=True, slots=True)
class _Typed:
    """What was typed, and how to complain about it."""

    name: str
    measures: Mapping[str, object]

    def refuse_unknown_and_missing(self) -> None:
        for key in self.measures:
            if key not in NEEDED + OPTIONAL:
                raise self._error(str(key), Sentence("is no measure of a stock"))
        for key in NEEDED:
            if key not in self.measures:
                raise self._error(key, Sentence("is missing"))

    def refuse_taken_name(self) -> None:
        """Refuse a name that no file can have, and one that stands for other measures already.

        Files and sheets begun go by the name of their stock.

        Raises:
            StockError: When it is too long, odd, or in the list of stocks.
        """
        key = "name"
        if not self.name.isprintable() or "\\" in self.name or len(self.name) > _LONGEST_NAME:
            raise self._error(key, Sentence("cannot stand in the name of a file"))
        with contextlib.suppress(UnknownStockError):
            find_stock(self.name, STOCKS)
            raise self._error(key, Sentence("is that of a listed stock; choose another"))

    def read(self, key: str, reader: Callable[[object], T], *, otherwise: T | None = None) -> T:
        """Read one entry; a reader says by `ValueError` what is wrong.

        Raises:
            StockError: When the reader refuses.
        """
        if key not in self.measures and otherwise is not None:
            return otherwise
        try:
            return reader(self.measures[key])
        except ValueError as trouble:
            raise self._error(key, str(trouble)) from trouble

    def length_mm(self, key: str, *, otherwise_mm: float | None = None) -> float:
        return self.read(key, self._length_mm, otherwise=otherwise_mm)

    def page(self, value: object) -> Size:
        """Read a known page or two lengths with an x between them.

        Raises:
            ValueError: When it is neither.
        """
        if isinstance(value, str) and value.strip() in PAGES:
            return PAGES[value.strip()]
        width, by, height = str(value).partition("x")
        if not by:
            msg = f"is not known: {value!r}; write {', '.join(PAGES)} or 210 mm x 297 mm"
            raise ValueError(msg)
        return Size(self._length_mm(width), self._length_mm(height))

    def _length_mm(self, value: object) -> float:
        return read_length_mm(value, unit=self.read("unit", _read_unit, otherwise=""))

    def _error(self, key: str, reason: str) -> StockError:
        return StockError(self.name, measure=key.replace("_", " "), reason=reason)


def _name_of(measures: Mapping[str, object]) -> str:
    name = measures.get("name")
    return name if isinstance(name, str) else ""


def _read_unit(value: object) -> str:
    return _one_of(value, UNITS)


def _read_medium(value: object) -> Medium:
    return Medium(_one_of(value, tuple(Medium)))


def _one_of(value: object, choices: tuple[str, ...]) -> str:
    if isinstance(value, str) and value.strip().lower() in choices:
        return value.strip().lower()
    msg = f"is not one of {', '.join(choices)}: {value!r}"
    raise ValueError(msg)
