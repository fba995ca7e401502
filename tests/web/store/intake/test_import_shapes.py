from __future__ import annotations

from datetime import UTC, datetime

from service.store.history import Stamp
from service.store.kept.imports import Import
from service.web.store.intake.import_shapes import show_line


def test_a_line_names_who_and_when() -> None:
    """What a list of imports tells of each."""
    at = datetime(2026, 11, 25, tzinfo=UTC)
    shown = show_line(Import(3, "x.csv", "0" * 64, {"objects new": 1}, Stamp("Ada Quill", at)))
    assert (shown.import_id, shown.by, shown.at) == (3, "Ada Quill", at)
