"""The files of a run, sent to a printer one after the other."""

from __future__ import annotations

from pathlib import Path

from service.errors import NotFoundError, UnknownStockError
from service.geometry import Size
from service.keeping.printing.printers_file import load_saved, name_printer
from service.keeping.printing.prints import PDF
from service.keeping.sending.ipp import Document, SentFile, send_document
from service.sentence import Sentence
from service.sheets.printers.printer import Printer
from service.sheets.stocks import STOCKS, find_stock
from service.store.handles import Engine
from service.store.open import reading
from service.store.printed.card import RunFile, RunRecord
from service.store.printed.runs import load_run_record
from service.store.shelf.files import FileShelf


def load_files(engine: Engine, run_id: int, file: str = "") -> RunRecord:
    """Load a run with all its files, or with the one of a name.

    Raises:
        NotFoundError: When there is no such run or file.
    """
    with reading(engine) as connection:
        record = load_run_record(connection, run_id)
    files = tuple(one for one in record.files if file in {"", one.name})
    if not files:
        raise NotFoundError(file, what=Sentence("file in run {run_id}", run_id=run_id))
    return RunRecord(record.run_id, record.stamp, record.options, files)


def send_files(
    shelf: FileShelf, printer: Printer, run: RunRecord, *, sender: str
) -> tuple[SentFile, ...]:
    """Send every file of a run; where one is refused, those before it are on their way.

    Raises:
        NotSentError: When the printer has no address, or does not take a file.
        FileNotStoredError: When a file is lost.
    """
    return tuple(
        send_document(printer, Document(one.name, shelf.get(one.sha256, PDF), _paper(one), sender))
        for one in run.files
    )


def find_printer(folder: Path, name: str) -> Printer:
    """Find a printer by its name, however typed.

    Raises:
        UnknownPrinterError: When there is none.
    """
    return name_printer(folder, name, "").printer


def list_senders(folder: Path) -> tuple[str, ...]:
    """Name the printers that files can be sent to."""
    return tuple(one.name for one in load_saved(folder).printers if one.address)


def _paper(file: RunFile) -> Size | None:
    """Give the size of the sheets; of a stock of one's own it is in the PDF alone."""
    try:
        return find_stock(file.stock, STOCKS).page
    except UnknownStockError:
        return None
