"""Words and small numbers: codes, choices, yes and no, counts, grids, compartments."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from enum import StrEnum
from typing import TypeVar

from service.records.measures import Grid
from service.records.record import ContainerKind
from service.records.rows.cell import Cell
from service.records.rows.text import quote_text
from service.sentence import Sentence

Choice = TypeVar("Choice", bound=StrEnum)

_YES = frozenset(("yes", "y", "true", "t", "1", "x", "on", "✓"))
_NO = frozenset(("no", "n", "false", "f", "0", "off"))
_COUNT = re.compile(r"([0-9]{1,9})(?:\.0+)?")
_STACK = re.compile(
    r"(?:nothing|no box(?:es)?|([0-9]{1,3})(?: box(?:es)?)?)(?: on top)?", re.IGNORECASE
)
_GRID = re.compile(r"([0-9]{1,2})\s*(?:[x\u00d7*,]|by)\s*([0-9]{1,2})", re.IGNORECASE)
_COMPARTMENT = re.compile(r"([A-Z])0*([1-9][0-9]?)")
_ROWS_LIMIT = 26  # Rows are lettered A to Z.


def find_code(text: str, codes: Iterable[str]) -> str | None:
    """Find the code a text means; blanks, underscores and capitals do not matter."""
    wanted = "-".join(re.split(r"[\s_-]+", text.casefold().strip()))
    return next((code for code in codes if code == wanted), None)


def read_codes(cell: Cell, codes: Sequence[str], *, finding: str) -> tuple[str, ...]:
    """Read a list of codes; unknown ones are kept as written and noted under `finding`."""
    if cell.listed is None and not cell.value:
        return ()
    read = []
    for written in cell.texts():
        code = find_code(written, codes)
        if code is None:
            cell.note(
                finding, Sentence("{written} is not in the list.", written=quote_text(written))
            )
        if (code or written) not in read:
            read.append(code or written)
    return tuple(read)


def read_choice(cell: Cell, choices: type[Choice], *, default: Choice, finding: str) -> Choice:
    """Read one of a few words; `default` where the cell is empty or holds another word."""
    text = " ".join(cell.text.casefold().replace("_", " ").replace("-", " ").split())
    # The choices come first: a lid of "none" is a choice, not a word for nothing.
    for choice in choices:
        if text in {choice.value, f"{choice.value}s"}:
            return choice
    if not cell.value:
        return default
    cell.note(
        finding,
        Sentence(
            "{text} is not one of {choices}.",
            text=quote_text(cell.text),
            choices=", ".join(choices),
        ),
    )
    return default


def read_kind(cell: Cell) -> ContainerKind:
    """Read the kind of a container."""
    return read_choice(
        cell, ContainerKind, default=ContainerKind.BOX, finding="unknown-container-kind"
    )


def read_yes_or_no(cell: Cell, *, empty: bool, unclear: bool) -> bool:
    """Read yes or no; `empty` and `unclear` say what other cells count as."""
    text = cell.text.casefold()
    if not text:
        return empty
    if text in _YES or text in _NO:
        return text in _YES
    taken = "yes" if unclear else "no"
    cell.note(
        "unreadable-yes-or-no",
        Sentence(
            "{text} is neither yes nor no; it was taken as {taken}.",
            text=quote_text(cell.text),
            taken=taken,
        ),
    )
    return unclear


def read_count(cell: Cell, *, finding: str = "unreadable-count") -> int | None:
    """Read a whole number from 1; None where the cell is empty or was not understood."""
    if not cell.value:
        return None
    match = _COUNT.fullmatch(cell.value)
    count = int(match[1]) if match else 0
    if not count:
        cell.note(
            finding, Sentence("{text} is not a whole number from 1.", text=quote_text(cell.text))
        )
    return count or None


def read_stacking_limit(cell: Cell) -> int | None:
    """Read how many boxes may stand on top, 0 for none; None where it is not known."""
    match = _STACK.fullmatch(cell.value)
    if cell.value and match is None:
        cell.note(
            "unreadable-count",
            Sentence("{text} is not a number of boxes.", text=quote_text(cell.text)),
        )
    return int(match[1] or 0) if match else None


def read_grid(cell: Cell) -> Grid | None:
    """Read columns x rows; None where the cell is empty or was not understood."""
    if not cell.value:
        return None
    match = _GRID.fullmatch(cell.value)
    columns, rows = (int(match[1]), int(match[2])) if match else (0, 0)
    if not columns or not 0 < rows <= _ROWS_LIMIT:
        cell.note(
            "unreadable-grid",
            Sentence(
                "{text} is not a grid of up to 99 columns and 26 rows.", text=quote_text(cell.text)
            ),
        )
        return None
    return Grid(columns, rows)


def read_compartment(cell: Cell) -> str:
    """Read a compartment such as B3; one of another form is kept as written and noted."""
    if not cell.value:
        return ""
    match = _COMPARTMENT.fullmatch(cell.value.upper())
    if match is None:
        cell.note(
            "unreadable-place",
            Sentence("{text} is not a compartment such as B3.", text=quote_text(cell.text)),
        )
        return cell.text
    return match[1] + match[2]
