from __future__ import annotations

from dataclasses import replace
from datetime import date

from service.cards.compose.asked.warning_label import compose_warning_label, has_hazards
from service.cards.parts import HazardGroup, WarnedObject
from service.records.record import Hazard, HazardState, PlaceRecord
from tests.contents.made import MUSEUM, hazard, objects, packing

ONE, TWO, THREE = objects(3)


def test_one_group_a_hazard_with_every_object() -> None:
    """The best known comes first; state, date, method, who and review are told of each."""
    checked = Hazard(
        "lead", HazardState.CONFIRMED, "", "XRF", date(2024, 3, 12), "R. Vane", date(2027, 3, 12)
    )
    made = packing(
        [
            replace(ONE, hazards=(hazard("lead", HazardState.UNCHECKED),)),
            replace(TWO, hazards=(checked,)),
            replace(THREE, hazards=(hazard("radium", HazardState.PRESUMED),)),
        ],
        places=[
            PlaceRecord(ONE.object_number, compartment="A1"),
            PlaceRecord(TWO.object_number, compartment="B2"),
            PlaceRecord(THREE.object_number, layer=2),
        ],
    )
    card = compose_warning_label(made, MUSEUM)
    desk = "a conservator or health and safety adviser"
    day, review = "12\N{NO-BREAK SPACE}Mar\N{NO-BREAK SPACE}2024", "12\N{NO-BREAK SPACE}Mar"
    assert card.groups == (
        HazardGroup(
            "radiation",
            "Radium",
            "Keep closed. Keep your distance, stay briefly.",
            "the radiation protection adviser",
            (WarnedObject("layer 2", "1987.412.3", THREE.title, "presumed", "check not dated"),),
            "Nitrile gloves",
        ),
        HazardGroup(
            "toxic",
            "Lead",
            "Gloves. Do not disturb dust. Wash hands.",
            desk,
            (
                WarnedObject(
                    "layer 1 B2",
                    "1987.412.2",
                    TWO.title,
                    "confirmed",
                    f"checked {day}, XRF, R. Vane · review {review}\N{NO-BREAK SPACE}2027",
                ),
                WarnedObject("layer 1 A1", "1987.412.1", ONE.title, "not checked", ""),
            ),
            "Thin nitrile gloves; where there is dust, coveralls and a dust mask",
        ),
    )
    assert (card.head.query, len(card.head.check_letters)) == ("", 4)


def test_what_may_not_be_announced_says_only_whom_to_ask() -> None:
    """No name, no object, no title; a second such object changes nothing outside."""
    firearm = replace(ONE, title="Revolver", hazards=(hazard("firearm"), hazard("lead")))
    remains = replace(TWO, title="Lock of hair", hazards=(hazard("human-remains"),))
    card = compose_warning_label(packing([firearm, remains]), MUSEUM)
    assert [(group.name, group.instruction, group.objects) for group in card.groups][0::2] == [
        ("Do not open", "Ask Collections desk", ()),
        ("Restricted", "Do not open: ask Collections desk", ()),
    ]
    said = str(card)
    assert "Revolver" not in said
    assert "Lock of hair" not in said
    assert "irearm" not in said
    assert "emains" not in said


def test_what_there_is_to_warn_of() -> None:
    """A caution alone is no hazard."""
    assert not has_hazards(packing([replace(ONE, cautions=("fragile",))]))
    assert has_hazards(packing([ONE, replace(TWO, hazards=(hazard("odd-dust"),))]))
