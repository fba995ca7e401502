"""What is kept between runs, as JSON text: printers, and the sheets that were begun."""

from __future__ import annotations

import json
import math
import re
from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass, fields
from datetime import date
from typing import cast

from service.errors import CalibrationError
from service.geometry import Insets
from service.sentence import Sentence
from service.sheets.calibration.limits import impossible
from service.sheets.correction import Correction
from service.sheets.printers.printer import Printer, TrayCorrection, plain
from service.sheets.printers.used_sheet import UsedSheet

_MOST_EDGE_MM = 50.0
_ADDRESS = re.compile(
    r"ipp://(?:[A-Za-z0-9](?:[A-Za-z0-9.-]{0,250}[A-Za-z0-9])?|\[[0-9A-Fa-f:.]{2,45}\])"
    r"(?::[0-9]{1,5})?(?:/[A-Za-z0-9._~/-]{0,200})?"
)

_Table = Mapping[str, object]


@dataclass(frozen=True, slots=True)
class Saved:
    """Printers by name, and the sheets that were begun, one a stock."""

    printers: tuple[Printer, ...] = ()
    used_sheets: tuple[UsedSheet, ...] = ()

    def with_printer(self, printer: Printer) -> Saved:
        """Give the same with a printer in place of the one of its name."""
        others = self.without_printer(printer.name).printers
        ordered = sorted((*others, printer), key=lambda each: plain(each.name))
        return Saved(tuple(ordered), self.used_sheets)

    def without_printer(self, name: str) -> Saved:
        """Give the same without the printer of that name."""
        kept = tuple(each for each in self.printers if plain(each.name) != plain(name))
        return Saved(kept, self.used_sheets)


def write_saved(saved: Saved) -> str:
    """Write everything as JSON for people to read."""
    return json.dumps(saved_as_data(saved), ensure_ascii=False, indent=2) + "\n"


def saved_as_data(saved: Saved) -> dict[str, object]:
    """Give everything as plain data."""
    return {
        "printers": [asdict(printer, dict_factory=_plain_data) for printer in saved.printers],
        "used_sheets": [
            {"stock": sheet.stock, "positions": sorted(sheet.positions)}
            for sheet in saved.used_sheets
        ],
    }


def _plain_data(pairs: Sequence[tuple[str, object]]) -> dict[str, object]:
    return {name: str(value) if isinstance(value, date) else value for name, value in pairs}


def read_saved(text: str) -> Saved:
    """Read what `write_saved` wrote; somebody may have edited it since.

    Raises:
        CalibrationError: When it is not whole, or says what no printer does.
    """
    try:
        return _saved(_table(json.loads(text)))
    except (KeyError, ValueError, TypeError, RecursionError) as error:
        reason = (
            Sentence("it lacks {error}", error=error) if isinstance(error, KeyError) else str(error)
        )
        fault = Sentence(
            "the saved printers cannot be read ({reason}); correct or remove the file",
            reason=reason,
        )
        raise CalibrationError([fault]) from error


def _saved(document: _Table) -> Saved:
    return Saved(
        tuple(_printer(_table(each)) for each in _list(document["printers"])),
        tuple(_used_sheet(_table(each)) for each in _list(document["used_sheets"])),
    )


def _printer(table: _Table) -> Printer:
    edges = table["edges"]
    return Printer(
        _name(table["name"]),
        None if edges is None else _edges(_table(edges)),
        tuple(_tray_correction(_table(each)) for each in _list(table["corrections"])),
        _day(table.get("edges_measured_on")),
        checked_address(_text(table.get("address", ""))),
    )


def _edges(table: _Table) -> Insets:
    return checked_edges([_number(table[field.name]) for field in fields(Insets)])


def checked_edges(edges_mm: Sequence[float]) -> Insets:
    """Give the unprintable edges, in the order top, right, bottom, left.

    Raises:
        ValueError: When they are not four, or no printer has them.
    """
    if len(edges_mm) != len(fields(Insets)):
        msg = Sentence("edges are four lengths in mm: top, right, bottom, left")
        raise ValueError(msg)
    if not all(0 <= edge_mm <= _MOST_EDGE_MM for edge_mm in edges_mm):
        msg = Sentence(
            "an unprintable edge is 0 to {most_edge_mm:g} mm wide", most_edge_mm=_MOST_EDGE_MM
        )
        raise ValueError(msg)
    return Insets(*edges_mm)


def checked_address(address: str) -> str:
    """Give the address of a printer without blanks around it; "" for none.

    Raises:
        ValueError: When it is none of the Internet Printing Protocol (RFC 3510, section 4).
    """
    plain_address = address.strip()
    if plain_address and not _ADDRESS.fullmatch(plain_address):
        msg = Sentence("the address of a printer looks like ipp://192.0.2.7:631/ipp/print")
        raise ValueError(msg)
    return plain_address


def _tray_correction(table: _Table) -> TrayCorrection:
    numbers = _table(table["correction"])
    correction = Correction(**{field.name: _number(numbers[field.name]) for field in _MAP})
    if faults := list(impossible(correction.inverse())):
        raise ValueError(faults[0])
    return TrayCorrection(
        _text(table["tray"]),
        _text(table["stock"]),
        correction,
        _number(table["residual_mm"]),
        _day(table.get("measured_on")),
    )


_MAP = fields(Correction)


def _used_sheet(table: _Table) -> UsedSheet:
    positions = _list(table["positions"])
    if not all(isinstance(n, int) and n > 0 for n in positions):
        msg = "positions are whole numbers from 1"
        raise ValueError(msg)
    return UsedSheet(_name(table["stock"]), frozenset(cast("list[int]", positions)))


def _table(value: object) -> _Table:
    if not isinstance(value, dict):
        msg = "something is no table"
        raise TypeError(msg)
    return cast("_Table", value)


def _list(value: object) -> list[object]:
    if not isinstance(value, list):
        msg = "something is no list"
        raise TypeError(msg)
    return cast("list[object]", value)


def _text(value: object) -> str:
    if not isinstance(value, str):
        msg = "a name is no text"
        raise TypeError(msg)
    return value


def _name(value: object) -> str:
    if not _text(value).strip():
        msg = "a name is empty"
        raise ValueError(msg)
    return _text(value)


def _day(value: object) -> date | None:
    """Read a day; files of before it was noted have none."""
    return None if value is None else date.fromisoformat(_text(value))


def _number(value: object) -> float:
    if isinstance(value, bool) or not isinstance(value, int | float) or not math.isfinite(value):
        msg = "a measure is no number"
        raise TypeError(msg)
    return float(value)
