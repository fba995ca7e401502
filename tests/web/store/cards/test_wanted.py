from __future__ import annotations

from pathlib import Path

import pytest
from pydantic import ValidationError

from service.errors import StockError
from service.jobs.requests import KindStock, PrintRequest, SheetInTray, WantedCard
from service.keeping.paper.own_stocks import keep_own_stock
from service.sheets.own_stock import NEEDED, OPTIONAL, parse_stock
from service.web.store.cards.wanted import OwnStockBody, PrintBody, SpoiledBody

OURS = {
    "name": "Ours",
    "page": "A4",
    "columns": 2,
    "rows": "4",
    "label_width": "99.1 mm",
    "label_height": "67.7 mm",
}


def test_nothing_named_asks_for_everything(tmp_path: Path) -> None:
    """Without kinds each container gets what it always gets, on the stock that suits it."""
    assert PrintBody().to_request(tmp_path) == PrintRequest()
    options = PrintBody().to_request(tmp_path).to_options()
    assert (options.kinds, options.stock, options.containers) == ((), None, frozenset())


def test_a_body_becomes_a_request(tmp_path: Path) -> None:
    """Every field is handed on; positions stand once each, in order."""
    body = PrintBody.model_validate(
        {
            "containers": ["B-027"],
            "cards": [{"container_number": "B-027", "kind": "end-label", "side": 2}, 7],
            "stock": "A4 card",
            "skipped": [4, 3, 4],
            "lacking": True,
            "printer": "Copier",
            "tray": "2",
            "stocks": [{"kind": "end-label", "stock": "A4 card"}],
            "sheets": [{"stock": "A4 card", "positions": [2, 1, 2]}],
        }
    )
    assert body.to_request(tmp_path) == PrintRequest(
        stock="A4 card",
        containers=("B-027",),
        cards=(WantedCard("B-027", "end-label", 2),),
        printed=(7,),
        skipped=(3, 4),
        printer="Copier",
        tray="2",
        lacking=True,
        stocks=(KindStock("end-label", "A4 card"),),
        sheets=(SheetInTray("A4 card", (1, 2)),),
    )


def test_a_stock_is_described_as_in_a_file(tmp_path: Path) -> None:
    """The fields are those of a file of measures, and the same measures make the same stock."""
    assert set(OwnStockBody.model_fields) == {*NEEDED, *OPTIONAL}
    more = {"unit": "mm", "pitch_x": 101.6, "left": "4.7 mm", "radius": 2, "medium": "card"}
    for measures in (OURS, OURS | more):
        request = PrintBody.model_validate({"stock": measures}).to_request(tmp_path)
        assert (request.stock, request.own_stocks) == ("Ours", (parse_stock(measures),))


def test_the_museums_own_stocks_go_along(tmp_path: Path) -> None:
    """Those that are named, as they measure now: whoever changes them changes no waiting task."""
    ours = keep_own_stock(tmp_path, OURS)
    keep_own_stock(tmp_path, OURS | {"name": "Another"})
    asked = {"stocks": [{"kind": "end-label", "stock": "OURS"}]}
    request = PrintBody.model_validate(asked).to_request(tmp_path)
    keep_own_stock(tmp_path, OURS | {"rows": "3"})
    assert request.own_stocks == (ours,)
    assert request.to_options().by_kind == {"end-label": ours}
    assert PrintBody(stock="ours").to_request(tmp_path).to_options().stock != ours


def test_measures_that_contradict_each_other_are_told(tmp_path: Path) -> None:
    """The measure is named, as for a file; a field that is none is refused."""
    for change, words in (({"left": 20}, "has no unit"), ({"pitch_x": "9 mm"}, "overlap")):
        with pytest.raises(StockError, match=words):
            PrintBody.model_validate({"stock": OURS | change}).to_request(tmp_path)
    with pytest.raises(ValidationError, match="colour"):
        PrintBody.model_validate({"stock": OURS | {"colour": "red"}})


def test_sheets_are_counted_from_one() -> None:
    """There is no sheet 0."""
    with pytest.raises(ValidationError, match="greater than or equal to 1"):
        SpoiledBody(file="x.pdf", sheet=0)
