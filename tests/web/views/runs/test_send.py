from __future__ import annotations

from pathlib import Path

import httpx

from service.keeping.printing.printers_file import keep_saved
from service.sheets.printers.printer import Printer as KnownPrinter
from service.sheets.printers.saved import Saved
from tests.keeping.sending.printer import PRINT_JOB, Printer, running_printer
from tests.web.views.opened import follow, send, show


def test_a_file_is_sent_from_the_page_of_its_run(printed: httpx.Client, tmp_path: Path) -> None:
    """The button names the printer; what it says is told on the page, also when it is gone."""
    assert "Send to" not in show(printed, "/run/1")
    fields = {"run": "1", "printer": "Label desk", "file": "lid-card, A4 card.pdf"}
    with running_printer(Printer()) as printer:
        known = KnownPrinter("Label desk", address=printer.address)
        keep_saved(tmp_path / "data", Saved((known,)))
        assert "Send to Label desk" in show(printed, "/run/1")
        page = follow(printed, send(printed, "/run/1", "/run/send", fields))
    assert "Label desk has taken lid-card, A4 card.pdf." in page
    assert sum(each.operation == PRINT_JOB for each in printer.received) == 1
    page = follow(printed, send(printed, "/run/1", "/run/send", fields))
    assert "cannot be reached" in page
    send(printed, "/run/1", "/run/send", fields | {"run": "9"}, status=404)
