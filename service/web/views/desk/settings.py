"""How something is printed, as the desk asks it: kinds, paper, stocks, printer and copies."""

from __future__ import annotations

import json
from dataclasses import dataclass
from pathlib import Path

from service.cards.kinds import CARD_KINDS, OBJECT_TAG, SIDE_CARD, CardKind
from service.keeping.paper.own_stocks import load_own_stocks
from service.keeping.printing.printers_file import load_saved
from service.sheets.stock import Medium, Stock
from service.sheets.stocks import STOCKS

USUAL = tuple(kind for kind in CARD_KINDS if kind.standing)
EXTRA = (SIDE_CARD, *(kind for kind in CARD_KINDS if not kind.standing))
"""A side card is usual where the lid is clear, and to be had for the others."""

STOCK_FIELD = "stock-"


@dataclass(frozen=True, slots=True)
class StockGroups:
    """The stocks to choose from: the museum's own, and those that are listed."""

    own: tuple[Stock, ...]
    labels: tuple[Stock, ...]
    cards: tuple[Stock, ...]


@dataclass(frozen=True, slots=True)
class Settings:
    """What can be chosen."""

    usual: tuple[CardKind, ...]
    extra: tuple[CardKind, ...]
    every: tuple[CardKind, ...]
    stocks: StockGroups
    printers: tuple[tuple[str, str], ...]


def list_settings(data_folder: Path) -> Settings:
    """List everything that can be chosen."""
    groups = StockGroups(
        load_own_stocks(data_folder),
        tuple(one for one in STOCKS if one.medium is Medium.STICKY),
        tuple(one for one in STOCKS if one.medium is Medium.CARD),
    )
    return Settings(USUAL, EXTRA, CARD_KINDS, groups, tuple(_printers(data_folder)))


def list_stocks(data_folder: Path) -> tuple[Stock, ...]:
    """List the stocks that can be chosen by name, the museum's own first."""
    return (*load_own_stocks(data_folder), *STOCKS)


def write_printer(name: str, tray: str) -> str:
    """Write printer and tray as one value of a field."""
    return json.dumps([name, tray], ensure_ascii=False) if name else ""


def read_printer(value: str) -> tuple[str, str]:
    """Read printer and tray from the value of the field; anything else is any printer."""
    try:
        name, tray = json.loads(value)
    except (ValueError, TypeError):
        return "", ""
    return (name, tray) if isinstance(name, str) and isinstance(tray, str) else ("", "")


def usual_codes() -> frozenset[str]:
    """Give the codes of the kinds that are ticked unless somebody says otherwise."""
    return frozenset(kind.code for kind in USUAL)


def is_tag(code: str) -> bool:
    """Tell whether a kind belongs to an object."""
    return code == OBJECT_TAG.code


def _printers(data_folder: Path) -> list[tuple[str, str]]:
    """Name each printer that was measured, and each of its trays."""
    named = []
    for printer in load_saved(data_folder).printers:
        named.append((write_printer(printer.name, ""), printer.name))
        trays = dict.fromkeys(each.tray for each in printer.corrections if each.tray)
        named += [(write_printer(printer.name, tray), f"{printer.name}, {tray}") for tray in trays]
    return named
