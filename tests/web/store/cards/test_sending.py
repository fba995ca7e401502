from __future__ import annotations

from pathlib import Path

import httpx

from service.keeping.printing.printers_file import keep_saved
from service.sheets.printers.printer import Printer as KnownPrinter
from service.sheets.printers.saved import Saved
from tests.keeping.sending.printer import PRINT_JOB, Printer, running_printer
from tests.web.sent import problem_of
from tests.web.store.examples import add_run


def test_a_run_is_sent_once_under_its_key(client: httpx.Client, tmp_path: Path) -> None:
    """The same request again prints nothing more; a printer that refuses is told of."""
    add_run(tmp_path / "data")
    with running_printer(Printer()) as printer:
        known = KnownPrinter("Label desk", address=printer.address)
        keep_saved(tmp_path / "data", Saved((known,)))
        key = {"Idempotency-Key": "k1"}
        body = {"printer": "label desk", "file": "lid-card, A4 card.pdf"}
        first = client.post("/api/prints/1/send", json=body, headers=key)
        again = client.post("/api/prints/1/send", json=body, headers=key)
    assert first.status_code == 201
    assert first.json() == again.json()
    assert first.json()["sent"][0]["job_id"] > 0
    jobs = [each for each in printer.received if each.operation == PRINT_JOB]
    assert [each.data[:4] for each in jobs] == [b"%PDF"]
    gone = client.post("/api/prints/1/send", json=body)
    assert (gone.status_code, problem_of(gone)["code"]) == (502, "not-sent")
    nobody = client.post("/api/prints/1/send", json={"printer": "none"})
    assert problem_of(nobody)["code"] == "unknown-printer"
