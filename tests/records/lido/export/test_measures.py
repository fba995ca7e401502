from __future__ import annotations

import pytest

from service.records.lido.export.measures import write_decimal, write_measures
from service.records.lido.export.tree import start, to_bytes
from service.records.measures import Measure
from service.records.record import ObjectRecord, Weight, WeightBasis

HEIGHT = (Measure("height", 125.0),)


def written(record: ObjectRecord) -> str:
    """Write the measures of a record, without the names of elements that only hold others."""
    root = start("i")
    write_measures(root, record)
    return to_bytes(root).decode().replace("lido:", "")


@pytest.mark.parametrize(
    ("record", "expected"),
    [
        (ObjectRecord("1", dimensions_text="H 12.5 cm", dimensions=HEIGHT), "H 12.5 cm"),
        (ObjectRecord("1", dimensions_text="H 12.5 cm", dimensions=HEIGHT), "Value>125<"),
        (ObjectRecord("1", dimensions=HEIGHT), "height 125 mm"),
        (ObjectRecord("1", weight=Weight(640.0)), "Value>640<"),
        (ObjectRecord("1", weight_text="heavy"), "weight: heavy"),
        (ObjectRecord("1", weight=Weight(640.0, WeightBasis.ESTIMATED)), ">estimate<"),
        (ObjectRecord("1", number_of_parts=3), "Type>number of parts<"),
    ],
)
def test_each_measure_is_said(record: ObjectRecord, expected: str) -> None:
    """Sizes, weight and number of parts stand in the file, as written and as understood."""
    assert expected in written(record)


def test_half_understood_sizes_stand_as_text_alone() -> None:
    """Where some of a text was not understood, no measure pretends that there is no more."""
    text = "H 12.5 cm; rim uneven"
    record = ObjectRecord("1", dimensions_text=text, dimensions=HEIGHT)
    assert text in written(record)
    assert "measurementsSet" not in written(record)


def test_nothing_known_writes_nothing() -> None:
    """A record without measures has no element for them."""
    assert written(ObjectRecord("1")) == "<i />"


@pytest.mark.parametrize(
    ("value", "text"),
    [(125.0, "125"), (0.1, "0.1"), (1e6, "1000000"), (1200.0, "1200"), (63.5, "63.5")],
)
def test_decimals_have_no_exponent(value: float, text: str) -> None:
    """Numbers are written as people write them."""
    assert write_decimal(value) == text
