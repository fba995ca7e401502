"""Tests for cards to the sheets of a file."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from service.geometry import Rect
from service.pipeline.options import PrintOptions
from service.pipeline.printing.lay import lay_file, lay_files
from service.pipeline.printing.shelf import Shelf
from service.sheets.printers.used_sheet import Start, UsedSheet
from tests.pipeline.printing.test_file import STOCK, card, proved


def test_cards_become_sheets(tmp_path: Path) -> None:
    """Nine labels on sheets of eight, the first begun at position 3, take two sheets."""
    shelf = Shelf()
    shelf.add({"a": proved(Rect(5, 5, 50, 50))})
    cards = [card(str(number)) for number in range(9)]
    file = lay_file(cards, shelf, PrintOptions(start_position=3), tmp_path).file
    assert (file.sheets, file.cards) == (2, 9)
    assert file.path == tmp_path / "end-label, A4 2x4 99.1x67.7.pdf"
    assert file.left_over is not None
    assert file.left_over.positions == frozenset({1, 2, 3})


def test_each_copy_is_known_by_its_places(tmp_path: Path) -> None:
    """Two copies of two faces lie side by side, face by face, over the end of a begun sheet."""
    shelf = Shelf()
    shelf.add({"a": proved(Rect(5, 5, 50, 50))})
    two_faced = replace(card("B-1"), faces=card("B-1").faces * 2)
    options = PrintOptions(start_position=6, copies=2)
    file = lay_file([two_faced, card("B-2")], shelf, options, tmp_path).file
    assert [
        (placed.card.head.container_number, placed.copy, placed.places) for placed in file.placed
    ] == [
        ("B-1", 1, ((1, 6), (1, 8))),
        ("B-1", 2, ((1, 7), (2, 1))),
        ("B-2", 1, ((2, 2),)),
        ("B-2", 2, ((2, 3),)),
    ]


def test_each_file_goes_on_where_the_one_before_it_ended(tmp_path: Path) -> None:
    """A sheet begun at 1 to 3 takes the first file at 4, and the second one behind it."""
    shelf = Shelf()
    shelf.add({"a": proved(Rect(5, 5, 50, 50))})
    options = PrintOptions(begun=(UsedSheet(STOCK.name, frozenset({1, 2, 3})),))
    laid = list(lay_files([[card("B-1")], [card("B-2")]], shelf, options, tmp_path))
    assert [one.start for one in laid] == [Start(4), Start(5)]
    places = [placed.places for one in laid for placed in one.file.placed]
    assert places == [((1, 4),), ((1, 5),)]
