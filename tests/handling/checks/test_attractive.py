from __future__ import annotations

import pytest

from service.handling.checks.attractive import holds_natural_history, holds_textiles
from service.records.record import ObjectRecord
from tests.contents.made import GARMENT_COVER, packing


@pytest.mark.parametrize("material", ["wool", "Silk net", "washed cottons", "linen; brass"])
def test_textiles_are_found_by_a_word(material: str) -> None:
    """Any word of a material tells, whatever its case and number."""
    assert holds_textiles(packing([ObjectRecord("X.1", materials=(material,))]))


@pytest.mark.parametrize("material", ["boxwood", "woolen-coloured glass", "brass", ""])
def test_other_materials_are_none(material: str) -> None:
    """Part of a word is not the word, and a silent record tells nothing."""
    made = packing([ObjectRecord("X.1", materials=(material,))])
    assert not holds_textiles(made)
    assert not holds_natural_history(made)


def test_one_thing_among_others_is_enough() -> None:
    """A box is looked into as often as its most attractive content asks for."""
    made = packing(
        [ObjectRecord("X.1", materials=("brass",)), ObjectRecord("X.2", materials=("wool",))]
    )
    assert holds_textiles(made)


def test_a_garment_cover_counts_whatever_it_holds() -> None:
    """It is made for textiles."""
    assert holds_textiles(packing([ObjectRecord("X.1")], GARMENT_COVER))


def test_natural_history_is_found_in_name_or_material() -> None:
    """A mounted fish by its name, a pen by its quill; a brass bird by nothing but its title."""
    assert holds_natural_history(packing([ObjectRecord("X.1", object_name="mounted fish")]))
    assert holds_natural_history(packing([ObjectRecord("X.1", materials=("quills",))]))
    assert not holds_natural_history(packing([ObjectRecord("X.1", "Bird", materials=("brass",))]))
