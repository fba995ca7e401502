from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from service.cards.card import ListEntry
from service.cards.compose.contents_list import compose_contents_list
from service.records.museum.region import Region
from service.records.record import (
    ContainerRecord,
    Hazard,
    HazardState,
    ObjectRecord,
    Part,
    PhotoReference,
    PlaceRecord,
    Weight,
    WeightBasis,
)
from tests.contents.made import BOX, MUSEUM, objects, packing

FULL = ObjectRecord(
    "1987.412.1",
    title="Tea set",
    object_name="tableware",
    period="c. 1905",
    number_of_parts=3,
    parts=(Part("a", "pot"), Part("b")),
    accessories=("Tray", "Box"),
    materials=("china", "gilt"),
    dimensions_text="H 12 cm",
    weight=Weight(900.0, WeightBasis.ESTIMATED),
    condition="One chip",
    handling_notes="Lift by the body",
    cautions=("fragile", "loose-parts"),
    former_numbers=("L 12",),
    photos=(PhotoReference("set.jpg"),),
)


def entry(record: ObjectRecord, place: PlaceRecord | None = None) -> ListEntry:
    """Word one object's row."""
    places = [place] if place else ()
    return compose_contents_list(packing([record], places=places), MUSEUM).entries[0]


def test_everything_recorded_is_in_full_words() -> None:
    """The list keeps what the outside has no room for."""
    made = entry(FULL, PlaceRecord("1987.412.1", ("a",)))
    assert made.details == (
        "tableware · c. 1905",
        "3 parts: a pot, b · china, gilt",
        "H 12 cm · about 0.9 kg",
        "Condition: One chip",
        "Fragile, Loose parts",
        "Lift by the body",
        "With it: Tray; Box",
        "Former numbers: L 12",
        "here: a",
    )
    assert (made.title, made.photo, made.photo_words) == ("Tea set", "set.jpg", "")


def test_a_silent_record_says_so() -> None:
    """An object never weighed is not weightless, one without a photo has its reason."""
    made = entry(ObjectRecord("1", object_name="pin"))
    assert (made.title, made.details, made.photo_words) == ("pin", ("not weighed",), "no photo yet")


def test_a_measured_weight_stands_alone() -> None:
    """Only an estimate is called about."""
    assert entry(ObjectRecord("1", weight=Weight(900.0))).details == ("0.9 kg",)


def test_a_restricted_object_is_named_but_not_shown() -> None:
    """Inside, the title helps whoever may open it; the photo helps nobody."""
    made = entry(replace(FULL, restricted=True))
    assert (made.title, made.photo, made.photo_words) == ("Tea set", "", "not shown")


@pytest.mark.parametrize(
    ("hazard", "words"),
    [
        (
            Hazard(
                "arsenic",
                HazardState.CONFIRMED,
                "green paint.",
                "XRF",
                date(2024, 5, 3),
                "I. Hale",
                date(2029, 5, 3),
            ),
            (
                "Arsenic confirmed (XRF, 3 May 2024, I. Hale, review 3 May 2029). Green paint."
                " Gloves. Do not brush or shake. Wash hands."
                " Nitrile gloves; where there is dust, coveralls and a dust mask."
                " Ask a conservator or health and safety adviser."
            ),
        ),
        (
            Hazard("firearm", HazardState.PRESUMED),
            (
                "Firearm presumed. Treat as loaded. Authorised staff only."
                " Nothing that is worn protects: leave it to authorised staff."
                " Ask the firearms curator or police firearms licensing."
            ),
        ),
    ],
    ids=["all that is known", "named inside"],
)
def test_hazards_in_full(hazard: Hazard, words: str) -> None:
    """State, check, note, first precautions and whom to ask stand in one paragraph."""
    assert entry(replace(FULL, hazards=(hazard,))).hazards == (words,)


@pytest.mark.parametrize(
    ("region", "whom"),
    [
        (Region.UK, "an HSE-recognised radiation protection adviser"),
        (Region.US, "the state radiation control program"),
        (Region.ELSEWHERE, "the radiation protection adviser"),
    ],
)
def test_whom_to_consult_follows_the_region(region: Region, whom: str) -> None:
    """Each country has its own people; nested objects name them too."""
    record = replace(FULL, hazards=(Hazard("radium", HazardState.PRESUMED),))
    made = replace(packing([record]), nested=(packing([record], ContainerRecord("T-1")),))
    card = compose_contents_list(made, replace(MUSEUM, region=region))
    assert [one.hazards[0].rpartition("Ask ")[2] for one in card.entries] == [f"{whom}."] * 2


def test_places_and_nested_containers() -> None:
    """Layers are named where there are several; what lies in a tray follows and names it."""
    places = [PlaceRecord("1987.412.1", layer=1, compartment="A1")]
    places += [PlaceRecord("1987.412.2", layer=2)]
    tray = packing(objects(3)[2:], ContainerRecord("T-1"))
    made = replace(packing(objects(2), places=places), nested=(tray,))
    card = compose_contents_list(made, MUSEUM)
    assert [one.place for one in card.entries] == ["layer 1 A1", "layer 2", "T-1"]
    assert card.count_words == "3 objects"


def test_notes_of_the_container() -> None:
    """Materials, the day to repack, handling and the reason of the packing stand at the head."""
    box = replace(
        BOX,
        packing_materials=("acid-free board", "archival polyester film"),
        temporary_until=date(2027, 3, 1),
        handling_notes="Two straps",
    )
    made = replace(packing(objects(1), box), reason="Rehoused")
    assert compose_contents_list(made, MUSEUM).notes == (
        "Packed with: acid-free board, archival polyester film",
        "Temporary: repack by 1 Mar 2027",
        "Two straps",
        "Reason of this packing: Rehoused",
    )
    assert compose_contents_list(packing(objects(1)), MUSEUM).notes == ()
