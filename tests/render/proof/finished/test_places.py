from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.geometry import Insets, Rect
from service.render.compose.place import placed_matrix
from service.render.proof.finished.places import Places
from service.sheets.correction import NO_CORRECTION, Correction
from service.sheets.impose import Placement
from service.sheets.stock import Stock
from tests.render.proof.finished.made_file import FACE, INK, sent_matrix, stock

UPRIGHT, LYING = stock(), stock(columns=2, rows=1, label=FACE.turned)
PLACED = Placement("a1", 1, UPRIGHT.position_rect(1), 0)
TURNED = Placement("a1", 2, LYING.position_rect(2), 90)
_SLANT = st.floats(-0.004, 0.004)
_SHIFT = st.floats(-3.0, 3.0)
_STRETCH = st.floats(0.995, 1.005)


@pytest.mark.parametrize(
    ("kind", "placement"), [(UPRIGHT, PLACED), (LYING, TURNED)], ids=["upright", "turned"]
)
def test_the_composers_matrix_is_where_the_face_belongs(kind: Stock, placement: Placement) -> None:
    """What was worked out by other means is the same place."""
    matrix = placed_matrix(placement.rect, page=kind.page, turned_deg=placement.turned_deg)
    places = Places(kind, NO_CORRECTION, Insets(4.0, 4.0, 4.0, 4.0))
    assert list(places.faults(matrix, placement, FACE, INK)) == []


@given(st.builds(Correction, _STRETCH, _SLANT, _SLANT, _STRETCH, _SHIFT, _SHIFT))
def test_every_correction_moves_the_corners(correction: Correction) -> None:
    """The matrix that sends three corners where they belong has no fault, and no other has none."""
    for kind, placement in ((UPRIGHT, PLACED), (LYING, TURNED)):
        places = Places(kind, correction, Insets(0.0, 0.0, 0.0, 0.0))
        matrix = sent_matrix(placement.rect, placement.turned_deg, correction, kind.page)
        assert list(places.faults(matrix, placement, FACE, INK)) == []
        for index in range(6):
            step = 0.01 if index > 3 else 0.0001
            off = (*matrix[:index], matrix[index] + step, *matrix[index + 1 :])
            assert list(places.faults(off, placement, FACE, INK)) != []


@pytest.mark.parametrize(
    ("ink", "reaches"),
    [
        (Rect(1.0, 5.0, 20.0, 5.0), False),
        (Rect(5.0, 5.0, 20.0, 5.0), True),
    ],
)
def test_ink_of_a_turned_face_is_found_at_its_side(ink: Rect, *, reaches: bool) -> None:
    """The left edge of a face turned clockwise lies on top."""
    kind = replace(LYING, top_mm=0.0)
    placement = replace(TURNED, rect=kind.position_rect(2))
    matrix = placed_matrix(placement.rect, page=kind.page, turned_deg=90)
    faults = list(
        Places(kind, NO_CORRECTION, Insets(4.0, 4.0, 4.0, 4.0)).faults(matrix, placement, FACE, ink)
    )
    assert (faults == []) is reaches


@pytest.mark.parametrize(
    ("shift_mm", "fault"),
    [(0.0, False), (-17.0, True), (17.0, False), (-1.0, False)],
)
def test_ink_is_sent_where_the_printer_prints(shift_mm: float, *, fault: bool) -> None:
    """A correction may not send the ink of a sound position beyond the printer's reach."""
    correction = Correction(shift_x_mm=shift_mm)
    edges = Insets(8.5, 8.5, 8.5, 8.5)
    matrix = sent_matrix(PLACED.rect, 0, correction, UPRIGHT.page)
    faults = list(Places(UPRIGHT, correction, edges).faults(matrix, PLACED, FACE, INK))
    assert bool(faults) is fault


def test_ink_must_land_where_the_printer_prints_well() -> None:
    """What a shifted print brings into reach still lies on the strip along the paper's edge."""
    correction, edges = Correction(shift_x_mm=20.0), Insets(30.0, 30.0, 30.0, 30.0)
    matrix = sent_matrix(PLACED.rect, 0, correction, UPRIGHT.page)
    (fault,) = Places(UPRIGHT, correction, edges).faults(matrix, PLACED, FACE, INK)
    assert "beyond the printer's reach" in fault
