from __future__ import annotations

from pathlib import Path

import pytest

from service.errors import NotFoundError, NotSentError, UnknownPrinterError
from service.keeping.printing.printers_file import keep_saved
from service.keeping.sending.send import find_printer, list_senders, load_files, send_files
from service.sheets.printers.printer import Printer as KnownPrinter
from service.sheets.printers.saved import Saved
from service.store.handles import Engine
from service.store.open import writing
from service.store.printed.card import MadeCard, NewRun, RunFile
from service.store.printed.runs import save_run
from service.store.shelf.files import FileShelf, open_shelf
from tests.keeping.made import BOX
from tests.keeping.sending.printer import PRINT_JOB, Printer, running_printer
from tests.store.made import STAMP


@pytest.fixture
def shelf(engine: Engine, tmp_path: Path) -> FileShelf:
    """Give a shelf with the two files of run 1."""
    shelf = open_shelf(tmp_path / "files", scratch=tmp_path)
    stored = [shelf.put(data, ".pdf") for data in (b"%PDF one", b"%PDF two")]
    files = tuple(
        RunFile(f"{kind}.pdf", one.sha256, one.length_bytes, stock)
        for kind, one, stock in zip(("lid", "end"), stored, ("A4 card", "Ours"), strict=True)
    )
    card = MadeCard(BOX, "lid-card", 1, "0" * 64, "{}")
    with writing(engine) as connection:
        save_run(connection, NewRun((card,), files), stamp=STAMP)
    return shelf


def test_every_file_is_sent_or_the_one_that_is_named(engine: Engine, shelf: FileShelf) -> None:
    """A stock of one's own has a paper that only the PDF knows."""
    with running_printer(Printer()) as printer:
        known = KnownPrinter("Desk", address=printer.address)
        sent = send_files(shelf, known, load_files(engine, 1), sender="Ada")
        send_files(shelf, known, load_files(engine, 1, "end.pdf"), sender="Ada")
    jobs = [each for each in printer.received if each.operation == PRINT_JOB]
    assert [one.file for one in sent] == ["lid.pdf", "end.pdf"]
    assert [each.data for each in jobs] == [b"%PDF one", b"%PDF two", b"%PDF two"]
    assert ["media" in each.attributes for each in jobs] == [True, False, False]


def test_what_is_not_there_is_told(engine: Engine, shelf: FileShelf, tmp_path: Path) -> None:
    """A run, a file, a printer, an address."""
    with pytest.raises(NotFoundError, match="print run"):
        load_files(engine, 9)
    with pytest.raises(NotFoundError, match="file in run 1"):
        load_files(engine, 1, "other.pdf")
    with pytest.raises(UnknownPrinterError):
        find_printer(tmp_path, "Desk")
    keep_saved(tmp_path, Saved((KnownPrinter("Desk"),)))
    assert list_senders(tmp_path) == ()
    with pytest.raises(NotSentError, match="no address"):
        send_files(shelf, find_printer(tmp_path, "desk"), load_files(engine, 1), sender="Ada")
