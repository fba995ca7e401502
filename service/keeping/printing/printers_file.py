"""The file in the data folder that keeps printers and part-used sheets."""

from __future__ import annotations

import tempfile
from pathlib import Path

from service.errors import CalibrationError
from service.sheets.printers.printer import ANY_PRINTER, PrinterSetup, find_setup
from service.sheets.printers.saved import Saved, read_saved, write_saved

NAME = "printers.json"


def load_saved(folder: Path) -> Saved:
    """Read what is kept; nothing is, where there is no file yet.

    Raises:
        CalibrationError: When the file cannot be read.
    """
    path = folder / NAME
    try:
        return read_saved(path.read_text(encoding="utf-8"))
    except FileNotFoundError:
        return Saved()
    except (OSError, UnicodeDecodeError) as error:
        raise CalibrationError([f"{path} cannot be read ({error})"]) from error


def keep_saved(folder: Path, saved: Saved) -> Path:
    """Write the file whole or not at all, and give its path."""
    folder.mkdir(parents=True, exist_ok=True)
    path = folder / NAME
    with tempfile.NamedTemporaryFile(
        "w", dir=folder, delete=False, encoding="utf-8", newline="\n"
    ) as part:
        part.write(write_saved(saved))
    Path(part.name).replace(path)
    return path


def name_printer(folder: Path, name: str, tray: str) -> PrinterSetup:
    """Find a printer and tray as typed; without a name any office printer is meant.

    Raises:
        UnknownPrinterError: When it was never measured, or a tray is named without its printer.
        CalibrationError: When the file cannot be read.
    """
    if not name and not tray:
        return ANY_PRINTER
    return find_setup(load_saved(folder).printers, name, tray)
