from __future__ import annotations

from pathlib import Path

import pytest

from service.keeping.paper.own_stocks import keep_own_stock
from service.keeping.printing.printers_file import keep_saved
from service.sheets.stocks import STOCKS
from service.web.views.desk.settings import (
    is_tag,
    list_settings,
    list_stocks,
    read_printer,
    usual_codes,
    write_printer,
)
from tests.keeping.paper.test_own_stocks import MEASURES
from tests.web.store.examples import PRINTERS


def test_each_printer_and_tray_can_be_chosen(tmp_path: Path) -> None:
    """A printer alone means any of its trays."""
    keep_saved(tmp_path, PRINTERS)
    offered = list_settings(tmp_path).printers
    assert [words for _, words in offered] == ["Office copier", "Office copier, 2"]
    assert [read_printer(value) for value, _ in offered] == [
        ("Office copier", ""),
        ("Office copier", "2"),
    ]


@pytest.mark.parametrize("value", ["", "x", "[]", "[1, 2]", '["a"]', "null"])
def test_anything_else_is_any_printer(value: str) -> None:
    """What was not on the page names nobody."""
    assert read_printer(value) == ("", "")
    assert write_printer("", "2") == ""


def test_a_side_card_is_usual_and_on_request(tmp_path: Path) -> None:
    """It is always printed for clear lids, and for the others when somebody asks."""
    settings = list_settings(tmp_path)
    assert "side-card" in usual_codes()
    assert [kind.code for kind in settings.extra] == [
        "side-card",
        "warning-label",
        "shoulder-tag",
        "object-tag",
    ]
    assert is_tag("object-tag")
    assert settings.stocks.labels
    assert settings.stocks.cards


def test_what_the_museum_measured_comes_first(tmp_path: Path) -> None:
    """It is chosen by name like any other stock."""
    assert list_settings(tmp_path).stocks.own == ()
    ours = keep_own_stock(tmp_path, MEASURES)
    assert list_settings(tmp_path).stocks.own == (ours,)
    assert list_stocks(tmp_path) == (ours, *STOCKS)
