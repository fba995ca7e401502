"""A stock as a person names it: one of ours, or a file with the measures of their own sheet."""

from __future__ import annotations

import tomllib
from collections.abc import Sequence
from pathlib import Path

from service.errors import StockError
from service.sheets.own_stock import parse_stock
from service.sheets.stock import Stock
from service.sheets.stocks import STOCKS, find_stock


def name_stock(name: str, *, own: Sequence[Stock] = ()) -> Stock:
    """Find a stock by its name, also among the museum's own, or read one from a TOML file.

    Raises:
        UnknownStockError: When no stock is called so.
        StockError: When the file cannot be read or its measures contradict each other.
    """
    path = Path(name)
    if path.suffix.casefold() != ".toml":
        return find_stock(name, (*STOCKS, *own))
    try:
        measures = tomllib.loads(path.read_text(encoding="utf-8"))
    except (OSError, ValueError) as error:
        raise StockError(name, measure="file", reason=f"cannot be read ({error})") from error
    return parse_stock({"name": path.stem, **measures})
