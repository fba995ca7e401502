from __future__ import annotations

from service.records.read_containers import read_containers
from service.records.sources.columns import CONTAINER_COLUMNS
from service.web.views.shell.typed import make_typed_row, tell_faults


def test_a_form_is_read_as_a_row() -> None:
    """Fields that are no columns, such as a token, are left out; faults stand at their fields."""
    typed = {"container_number": "3/4/1972", "gross_weight": "heavy", "form_token": "x"}
    row, notebook = make_typed_row(typed, CONTAINER_COLUMNS)
    (record,) = read_containers([row])
    assert record.container_number == "3/4/1972"
    assert list(tell_faults(notebook)) == ["gross_weight"]
