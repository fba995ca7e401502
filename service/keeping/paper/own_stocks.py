"""The museum's own stocks: the measures it typed, kept in a file of the data folder."""

from __future__ import annotations

import json
import tempfile
from collections.abc import Iterable, Mapping
from functools import cache
from pathlib import Path

from service.errors import StockError, UnknownStockError
from service.sentence import Sentence
from service.sheets.own_stock import parse_stock
from service.sheets.stock import Stock
from service.sheets.stocks import STOCKS, find_stock

NAME = "stocks.json"


def load_own_stocks(folder: Path) -> tuple[Stock, ...]:
    """Read the stocks that are kept, in the order of names; none, where there is no file yet.

    Raises:
        StockError: When the file cannot be read, or what it says contradicts itself.
    """
    return tuple(parse_stock(measures) for measures in _load(folder))


def keep_own_stock(folder: Path, measures: Mapping[str, object]) -> Stock:
    """Keep a stock in place of the one of its name.

    Raises:
        StockError: When its measures cannot be read or contradict each other.
    """
    stock = parse_stock(measures)
    others = [each for each in _load(folder) if _name(each) != _name(measures)]
    _write(folder, sorted([*others, measures], key=_name))
    return stock


def forget_own_stock(folder: Path, name: str) -> Mapping[str, object]:
    """Forget a stock, and give its measures, by which it can be kept again.

    Raises:
        UnknownStockError: When none of the museum's own is called so.
    """
    stocks = _load(folder)
    gone = next((each for each in stocks if _name(each) == _plain(name)), None)
    if gone is None:
        raise UnknownStockError(name, known=[str(each["name"]) for each in stocks])
    _write(folder, [each for each in stocks if each is not gone])
    return gone


def find_any_stock(folder: Path, name: str) -> Stock:
    """Find a stock by its name, among the museum's own and those everybody has.

    Raises:
        UnknownStockError: When none is called so.
        StockError: When the museum's own cannot be read.
    """
    return find_stock(name, (*load_own_stocks(folder), *STOCKS))


def find_own_stocks(folder: Path, names: Iterable[str]) -> tuple[Stock, ...]:
    """Find the museum's own among named stocks; the others are listed, or known to nobody.

    Raises:
        StockError: When one may be the museum's own, and those cannot be read.
    """
    unlisted = set(map(_plain, names)) - _listed()
    if not unlisted:
        return ()
    return tuple(one for one in load_own_stocks(folder) if _plain(one.name) in unlisted)


@cache
def _listed() -> frozenset[str]:
    return frozenset(_plain(one.name) for one in STOCKS) | {""}


def _load(folder: Path) -> list[Mapping[str, object]]:
    path = folder / NAME
    try:
        stocks = json.loads(path.read_text(encoding="utf-8"))["stocks"]
        return [{**each, "name": str(each["name"])} for each in stocks]
    except FileNotFoundError:
        return []
    except (OSError, ValueError, KeyError, TypeError, RecursionError) as error:
        raise StockError(
            NAME, measure="file", reason=Sentence("cannot be read ({path})", path=path)
        ) from error


def _write(folder: Path, stocks: list[Mapping[str, object]]) -> None:
    """Write the file whole or not at all."""
    folder.mkdir(parents=True, exist_ok=True)
    with tempfile.NamedTemporaryFile(
        "w", dir=folder, delete=False, encoding="utf-8", newline="\n"
    ) as part:
        text = json.dumps({"stocks": stocks}, ensure_ascii=False, indent=2)
        part.write(text + "\n")
    Path(part.name).replace(folder / NAME)


def _name(measures: Mapping[str, object]) -> str:
    return _plain(str(measures.get("name", "")))


def _plain(name: str) -> str:
    return " ".join(name.split()).casefold()
