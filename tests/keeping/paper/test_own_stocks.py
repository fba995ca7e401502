from __future__ import annotations

from pathlib import Path

import pytest

from service.errors import StockError, UnknownStockError
from service.keeping.paper.own_stocks import (
    NAME,
    find_any_stock,
    find_own_stocks,
    forget_own_stock,
    keep_own_stock,
    load_own_stocks,
)
from service.sheets.stocks import STOCKS

MEASURES = {
    "name": "Our sheet",
    "page": "A4",
    "columns": "2",
    "rows": "4",
    "label_width": "99.1",
    "label_height": "67.7",
    "unit": "mm",
}


def test_a_stock_is_kept_changed_and_forgotten(tmp_path: Path) -> None:
    """One of a name, however typed; forgotten, its measures can be kept again."""
    assert load_own_stocks(tmp_path) == ()
    kept = keep_own_stock(tmp_path, MEASURES)
    changed = keep_own_stock(tmp_path, MEASURES | {"name": "our  SHEET", "rows": "3"})
    assert load_own_stocks(tmp_path) == (changed,)
    assert (kept.rows, changed.rows) == (4, 3)
    assert find_any_stock(tmp_path, "Our sheet") == changed
    assert find_any_stock(tmp_path, STOCKS[0].name) == STOCKS[0]
    again = forget_own_stock(tmp_path, "Our Sheet")
    assert load_own_stocks(tmp_path) == ()
    assert keep_own_stock(tmp_path, again) == changed
    with pytest.raises(UnknownStockError):
        forget_own_stock(tmp_path, "Another")


def test_only_what_is_not_listed_is_looked_up(tmp_path: Path) -> None:
    """A broken file is in nobody's way who prints on a listed stock."""
    ours = keep_own_stock(tmp_path, MEASURES)
    assert find_own_stocks(tmp_path, ["", STOCKS[0].name, " our sheet", "Nobody's"]) == (ours,)
    (tmp_path / NAME).write_text("{")
    assert find_own_stocks(tmp_path, ["", STOCKS[0].name.lower()]) == ()
    with pytest.raises(StockError):
        find_own_stocks(tmp_path, ["Our sheet"])


def test_what_cannot_be_is_not_kept(tmp_path: Path) -> None:
    """The measure at fault is named, and the file stays as it was."""
    with pytest.raises(StockError, match="the last column"):
        keep_own_stock(tmp_path, MEASURES | {"columns": "3"})
    assert not (tmp_path / NAME).exists()


@pytest.mark.parametrize("text", ["{", "[]", '{"stocks": [1]}', '{"stocks": [{}]}'])
def test_a_broken_file_is_told(tmp_path: Path, text: str) -> None:
    """Somebody edited it: it is not taken for an empty one."""
    (tmp_path / NAME).write_text(text)
    with pytest.raises(StockError, match="cannot be read"):
        load_own_stocks(tmp_path)
