from __future__ import annotations

import pytest

from service.handling.materials import (
    MATERIALS,
    METALS,
    find_material,
    is_textile,
    object_material,
)
from service.records.record import Hazard, HazardState, ObjectRecord


@pytest.mark.parametrize(
    ("item", "group"),
    [
        ("wool bunting", "wool"),
        ("oak", "oak"),
        ("brass wire", "copper alloy"),
        ("nickel silver", "copper alloy"),
        ("gelatin silver print", "silver"),
        ("lead", "lead"),
        ("corrugated cardboard", "acid board"),
        ("india rubber", "rubber"),
        ("mother-of-pearl", "shell"),
        ("tinplate", "iron"),
    ],
)
def test_a_synonym_is_of_its_group(item: str, group: str) -> None:
    """What a record calls the material is found, and given back as it was written."""
    assert find_material(("ivory", item), group) == item


@pytest.mark.parametrize(
    ("item", "group"),
    [
        ("cotton wool", "wool"),
        ("steel wool", "wool"),
        ("nickel silver", "silver"),
        ("silver birch", "silver"),
        ("lead crystal", "lead"),
        ("white lead", "lead"),
        ("acid-free cardboard", "acid board"),
        ("silicone rubber", "rubber"),
        ("cloak", "oak"),
        ("iron gall ink", "iron"),
        ("brass shell case", "shell"),
        ("shellac", "shell"),
        ("unbuffered tissue", "buffered tissue"),
        ("polyvinyl acetate", "acetate film"),
        ("celluloid", "nitrate film"),
    ],
)
def test_what_only_looks_like_it_is_not(item: str, group: str) -> None:
    """A word within a word, or within the name of something else, is no match."""
    assert find_material((item,), group) == ""


def test_a_hazard_can_be_a_material() -> None:
    """Nitrate film that only the hazard names is found, with how sure one is."""
    record = ObjectRecord("1", hazards=(Hazard("nitrate-film", HazardState.PRESUMED),))
    assert object_material(record, "nitrate film") == "nitrate film, presumed"
    assert object_material(record, "acetate film") == ""


@pytest.mark.parametrize(
    ("record", "textile"),
    [
        (ObjectRecord("1", materials=("cotton", "brass")), True),
        (ObjectRecord("1", materials=("brass", "steel", "cotton")), False),
        (ObjectRecord("1", object_name="evening dress"), True),
        (ObjectRecord("1", object_name="hat pin case", materials=("tinplate",)), False),
        (ObjectRecord("1"), False),
    ],
    ids=["cotton first", "cotton last", "by its name", "tin case", "silent"],
)
def test_a_textile_is_told_by_its_main_material(record: ObjectRecord, *, textile: bool) -> None:
    """The first material decides, the name only where no material is recorded."""
    assert is_textile(record) is textile


def test_every_group_has_words_in_small_letters() -> None:
    """Phrases are compared with words in small letters without signs, and metals are groups."""
    for group in MATERIALS.values():
        for phrase in (*group.words, *group.unless):
            assert phrase == " ".join(phrase.lower().replace("-", " ").split())
    assert set(METALS) <= set(MATERIALS)


def test_cloth_is_what_is_mainly_of_cloth() -> None:
    """Records name the main material first (common practice, no source)."""
    assert is_textile(ObjectRecord("1", materials=("cotton", "brass")))
    assert not is_textile(ObjectRecord("1", materials=("brass", "cotton")))
