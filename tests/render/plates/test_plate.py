"""Tests for plates as values."""

from __future__ import annotations

from dataclasses import FrozenInstanceError, fields

import pytest

from service.geometry import Rect, Size
from service.render.plates.plate import Plate, PlateProof, ProvedPlate

PLATE = Plate(Size(10, 10), b"", (), (), (), "words")


def test_a_plate_cannot_be_changed_after_its_proof() -> None:
    """What was proved is what is printed."""
    proved = ProvedPlate(PLATE, PlateProof(1, 0, 0, 0, Rect(0, 0, 1, 1)))
    for value, kind in ((proved, ProvedPlate), (PLATE, Plate)):
        for field in fields(kind):
            with pytest.raises(FrozenInstanceError):
                setattr(value, field.name, None)


def test_a_plate_knows_no_place() -> None:
    """It can stand anywhere: nothing of it says where, how often, or on which sheet."""
    assert {field.name for field in fields(Plate)}.isdisjoint({"rect", "position", "sheet", "key"})
