"""Tests for the file that keeps printers."""

from __future__ import annotations

from pathlib import Path

import pytest

from service.errors import CalibrationError, UnknownPrinterError
from service.keeping.printing.printers_file import NAME, keep_saved, load_saved, name_printer
from service.sheets.printers.printer import ANY_PRINTER, Printer
from service.sheets.printers.saved import Saved

SAVED = Saved((Printer("Bürodrucker"),))


def test_keeps_what_it_is_given(tmp_path: Path) -> None:
    """The file is made with its folder, read again, and nothing else is left beside it."""
    folder = tmp_path / "data"
    assert load_saved(folder) == Saved()
    assert keep_saved(folder, SAVED) == folder / NAME
    assert load_saved(folder) == SAVED
    assert [path.name for path in folder.iterdir()] == [NAME]


@pytest.mark.parametrize("content", [b"\xff\xfe", b"{"], ids=["no text", "no JSON"])
def test_a_broken_file_is_told(tmp_path: Path, content: bytes) -> None:
    """A file that cannot be read is told, never silently begun anew."""
    (tmp_path / NAME).write_bytes(content)
    with pytest.raises(CalibrationError, match="cannot be read"):
        load_saved(tmp_path)


def test_names_a_printer(tmp_path: Path) -> None:
    """Without a name any printer is meant; a tray alone or an unknown printer is refused."""
    keep_saved(tmp_path, SAVED)
    assert name_printer(tmp_path, "", "") == ANY_PRINTER
    assert name_printer(tmp_path, "bürodrucker", "").printer.name == "Bürodrucker"
    for name, tray in (("", "2"), ("Laser", ""), ("Bürodrucker", "2")):
        with pytest.raises(UnknownPrinterError):
            name_printer(tmp_path, name, tray)
