from __future__ import annotations

import pytest

from service.findings import Where
from service.records.mapping.mapping import ColumnMapping
from service.records.mapping.rows import map_rows
from service.records.rows.notebook import Notebook
from service.records.rows.row import Row


def _map(mapping: ColumnMapping, **values: str) -> dict[str, object]:
    row = Row(values, {}, Where(), Notebook(), {"as": "it came"})
    (mapped,) = map_rows([row], mapping)
    assert mapped.source == {"as": "it came"}
    return dict(mapped.values)


@pytest.mark.parametrize(
    ("text", "unit", "said"),
    [
        ("12 x 8", "cm", "12 x 8 cm"),
        ("H 12; lid 4", "in", "H 12; lid 4 in"),
        ("12 x 8 mm", "cm", "12 x 8 mm"),
        ("unknown", "cm", "unknown"),
        ("", "cm", ""),
    ],
)
def test_plain_lengths_get_their_unit(text: str, unit: str, said: str) -> None:
    """A unit that is written counts; what is no number stays."""
    assert _map(ColumnMapping(units={"dimensions": unit}), dimensions=text)["dimensions"] == said


@pytest.mark.parametrize(
    ("text", "said"), [("300", "300 g"), ("ca. 300", "ca. 300 g"), ("1 kg", "1 kg"), ("?", "?")]
)
def test_plain_weights_get_their_unit(text: str, said: str) -> None:
    """A guess stays a guess."""
    assert _map(ColumnMapping(units={"weight": "g"}), weight=text)["weight"] == said


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("1.234,5 mm", "1234.5 mm"),
        ("1,234 m", "1.234 m"),
        ("1.234 mm", "1234 mm"),
        ("12.25 mm", "12.25 mm"),
        ("12,5 x 8,25 x 3 cm", "12.5 x 8.25 x 3 cm"),
    ],
)
def test_a_decimal_comma_is_read_where_it_is_said_to_be_one(text: str, said: str) -> None:
    """Points between groups of three are thousands then; other fields are left alone."""
    mapped = _map(ColumnMapping(decimal_comma=True), dimensions=text, title="1,5 in one")
    assert mapped == {"dimensions": said, "title": "1,5 in one"}


def test_fixed_fields_are_in_every_row() -> None:
    """What every row has alike is filled in."""
    assert _map(ColumnMapping(fixed={"restricted": "yes"}), title="Lot") == {
        "restricted": "yes",
        "title": "Lot",
    }


def test_single_measures_become_the_dimensions() -> None:
    """Empty ones are left out; where all are, the dimensions are said to be empty."""
    mapping = ColumnMapping(units={"height": "cm", "diameter": "cm"})
    assert _map(mapping, height="12", width="", diameter="3 mm") == {
        "dimensions": "height 12 cm; diameter 3 mm"
    }
    assert _map(mapping, height="") == {"dimensions": ""}
