"""Tests for going on with a part-used sheet."""

from __future__ import annotations

from pathlib import Path

import pytest
import typer

from service.cards.kinds import END_LABEL, LID_CARD
from service.cli.part_used import go_on, remember_rest
from service.keeping.printing.printers_file import load_saved
from service.pipeline.options import Outcome, PrintFile, PrintOptions
from service.sheets.printers.used_sheet import UsedSheet
from service.sheets.stocks import STOCKS, find_stock

LABELS = find_stock("A4 2x4 99.1x67.7", STOCKS)
OPTIONS = PrintOptions(kinds=(END_LABEL,), stock=LABELS)


def _outcome(left_over: UsedSheet | None) -> Outcome:
    return Outcome((PrintFile(END_LABEL, LABELS, Path("x.pdf"), 1, 3, left_over),), ())


def test_goes_on_where_the_last_run_ended(tmp_path: Path) -> None:
    """What a run leaves is where the next begins, until the sheet is full."""
    assert go_on(tmp_path, OPTIONS) == OPTIONS
    said = remember_rest(tmp_path, _outcome(UsedSheet(LABELS.name, frozenset({1, 2, 4}))))
    assert "5 positions" in said
    assert f'calibrate forget --sheet "{LABELS.name}"' in said
    begun = go_on(tmp_path, OPTIONS)
    assert (begun.start_position, begun.skipped) == (3, frozenset({4}))
    assert "Nothing is left" in remember_rest(tmp_path, _outcome(None))
    assert go_on(tmp_path, OPTIONS) == OPTIONS
    assert load_saved(tmp_path).used_sheets == ()


@pytest.mark.parametrize(
    "typed",
    [
        PrintOptions(kinds=(END_LABEL,), stock=LABELS, start_position=5),
        PrintOptions(kinds=(END_LABEL,), stock=LABELS, skipped=frozenset({1})),
    ],
    ids=["start", "skip"],
)
def test_positions_that_were_typed_win(tmp_path: Path, typed: PrintOptions) -> None:
    """Whoever looks at the sheet knows better than what is remembered."""
    remember_rest(tmp_path, _outcome(UsedSheet(LABELS.name, frozenset({1, 2}))))
    assert go_on(tmp_path, typed) == typed


@pytest.mark.parametrize(
    "vague",
    [PrintOptions(kinds=(END_LABEL,)), PrintOptions(kinds=(END_LABEL, LID_CARD), stock=LABELS)],
    ids=["no stock", "two kinds"],
)
def test_one_sheet_must_be_meant(tmp_path: Path, vague: PrintOptions) -> None:
    """Two files cannot both go on with one sheet."""
    with pytest.raises(typer.BadParameter, match="one --stock and one --kind"):
        go_on(tmp_path, vague)
