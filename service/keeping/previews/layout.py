"""How a planned file lies on its sheets: what is put on each position, and why others stay free."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from enum import StrEnum

from service.pipeline.options import CardKey, card_key
from service.pipeline.printing.lay import LaidFile
from service.sheets.impose import Sheet


class PositionState(StrEnum):
    """What becomes of a position of a sheet."""

    FILLED = "filled"
    """A page is put there."""
    SKIPPED = "skipped"
    """It lies before the start that was asked for, or was named as spoiled."""
    USED = "used"
    """It was gone when the sheet was last printed on."""
    NOT_REACHED = "not-reached"
    """It is free, but the printer cannot ink the page there."""
    FREE = "free"
    """Nothing is put there; the next run can begin on it."""


@dataclass(frozen=True, slots=True)
class PlannedPosition:
    """One position, counted from 1; where it is filled, with which face of which card."""

    position: int
    state: PositionState
    key: CardKey | None = None
    copy: int = 0
    face: int = 0


@dataclass(frozen=True, slots=True)
class PlannedSheet:
    """One sheet, counted from 1, with every position it has."""

    number: int
    positions: tuple[PlannedPosition, ...]

    @property
    def is_begun(self) -> bool:
        """Whether it is a sheet that was printed on before."""
        return any(one.state is PositionState.USED for one in self.positions)


_Placed = Mapping[tuple[int, int], PlannedPosition]


def tell_sheets(laid: LaidFile, *, goes_on: bool) -> tuple[PlannedSheet, ...]:
    """Tell what lies on each position; `goes_on` where the run takes sheets that were begun."""
    placed = {(sheet, at.position): at for sheet, at in _filled(laid)}
    return tuple(_tell_sheet(sheet, laid, placed, goes_on=goes_on) for sheet in laid.sheets)


def _filled(laid: LaidFile) -> Iterator[tuple[int, PlannedPosition]]:
    for card in laid.file.placed:
        key = card_key(card.card)
        for face, (sheet, position) in enumerate(card.places, start=1):
            yield (
                sheet,
                PlannedPosition(position, PositionState.FILLED, key, card.copy, face),
            )


def _tell_sheet(sheet: Sheet, laid: LaidFile, placed: _Placed, *, goes_on: bool) -> PlannedSheet:
    gone = _gone_before(sheet, laid)
    because = PositionState.USED if goes_on else PositionState.SKIPPED
    positions = []
    for position in range(1, sheet.stock.positions + 1):
        state = PositionState.FREE
        if position in sheet.passed_over:
            state = PositionState.NOT_REACHED
        elif position in gone:
            state = because
        empty = PlannedPosition(position, state)
        positions.append(placed.get((sheet.number, position), empty))
    return PlannedSheet(sheet.number, tuple(positions))


def _gone_before(sheet: Sheet, laid: LaidFile) -> frozenset[int]:
    """Give the positions that were gone; a sheet with a page on one of them is a fresh one."""
    before = frozenset(range(1, laid.start.position)) | laid.start.skipped
    taken = {placement.position for placement in sheet.placements}
    return before if sheet.number == 1 and not taken & before else frozenset()
