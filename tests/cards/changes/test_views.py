"""Tests for what cards of every kind have in common."""

from __future__ import annotations

from service.cards.changes.facts import Fact
from service.cards.changes.views import (
    cautions_of,
    discreet_numbers,
    hazards_of,
    items_of,
    layers_of,
    lift_of,
)
from service.records.record import Hazard, HazardState
from tests.cards.changes.cases import JAR, changed, collection, compose

ARSENIC = Hazard("arsenic", HazardState.PRESUMED)
RECORDS = collection(changed(JAR, hazards=(ARSENIC,), cautions=("light-sensitive", "fragile")))
KINDS = ("lid", "end", "list")


def test_hazards_are_found_on_every_kind() -> None:
    """Wherever a card says it, it is the same fact about the same object."""
    for kind in KINDS:
        assert hazards_of(compose(kind, RECORDS)) == (Fact("Arsenic", "presumed", "1987.412.9"),)


def test_cautions_are_found_beside_objects_and_on_the_strip() -> None:
    """The lid card puts one beside the object and one on the strip; the list has both in words."""
    assert set(cautions_of(compose("lid", RECORDS))) == {
        Fact("Keep from light", "", "1987.412.9"),
        Fact("Fragile", "", ""),
    }
    assert {fact.name for fact in cautions_of(compose("list", RECORDS))} == {
        "Keep from light",
        "Fragile",
    }


def test_objects_and_layers_are_found() -> None:
    """An end label shows no object; the others show each where it lies."""
    for kind in ("lid", "list"):
        found = [
            (item.layer, item.place, item.object_number)
            for item in items_of(compose(kind, RECORDS))
        ]
        assert found == [("layer 1", "A1", "1987.412.9"), ("layer 2", "", "1931.14.2")]
    assert items_of(compose("end", RECORDS)) == ()
    assert layers_of(compose("lid", RECORDS)) == ("Layer 1, top", "Layer 2, bottom")


def test_the_lift_is_found_on_every_kind() -> None:
    """Every card says how to lift."""
    assert {lift_of(compose(kind, RECORDS)).figure_kg for kind in (*KINDS, "cover")} == {"5.6"}


def test_discreet_objects_are_known_by_number() -> None:
    """What must be asked for is known from the card alone."""
    firearm = collection(changed(JAR, hazards=(Hazard("firearm", HazardState.CONFIRMED),)))
    assert discreet_numbers(compose("lid", firearm)) == {"1987.412.9"}
    assert discreet_numbers(compose("lid", RECORDS)) == frozenset()
