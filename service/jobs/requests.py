"""What can be asked for: plain data, which is kept as JSON until somebody does the work."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from typing import TypeVar, cast

from service.cards.kinds import find_kind
from service.pipeline.options import PrintOptions, object_tag_keys
from service.sheets.stock import Stock
from service.sheets.stocks import STOCKS, find_stock
from service.store.canonical import decode_record, dump_json, encode_record


@dataclass(frozen=True, slots=True)
class WantedCard:
    """One card of one container; `side` counts from 1."""

    container_number: str
    kind: str
    side: int = 1


@dataclass(frozen=True, slots=True)
class KindStock:
    """The stock, by name, on which one kind of card is printed."""

    kind: str
    stock: str


@dataclass(frozen=True, slots=True)
class SheetInTray:
    """The sheet of a stock that lies in the printer first, with the positions that are gone."""

    stock: str
    positions: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class PrintRequest:
    """What to print and on what; nothing named prints every card of every container.

    Attributes:
        kinds: Codes of the kinds of card; none means all.
        stock: The name of the stock; none is chosen by measure.
        own_stocks: The museum's own of the stocks that are named, with the measures they had when
            this was asked for.
        paper: "A4" or "Letter", where stocks are chosen.
        start_position: First position of the first sheet, from 1.
        skipped: Used or spoiled positions of the first sheet.
        copies: How often each page is printed.
        containers: Only of these containers.
        cards: Only these cards.
        printed: Only the cards of which these were printed, by their numbers, besides `cards`.
        objects: Only the tags of these objects; beside `cards`, these too.
        reprints: Only the cards that are on the reprint list when the work begins.
        lacking: Only the cards that containers lack when the work begins and that nobody printed.
        go_on: Go on with the sheets that were begun.
        stocks: The stocks of single kinds; those of the other kinds are chosen by measure.
        sheets: The first sheets as somebody sees them; they win over those that were begun.
        printer: The name of a printer that was measured; none means any.
        tray: The tray of it that holds the sheets.
    """

    kinds: tuple[str, ...] = ()
    stock: str = ""
    own_stocks: tuple[Stock, ...] = ()
    paper: str = "A4"
    start_position: int = 1
    skipped: tuple[int, ...] = ()
    copies: int = 1
    containers: tuple[str, ...] = ()
    cards: tuple[WantedCard, ...] = ()
    printed: tuple[int, ...] = ()
    objects: tuple[str, ...] = ()
    reprints: bool = False
    lacking: bool = False
    go_on: bool = False
    printer: str = ""
    tray: str = ""
    stocks: tuple[KindStock, ...] = ()
    sheets: tuple[SheetInTray, ...] = ()

    def to_options(self) -> PrintOptions:
        """Look kinds and stock up; what only the desk knows is added when the work begins.

        Raises:
            UnknownCardKindError: When there is no such kind.
            UnknownStockError: When there is no such stock.
            StartPositionError: When the stock has no such position.
        """
        stock = self._find(self.stock) if self.stock else None
        if stock is not None:
            stock.position_rect(self.start_position)
        for sheet in self.sheets:
            for position in sheet.positions:
                self._find(sheet.stock).position_rect(position)
        cards = frozenset((one.container_number, one.kind, one.side) for one in self.cards)
        return PrintOptions(
            kinds=tuple(map(find_kind, self.kinds)),
            stock=stock,
            by_kind={find_kind(one.kind).code: self._find(one.stock) for one in self.stocks},
            paper=self.paper,
            start_position=self.start_position,
            skipped=frozenset(self.skipped),
            copies=self.copies,
            containers=frozenset(self.containers),
            only=cards | object_tag_keys(self.objects),
        )

    def _find(self, stock: str) -> Stock:
        return find_stock(stock, (*STOCKS, *self.own_stocks))


@dataclass(frozen=True, slots=True)
class ShelvedFile:
    """A file by the name it came with; its bytes lie on the shelf under that name's ending."""

    name: str
    sha256: str

    @property
    def suffix(self) -> str:
        """The ending of the name in small letters, such as `.csv`; empty where it has none."""
        stem, dot, ending = self.name.rpartition(".")
        return f".{ending.lower()}" if stem and dot else ""


@dataclass(frozen=True, slots=True)
class ImportRequest:
    """The files of one export: a document, a workbook, or the tables of a folder together.

    `mapping` names the one by which a table is read; empty where it is chosen by the headings.
    `how` says instead how every table is read (`service/keeping/intake/how_read.py`).
    """

    files: tuple[ShelvedFile, ...]
    mapping: str = ""
    how: str = ""


@dataclass(frozen=True, slots=True)
class PhotosRequest:
    """A ZIP file of photos, which are named after their objects."""

    file: ShelvedFile


@dataclass(frozen=True, slots=True)
class SpoiledRequest:
    """A spoiled sheet, from 1, of a file of a run; printer and tray for what comes in its place."""

    run_id: int
    file: str
    sheet: int
    printer: str = ""
    tray: str = ""


Request = PrintRequest | ImportRequest | PhotosRequest | SpoiledRequest
KINDS: Mapping[str, type[Request]] = {
    "print": PrintRequest,
    "import": ImportRequest,
    "photos": PhotosRequest,
    "spoiled": SpoiledRequest,
}

_Asked = TypeVar("_Asked")


def kind_of(request: Request) -> str:
    """Name the kind of work that a request asks for."""
    return next(kind for kind, shape in KINDS.items() if isinstance(request, shape))


def write_request(request: Request) -> dict[str, object]:
    """Write a request as JSON data; what holds its default is left out.

    Raises:
        UnstorableTextError: When a text of it cannot be stored.
    """
    return cast("dict[str, object]", json.loads(encode_record(request)))


def read_request(shape: type[_Asked], data: Mapping[str, object]) -> _Asked:
    """Read a request of one shape from what `write_request` wrote."""
    return decode_record(shape, dump_json(data))
