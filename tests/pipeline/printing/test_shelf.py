"""Tests for the plates of one run."""

from __future__ import annotations

import pytest

from service.geometry import Rect, Size
from service.pipeline.printing.shelf import Shelf
from service.render.plates.plate import Plate, PlateProof, ProvedPlate

PROVED = ProvedPlate(
    Plate(Size(10, 10), b"", (), (), (), "words"), PlateProof(0, 0, 0, 0, Rect(0, 0, 1, 1))
)


def test_what_was_put_there_is_given_back() -> None:
    """A plate is found by its key, alone and with its proof."""
    shelf = Shelf()
    shelf.add({"a": PROVED})
    assert shelf.holds("a")
    assert not shelf.holds("b")
    assert shelf.plates(["a"]) == {"a": PROVED.plate}
    assert shelf.proved(["a"]) == {"a": PROVED}


def test_what_is_missing_is_an_error() -> None:
    """Nothing is composed of plates that were never made."""
    with pytest.raises(KeyError):
        Shelf().plates(["a"])
