"""Tests for naming a stock."""

from __future__ import annotations

from pathlib import Path

import pytest

from service.cli.own_stock import name_stock
from service.errors import StockError, UnknownStockError


def test_names_and_files(tmp_path: Path) -> None:
    """One of ours goes by its name, an own sheet by the file with its measures."""
    sheet = tmp_path / "shelf labels.toml"
    sheet.write_text(
        'page = "A4"\ncolumns = 2\nrows = 4\nlabel_width = "99 mm"\nlabel_height = "68 mm"\n'
    )
    assert name_stock("a4 3x7 63.5x38.1").positions == 21
    assert (name_stock(str(sheet)).name, name_stock(str(sheet)).positions) == ("shelf labels", 8)


def test_mistakes(tmp_path: Path) -> None:
    """An unknown name, a missing file and a file that is no TOML are told."""
    with pytest.raises(UnknownStockError):
        name_stock("B5")
    (tmp_path / "bad.toml").write_text("columns = = 2")
    for name in ("missing.toml", "bad.toml"):
        with pytest.raises(StockError):
            name_stock(str(tmp_path / name))
