from __future__ import annotations

from service.store.printed.card import RunFile, RunRecord
from service.web.store.cards.shapes import show_run
from tests.web.store.opened import STAMP


def test_a_file_says_where_it_is_to_be_had() -> None:
    """Its address is one path below that of its run, whatever the name holds."""
    file = RunFile("end-label, A4 2x4.pdf", "a" * 64, 12, "A4 2x4")
    (shown,) = show_run(RunRecord(7, STAMP, {}, (file,)), []).files
    assert shown.href == "/api/prints/7/files/end-label%2C%20A4%202x4.pdf"
