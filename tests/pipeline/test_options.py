"""Tests for what can be asked of a print."""

from __future__ import annotations

from pathlib import Path

from service.cards.kinds import END_LABEL, LID_CARD
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


def test_kinds_are_asked_for_by_name_or_by_card() -> None:
    """Where neither is named, every container gets what it always gets."""
    only = frozenset({("B-1", "end-label", 2), ("B-1", "end-label", 1)})
    assert PrintOptions().asked_kinds == ()
    assert PrintOptions(only=only).asked_kinds == (END_LABEL,)
    assert PrintOptions(kinds=(LID_CARD,), only=only).asked_kinds == (LID_CARD,)
