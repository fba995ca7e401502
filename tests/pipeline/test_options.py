"""Tests for what can be asked of a print."""

from __future__ import annotations

from pathlib import Path

from service.cards.kinds import LID_CARD
from service.pipeline.options import Outcome, PrintFile, PrintOptions
from service.sheets.stocks import STOCKS, find_stock


def test_file_name_says_kind_and_stock() -> None:
    """The name of a file tells which paper to put into the printer."""
    stock = find_stock("A4 card 2xA5", STOCKS)
    file = PrintFile(LID_CARD, stock, Path("out"), sheets=1, cards=2)
    assert file.name == "lid-card, A4 card 2xA5.pdf"
    assert Outcome((file, file), ()).cards == 4


def test_everything_is_printed_by_default() -> None:
    """Without being told otherwise every kind is printed once from the first position."""
    options = PrintOptions()
    assert (options.start_position, options.copies, options.containers) == (1, 1, frozenset())
