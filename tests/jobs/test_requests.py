"""Tests for requests, which wait as JSON."""

from __future__ import annotations

import json
from dataclasses import replace

import pytest

from service.cards.kinds import END_LABEL
from service.errors import (
    StartPositionError,
    UnknownCardKindError,
    UnknownStockError,
    UnstorableTextError,
)
from service.jobs.requests import (
    KINDS,
    ImportRequest,
    KindStock,
    PhotosRequest,
    PrintRequest,
    Request,
    SheetInTray,
    ShelvedFile,
    SpoiledRequest,
    WantedCard,
    kind_of,
    read_request,
    write_request,
)
from service.sheets.stocks import STOCKS
from tests.keeping.made import BOX, JAR

EIGHT = next(stock for stock in STOCKS if stock.positions == 8)
FULL = PrintRequest(
    kinds=("end-label",),
    stock=EIGHT.name,
    paper="Letter",
    start_position=2,
    skipped=(3, 4),
    copies=5,
    containers=(BOX,),
    cards=(WantedCard(BOX, "end-label", 2),),
    printed=(7, 3),
    objects=(JAR,),
    reprints=True,
    lacking=True,
    go_on=True,
    printer="Office copier",
    tray="2",
    stocks=(KindStock("end-label", EIGHT.name),),
    sheets=(SheetInTray(EIGHT.name, (1, 4)),),
)
OWN = PrintRequest(stock="ours", own_stocks=(replace(EIGHT, name="Ours", left_mm=1 / 3),))
TABLES = ImportRequest((ShelvedFile("objects.csv", "a" * 64), ShelvedFile("museum.toml", "b" * 64)))


@pytest.mark.parametrize(
    "request_",
    [
        PrintRequest(),
        FULL,
        OWN,
        TABLES,
        PhotosRequest(ShelvedFile("photos.zip", "c" * 64)),
        SpoiledRequest(1, "end-label.pdf", 2),
    ],
    ids=["empty", "print", "own stock", "import", "photos", "spoiled"],
)
def test_a_request_comes_back_from_json(request_: Request) -> None:
    """What was asked for is read as it was written, through the text that the store keeps."""
    kept = json.loads(json.dumps(write_request(request_)))
    assert read_request(KINDS[kind_of(request_)], kept) == request_


def test_what_is_not_said_is_left_out() -> None:
    """A request of an older version, which knew fewer fields, reads as if they held defaults."""
    assert write_request(PrintRequest()) == {}


def test_a_request_becomes_options() -> None:
    """Names are looked up; what is empty means everything."""
    options = PrintRequest(containers=(BOX,), cards=(WantedCard(BOX, "end-label"),)).to_options()
    assert (options.kinds, options.stock) == ((), None)
    assert options.only == {(BOX, END_LABEL.code, 1)}
    options = FULL.to_options()
    assert (options.kinds, options.stock) == ((END_LABEL,), EIGHT)
    assert (options.start_position, options.copies) == (2, 5)
    assert options.skipped == {3, 4}
    assert options.by_kind == {"end-label": EIGHT}
    assert OWN.to_options().stock == OWN.own_stocks[0]
    assert options.only == {(BOX, END_LABEL.code, 2), (JAR, "object-tag", 1)}


@pytest.mark.parametrize(
    ("request_", "error"),
    [
        (PrintRequest(kinds=("poster",)), UnknownCardKindError),
        (PrintRequest(stock="A9"), UnknownStockError),
        (PrintRequest(stock=STOCKS[0].name, start_position=999), StartPositionError),
        (replace(OWN, start_position=9), StartPositionError),
        (PrintRequest(stocks=(KindStock("end-label", "A9"),)), UnknownStockError),
        (PrintRequest(stocks=(KindStock("poster", EIGHT.name),)), UnknownCardKindError),
        (PrintRequest(sheets=(SheetInTray("A9", (1,)),)), UnknownStockError),
        (PrintRequest(sheets=(SheetInTray(EIGHT.name, (9,)),)), StartPositionError),
    ],
    ids=[
        "kind",
        "stock",
        "position",
        "position of one's own",
        "stock of a kind",
        "kind with a stock",
        "stock in the tray",
        "position in the tray",
    ],
)
def test_what_does_not_exist_is_refused(request_: PrintRequest, error: type[Exception]) -> None:
    """Nobody waits in the line for what can never be done."""
    with pytest.raises(error):
        request_.to_options()


def test_what_cannot_be_stored_is_refused() -> None:
    """A NUL is no text of any database."""
    with pytest.raises(UnstorableTextError):
        write_request(PrintRequest(containers=("B\0",)))


@pytest.mark.parametrize(
    ("name", "suffix"),
    [("Objects.CSV", ".csv"), ("a.b.xlsx", ".xlsx"), ("export", ""), (".csv", "")],
)
def test_a_shelved_file_has_the_ending_of_its_name(name: str, suffix: str) -> None:
    """The ending says where on the shelf the bytes are."""
    assert ShelvedFile(name, "a" * 64).suffix == suffix
