"""What can be asked of a print, and what comes back."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from datetime import date
from pathlib import Path

from service.cards.card import Card, EndLabel, ObjectTag
from service.cards.kinds import OBJECT_TAG, CardKind, find_kind
from service.findings import Finding, Where
from service.pages.page import Page
from service.sheets.impose import Face
from service.sheets.printers.printer import ANY_PRINTER, PrinterSetup
from service.sheets.printers.used_sheet import UsedSheet
from service.sheets.stock import Stock
from service.sheets.stocks import STOCKS

CardKey = tuple[str, str, int]
"""Which card of what: the number, the code of the kind, and the side from 1.

The number is that of the container, or of the object where the card is an object's own tag.
"""


def card_key(card: Card) -> CardKey:
    """Give what tells a card from every other: only end labels have more than one side."""
    number = card.object_number if isinstance(card, ObjectTag) else card.head.container_number
    return (number, card.kind, card.side if isinstance(card, EndLabel) else 1)


def object_tag_keys(object_numbers: Iterable[str]) -> frozenset[CardKey]:
    """Name the tags of some objects."""
    return frozenset((number, OBJECT_TAG.code, 1) for number in object_numbers)


def where_is(card: Card) -> Where:
    """Say whose card it is, for a finding."""
    if isinstance(card, ObjectTag):
        return Where(object_number=card.object_number)
    return Where(container_number=card.head.container_number)


@dataclass(frozen=True, slots=True)
class PrintOptions:
    """What to print and on what.

    Attributes:
        kinds: The kinds of card; a container gets those of them that fit it. Where none is named
            it gets those it always gets.
        stock: Print on this stock only; None chooses by the measures of lid and end.
        by_kind: Print these kinds, by their codes, on these stocks; the others as said by `stock`.
        paper: "A4" or "Letter", where stocks are chosen.
        start_position: First position of the first sheet, counted from 1.
        skipped: Used or spoiled positions of the first sheet.
        begun: Sheets begun earlier, to go on with: on their stocks they say where a run starts.
        copies: How often each page is printed.
        containers: Print only these container numbers; empty prints all.
        only: Of those print only these cards; empty prints all.
        stocks: The stocks that may be chosen or named.
        printer: The printer and tray, with what is known of them.
        today: The day on which dates of the records are judged; None judges none.
    """

    kinds: tuple[CardKind, ...] = ()
    stock: Stock | None = None
    by_kind: Mapping[str, Stock] = field(default_factory=dict)
    paper: str = "A4"
    start_position: int = 1
    skipped: frozenset[int] = frozenset()
    begun: tuple[UsedSheet, ...] = ()
    copies: int = 1
    containers: frozenset[str] = frozenset()
    only: frozenset[CardKey] = frozenset()
    stocks: tuple[Stock, ...] = STOCKS
    printer: PrinterSetup = ANY_PRINTER
    today: date | None = None

    @property
    def asked_kinds(self) -> tuple[CardKind, ...]:
        """The kinds that were asked for, also by naming single cards; empty where none was."""
        if self.kinds or not self.only:
            return self.kinds
        return tuple(find_kind(code) for code in dict.fromkeys(kind for _, kind, _ in self.only))


@dataclass(frozen=True, slots=True)
class FittedCard:
    """A card, its pages and the stock they go on."""

    kind: CardKind
    card: Card
    pages: tuple[Page, ...]
    stock: Stock


@dataclass(frozen=True, slots=True)
class MadeCard:
    """A card whose faces are inked and proved: the keys of their plates, in order."""

    kind: CardKind
    card: Card
    stock: Stock
    faces: tuple[Face, ...]


@dataclass(frozen=True, slots=True)
class PlacedCard:
    """One copy of a card in a file: sheet and position of each of its faces, all from 1."""

    card: Card
    copy: int
    places: tuple[tuple[int, int], ...]


@dataclass(frozen=True, slots=True)
class PrintFile:
    """One finished, proven PDF on disk: all cards of one kind on one stock.

    `left_over` is the last sheet with the positions that are gone; None where it is full.
    `left_empty` are the positions, each once, that the printer does not reach. `placed` says where
    every copy of every card lies.
    """

    kind: CardKind
    stock: Stock
    path: Path
    sheets: int
    cards: int
    left_over: UsedSheet | None = None
    left_empty: tuple[int, ...] = ()
    placed: tuple[PlacedCard, ...] = ()

    @property
    def pdf(self) -> bytes:
        """The file's bytes, read anew each time."""
        return self.path.read_bytes()

    @property
    def name(self) -> str:
        """A file name of plain letters, such as `lid-card, A4 card 2xA5.pdf`."""
        return f"{self.kind.code}, {self.stock.name.replace('/', '-')}.pdf"


@dataclass(frozen=True, slots=True)
class Outcome:
    """All that a print gives: files in the order of kinds, and everything noticed."""

    files: tuple[PrintFile, ...]
    findings: tuple[Finding, ...]

    @property
    def cards(self) -> int:
        """How many cards were made."""
        return sum(file.cards for file in self.files)
