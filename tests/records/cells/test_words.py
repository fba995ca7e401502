from __future__ import annotations

from collections.abc import Callable

import pytest

from service.records.cells.words import (
    find_code,
    read_choice,
    read_codes,
    read_compartment,
    read_count,
    read_grid,
    read_kind,
    read_stacking_limit,
    read_yes_or_no,
)
from service.records.codes import CAUTION_CODES
from service.records.measures import Grid
from service.records.record import ContainerKind, Lid
from service.records.rows.cell import Cell

MakeCell = Callable[[str], Cell]


def codes_of(cell: Cell) -> list[str]:
    """Give the codes of what was noted at a cell."""
    return [finding.code for finding in cell.notebook.findings()]


@pytest.mark.parametrize("text", ["this-way-up", "This way up", "THIS_WAY_UP", " this way  up "])
def test_code_is_found_however_written(text: str) -> None:
    """Capitals, blanks and underscores do not hide a code."""
    assert find_code(text, CAUTION_CODES) == "this-way-up"


def test_unknown_code_is_kept_as_written(make_cell: MakeCell) -> None:
    """A caution nobody foresaw still reaches the card."""
    cell = make_cell("Fragile; Smells odd; fragile")
    read = read_codes(cell, CAUTION_CODES, finding="unknown-caution")
    assert read == ("fragile", "Smells odd")
    assert codes_of(cell) == ["unknown-caution"]


@pytest.mark.parametrize(
    ("text", "kind", "codes"),
    [
        ("", ContainerKind.BOX, []),
        ("Garment_Cover", ContainerKind.GARMENT_COVER, []),
        ("drawers", ContainerKind.DRAWER, []),
        ("crate", ContainerKind.BOX, ["unknown-container-kind"]),
    ],
)
def test_kind_is_one_of_the_list(
    make_cell: MakeCell, text: str, kind: ContainerKind, codes: list[str]
) -> None:
    """An unknown kind is treated as a box and noted."""
    cell = make_cell(text)
    assert read_kind(cell) is kind
    assert codes_of(cell) == codes


def test_lid_has_no_word_that_means_nothing(make_cell: MakeCell) -> None:
    """A lid of "none" is a container without lid, not an empty cell."""
    lid = read_choice(make_cell("none"), Lid, default=Lid.OPAQUE, finding="unknown-lid")
    assert lid is Lid.NONE


@pytest.mark.parametrize(
    ("text", "answer", "codes"),
    [
        ("Yes", True, []),
        ("x", True, []),
        ("TRUE", True, []),
        ("no", False, []),
        ("0", False, []),
        ("", False, []),
        ("perhaps", True, ["unreadable-yes-or-no"]),
    ],
)
def test_yes_or_no(make_cell: MakeCell, text: str, answer: bool, codes: list[str]) -> None:  # noqa: FBT001 (a case of a table)
    """Usual words are understood, and doubt goes to the side the caller names."""
    cell = make_cell(text)
    assert read_yes_or_no(cell, empty=False, unclear=True) is answer
    assert codes_of(cell) == codes


@pytest.mark.parametrize(
    ("text", "count", "codes"),
    [
        ("3", 3, []),
        ("3.0", 3, []),
        ("", None, []),
        ("unknown", None, []),
        (">20", None, ["unreadable-count"]),
        ("0", None, ["unreadable-count"]),
        ("-1", None, ["unreadable-count"]),
        ("٣", None, ["unreadable-count"]),
        ("9" * 5000, None, ["unreadable-count"]),
    ],
    ids=lambda value: str(value)[:12],
)
def test_count_is_a_whole_number(
    make_cell: MakeCell, text: str, count: int | None, codes: list[str]
) -> None:
    """A count that is no whole number is left out and noted."""
    cell = make_cell(text)
    assert read_count(cell) == count
    assert codes_of(cell) == codes


@pytest.mark.parametrize(
    ("text", "limit", "codes"),
    [
        ("2", 2, []),
        ("1 box on top", 1, []),
        ("nothing on top", 0, []),
        ("0", 0, []),
        ("", None, []),
        ("heavy ones", None, ["unreadable-count"]),
    ],
)
def test_stacking_limit_may_be_nothing(
    make_cell: MakeCell, text: str, limit: int | None, codes: list[str]
) -> None:
    """Nothing on top is a limit of 0, which differs from not known."""
    cell = make_cell(text)
    assert read_stacking_limit(cell) == limit
    assert codes_of(cell) == codes


@pytest.mark.parametrize(
    ("text", "grid", "codes"),
    [
        ("3 x 2", Grid(3, 2), []),
        ("4\u00d73", Grid(4, 3), []),
        ("3 by 2", Grid(3, 2), []),
        ("", None, []),
        ("3", None, ["unreadable-grid"]),
        ("2 x 27", None, ["unreadable-grid"]),
        ("0 x 2", None, ["unreadable-grid"]),
    ],
)
def test_grid_is_columns_by_rows(
    make_cell: MakeCell, text: str, grid: Grid | None, codes: list[str]
) -> None:
    """Rows are lettered, so that there are at most 26 of them."""
    cell = make_cell(text)
    assert read_grid(cell) == grid
    assert codes_of(cell) == codes


@pytest.mark.parametrize(
    ("text", "compartment", "codes"),
    [
        ("B3", "B3", []),
        ("b03", "B3", []),
        ("", "", []),
        ("left tray", "left tray", ["unreadable-place"]),
    ],
)
def test_compartment_is_letter_and_number(
    make_cell: MakeCell, text: str, compartment: str, codes: list[str]
) -> None:
    """A compartment of another form is kept as written, so that a person still finds it."""
    cell = make_cell(text)
    assert read_compartment(cell) == compartment
    assert codes_of(cell) == codes
