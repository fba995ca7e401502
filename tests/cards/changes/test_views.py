"""Tests for what cards of every kind have in common."""

from __future__ import annotations

from dataclasses import replace

import pytest

from service.cards.card import LidCard
from service.cards.changes.facts import Fact
from service.cards.changes.views import (
    cautions_of,
    discreet_numbers,
    hazards_of,
    items_of,
    layers_of,
    lift_of,
)
from service.records.record import Hazard, HazardState, PlaceRecord
from tests.cards.changes.cases import JAR, changed, collection, compose

ARSENIC = Hazard("arsenic", HazardState.PRESUMED)
RECORDS = collection(changed(JAR, hazards=(ARSENIC,), cautions=("light-sensitive", "fragile")))
KINDS = ("lid", "end", "list")
FLAT = (PlaceRecord("1987.412.9", compartment="A1"), PlaceRecord("1931.14.2", compartment="B2"))


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
    assert layers_of(compose("list", RECORDS)) == ("layer 1", "layer 2")


@pytest.mark.parametrize("kind", ["lid", "list", "cover", "side"])
def test_one_layer_alone_has_no_name(kind: str) -> None:
    """A card that names no layer shows each object at its compartment."""
    flat = replace(RECORDS, packings=(replace(RECORDS.packings[0], places=FLAT),))
    found = items_of(compose(kind, flat))
    assert [(item.layer, item.place, item.object_number) for item in found] == [
        ("", "A1", "1987.412.9"),
        ("", "B2", "1931.14.2"),
    ]


def test_a_layer_keeps_its_name_while_others_come_and_go() -> None:
    """Neither top nor bottom, nor the title of a container inside, belongs to its name."""
    card = compose("lid", RECORDS)
    assert isinstance(card, LidCard)
    headings = ("Layer 1, top", "Layer 2", "Layer 3, bottom", "In box B-042/1: Pins")
    layers = tuple(replace(card.layers[0], heading=heading) for heading in headings)
    named = [item.layer for item in items_of(replace(card, layers=layers))]
    assert named == ["layer 1", "layer 2", "layer 3", "in box B-042/1"]


def test_a_tag_names_no_object() -> None:
    """It is tied to the only one, so that its hazard is nobody else's."""
    firearm = collection(changed(JAR, hazards=(ARSENIC, Hazard("firearm", HazardState.CONFIRMED))))
    tag = compose("tag", firearm)
    assert set(hazards_of(tag)) == {Fact("Arsenic", "presumed", ""), Fact("Do not open", "", "")}
    assert discreet_numbers(tag) == frozenset()


def test_the_lift_is_found_on_every_kind() -> None:
    """Every card says how to lift."""
    assert {lift_of(compose(kind, RECORDS)).figure_kg for kind in (*KINDS, "cover")} == {"5.6"}


def test_discreet_objects_are_known_by_number() -> None:
    """What must be asked for is known from the card alone."""
    firearm = collection(changed(JAR, hazards=(Hazard("firearm", HazardState.CONFIRMED),)))
    assert discreet_numbers(compose("lid", firearm)) == {"1987.412.9"}
    assert discreet_numbers(compose("lid", RECORDS)) == frozenset()
