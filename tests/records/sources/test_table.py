from __future__ import annotations

from service.records.sources.table import Line


def test_blank_line_holds_only_blanks() -> None:
    """Rows of delimiters alone are no records."""
    assert Line(3, ("", " ", "\t")).is_blank
    assert not Line(3, ("", "x")).is_blank
