from __future__ import annotations

from typing import Any

import pytest

from service.errors import StockError
from service.geometry import Size
from service.sheets.own_stock import parse_stock
from service.sheets.stock import UNPRINTABLE_EDGE_MM, Medium

WRITTEN: dict[str, object] = {
    "name": "Ours",
    "page": "A4",
    "columns": 2,
    "rows": "4",
    "label_width": "99.1 mm",
    "label_height": "67.7 mm",
}


def test_fills_in_what_was_not_typed() -> None:
    """Labels touch, stand in the middle, have square corners and stick, unless typed otherwise."""
    stock = parse_stock(WRITTEN)
    assert (stock.pitch_x_mm, stock.pitch_y_mm) == (99.1, 67.7)
    assert (stock.left_mm, stock.top_mm) == pytest.approx((5.9, 13.1))
    assert (stock.radius_mm, stock.medium) == (0, Medium.STICKY)
    assert stock.edge_mm == UNPRINTABLE_EDGE_MM


def test_takes_every_measure_as_typed() -> None:
    """Nothing that was typed is put in the middle or guessed."""
    stock = parse_stock(
        WRITTEN
        | {
            "unit": "mm",
            "pitch_x": 101.64,
            "pitch_y": "70 mm",
            "left": 4.5,
            "top": "1/2 in",
            "radius": 2,
            "edge": 12,
            "medium": "Card",
        }
    )
    assert (stock.pitch_x_mm, stock.pitch_y_mm) == (101.64, 70)
    assert (stock.left_mm, stock.top_mm) == pytest.approx((4.5, 12.7))
    assert (stock.radius_mm, stock.medium, stock.edge_mm) == (2, Medium.CARD, 12)


@pytest.mark.parametrize(
    ("page", "size"),
    [
        (" A5 ", Size(148, 210)),
        ("Letter", Size(215.9, 279.4)),
        ("200 x 280", Size(200, 280)),
        ("200mm x 11 in", Size(200, 279.4)),
    ],
)
def test_reads_the_page(page: str, size: Size) -> None:
    """A page is a known name, or two lengths with an x between them."""
    changes = {"page": page, "unit": "mm", "columns": 1, "rows": 1}
    read = parse_stock(WRITTEN | changes).page
    assert (read.width_mm, read.height_mm) == pytest.approx((size.width_mm, size.height_mm))


@pytest.mark.parametrize(
    ("changes", "measure", "reason"),
    [
        ({"colour": "red"}, "colour", "is no measure"),
        ({"name": ""}, "name", "is empty"),
        ({"name": 7}, "name", "is empty"),
        ({"name": "A4  CARD"}, "name", "listed stock"),
        ({"name": "a\nb"}, "name", "name of a file"),
        ({"name": "a\\b"}, "name", "name of a file"),
        ({"name": "a" * 101}, "name", "name of a file"),
        ({"page": "foolscap"}, "page", "is not known"),
        ({"page": None}, "page", "is not known"),
        ({"page": "210 x 297"}, "page", "has no unit"),
        ({"columns": "two"}, "columns", "no whole number"),
        ({"rows": 0}, "rows", "1 or more"),
        ({"label_width": "wide"}, "label width", "cannot be read"),
        ({"label_height": 67.7}, "label height", "has no unit"),
        ({"left": -1, "unit": "mm"}, "left", "less than nothing"),
        ({"top": "40 mm"}, "the last row", "leaves the page"),
        ({"pitch_x": "98 mm"}, "pitch x", "overlap"),
        ({"medium": "paper"}, "medium", "is not one of sticky, card"),
        ({"unit": "pt"}, "unit", "is not one of mm, in"),
    ],
)
def test_refuses_what_makes_no_stock(changes: dict[str, Any], measure: str, reason: str) -> None:
    """What was typed wrongly is refused with the measure and the reason."""
    with pytest.raises(StockError, match=reason) as trouble:
        parse_stock(WRITTEN | changes)
    assert trouble.value.measure == measure


@pytest.mark.parametrize("key", sorted(WRITTEN))
def test_names_what_is_missing(key: str) -> None:
    """Each measure nothing can do without is asked for by name."""
    measures = {name: value for name, value in WRITTEN.items() if name != key}
    with pytest.raises(StockError, match="is missing") as trouble:
        parse_stock(measures)
    assert trouble.value.measure == key.replace("_", " ")
