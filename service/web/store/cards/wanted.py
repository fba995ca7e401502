"""The shapes of what is to be printed."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field
from pydantic.config import JsonDict

from service.jobs.requests import KindStock, PrintRequest, SheetInTray, WantedCard
from service.keeping.paper.own_stocks import find_own_stocks
from service.sheets.own_stock import parse_stock
from service.sheets.stock import Stock
from service.web.store.packings.shapes import Number
from service.web.store.records.shapes import STRICT

_CardNumber = Annotated[int, Field(ge=1, lt=2**31)]
_Position = Annotated[int, Field(ge=1, le=1000)]
_Words = Annotated[str, Field(max_length=100)]
_Length = Annotated[float | _Words, Field(description="A text with its unit, or a number in unit.")]
_Count = int | _Words
_PrinterName = Annotated[
    str, Field(max_length=200, description="A printer of /api/printers; none, any office printer.")
]
_TrayName = Annotated[
    str, Field(max_length=200, description="The tray of it that holds the sheets.")
]

_LABELS: JsonDict = {"containers": ["B-027"], "kinds": ["end-label"]}
_PRINTER: JsonDict = {"printer": "Office copier", "tray": "2"}
_SHEET: JsonDict = {"file": "end-label, A4 2x4 99.1x67.7.pdf", "sheet": 1}
_KIND_STOCK: JsonDict = {"kind": "end-label", "stock": "A4 2x7 99.1x38.1"}
_IN_TRAY: JsonDict = {"stock": "A4 2x7 99.1x38.1", "positions": [1, 2, 5]}
_OWN: JsonDict = {
    "name": "Our sheet",
    "page": "A4",
    "columns": 2,
    "rows": 4,
    "label_width": "99.1 mm",
    "label_height": "67.7 mm",
    "pitch_x": "101.6 mm",
}


class CardKeyBody(BaseModel):
    """One card of one container: only end labels have more than one side."""

    model_config = STRICT

    container_number: Number
    kind: Number
    side: int = Field(default=1, ge=1, le=100)


class OwnStockBody(BaseModel):
    """A stock that is not in the list, by its measures; the same as in a TOML file of measures."""

    model_config = STRICT | ConfigDict(json_schema_extra={"examples": [_OWN]})

    name: _Words = Field(description="A name of your own; sheets begun go by it.")
    page: _Words = Field(description="A4, A5, A6, Letter or a size such as 210 mm x 297 mm.")
    columns: _Count
    rows: _Count
    label_width: _Length
    label_height: _Length
    unit: Literal["mm", "in"] | None = Field(default=None, description="That of plain numbers.")
    pitch_x: _Length | None = Field(default=None, description="Column to column; else they touch.")
    pitch_y: _Length | None = Field(default=None, description="Row to row; else they touch.")
    left: _Length | None = Field(default=None, description="Else the labels stand in the middle.")
    top: _Length | None = Field(default=None, description="Else the labels stand in the middle.")
    radius: _Length | None = Field(default=None, description="Of the corners; else square.")
    medium: Literal["sticky", "card"] | None = Field(default=None, description="Else sticky.")
    edge: _Length | None = Field(default=None, description="Left white; else 1/6 inch.")

    def to_stock(self) -> Stock:
        """Make the stock.

        Raises:
            StockError: When a measure cannot be read, or the measures contradict each other.
        """
        return parse_stock(self.model_dump(exclude_none=True))


class KindStockBody(BaseModel):
    """The stock of one kind of card."""

    model_config = STRICT

    kind: Number
    stock: Annotated[str, Field(min_length=1, max_length=200)]


class SheetInTrayBody(BaseModel):
    """The sheet of a stock that lies in the printer first, with the positions that are gone."""

    model_config = STRICT

    stock: Annotated[str, Field(min_length=1, max_length=200)]
    positions: list[_Position] = Field(default_factory=list, max_length=1000)


class PrintBody(BaseModel):
    """What to print, and on what; nothing named prints what every container always gets."""

    model_config = STRICT | ConfigDict(
        json_schema_extra={
            "examples": [
                _LABELS,
                {**_LABELS, **_PRINTER},
                {**_LABELS, "stock": _OWN},
                {"cards": [1]},
                {"objects": ["1931.14.7", "X.112"]},
                {"containers": ["B-027"], "stocks": [_KIND_STOCK], "sheets": [_IN_TRAY]},
            ]
        }
    )

    containers: list[Number] = Field(default_factory=list, max_length=100_000)
    cards: list[_CardNumber | CardKeyBody] = Field(
        default_factory=list,
        max_length=100_000,
        description="Only these: a number prints that printed card's place again, as worded today.",
    )
    objects: list[Number] = Field(
        default_factory=list,
        max_length=100_000,
        description="Only the tags of these objects, packed or not.",
    )
    reprints: bool = Field(default=False, description="Only the cards of the reprint list.")
    lacking: bool = Field(
        default=False, description="Only what containers lack and nobody has printed yet."
    )
    kinds: list[Number] = Field(
        default_factory=list, description="Kinds of card; none, those that are always printed."
    )
    stock: Annotated[str, Field(max_length=200)] | OwnStockBody = Field(
        default="", description="By name or by its measures; none is chosen by measure."
    )
    paper: Literal["A4", "Letter"] = "A4"
    start_position: _Position = 1
    skipped: list[_Position] = Field(default_factory=list, max_length=1000)
    copies: int = Field(default=1, ge=1, le=100)
    go_on: bool = Field(default=False, description="Go on with the sheets that were begun.")
    printer: _PrinterName = ""
    tray: _TrayName = ""
    stocks: list[KindStockBody] = Field(
        default_factory=list, max_length=100, description="Stocks of single kinds of card."
    )
    sheets: list[SheetInTrayBody] = Field(
        default_factory=list,
        max_length=100,
        description="First sheets as you see them; they win over those that were begun.",
    )

    def to_request(self, data_folder: Path) -> PrintRequest:
        """Make the request that is kept for long work, and looked up when the work begins.

        The museum's own stocks go with it: what they measure now is what is printed on.

        Raises:
            StockError: When the measures of a stock contradict each other, or cannot be read.
        """
        if isinstance(self.stock, str):
            stock, described = self.stock, tuple[Stock, ...]()
        else:
            described = (self.stock.to_stock(),)
            stock = described[0].name
        named = {stock, *(one.stock for one in self.stocks), *(one.stock for one in self.sheets)}
        named -= {one.name for one in described}
        return PrintRequest(
            kinds=tuple(self.kinds),
            stock=stock,
            own_stocks=(*find_own_stocks(data_folder, named), *described),
            paper=self.paper,
            start_position=self.start_position,
            skipped=tuple(sorted(set(self.skipped))),
            copies=self.copies,
            containers=tuple(self.containers),
            cards=tuple(
                WantedCard(one.container_number, one.kind, one.side)
                for one in self.cards
                if not isinstance(one, int)
            ),
            printed=tuple(one for one in self.cards if isinstance(one, int)),
            objects=tuple(self.objects),
            reprints=self.reprints,
            lacking=self.lacking,
            go_on=self.go_on,
            printer=self.printer,
            tray=self.tray,
            stocks=tuple(KindStock(one.kind, one.stock) for one in self.stocks),
            sheets=tuple(
                SheetInTray(one.stock, tuple(sorted(set(one.positions)))) for one in self.sheets
            ),
        )


class SpoiledBody(BaseModel):
    """A sheet, from 1, of a file of the run, and the printer for what comes in its place."""

    model_config = STRICT | ConfigDict(
        json_schema_extra={"examples": [_SHEET, {**_SHEET, **_PRINTER}]}
    )

    file: Number
    sheet: int = Field(ge=1, le=1_000_000)
    printer: _PrinterName = ""
    tray: _TrayName = ""
