"""Which materials are kept apart, against what museum bodies have published.

Sources: Museums Galleries Scotland (MGS) on what tarnishes and corrodes metals; the Hazards in
Collections e-tool on cellulose nitrate; the US National Park Service (NPS), Museum Handbook,
appendix M, on acetate film; an Australian state museum's "Storage Materials" and a US regional
conservation centre on good and bad packing materials. What is from memory is marked so.
"""

from __future__ import annotations

import pytest

from service.contents.arrange import arrange_packings
from service.handling.packing.check import check_packing
from service.records.record import (
    Collection,
    ContainerRecord,
    Hazard,
    HazardState,
    ObjectRecord,
    PackingRecord,
    PlaceRecord,
)

MGS = "Museums Galleries Scotland"
MEMORY = "from memory"


def backing(first: str, second: str, *, packed_with: tuple[str, ...] = ()) -> list[str]:
    """Pack two materials together and give what backs each conflict that is found."""
    objects = (_thing("1", first), _thing("2", second))
    box = ContainerRecord("B-1", packing_materials=packed_with)
    places = PackingRecord("B-1", 1, tuple(PlaceRecord(one.object_number) for one in objects))
    collection = Collection(objects=objects, containers=(box,), packings=(places,))
    (packing,) = arrange_packings(collection).packings
    return [one.advice for one in check_packing(packing)]


def _thing(number: str, material: str) -> ObjectRecord:
    if material.startswith("hazard "):
        hazard = Hazard(material.removeprefix("hazard "), HazardState.PRESUMED)
        return ObjectRecord(number, hazards=(hazard,))
    return ObjectRecord(number, materials=(material,))


# One material, what it harms, and whose word it is; the source says it of each pair.
APART = [
    ("wool", "silver", MGS),
    ("rubber", "silver", MGS),
    ("wool", "brass", MGS),
    ("rubber", "copper", MGS),
    ("wool", "metal thread", MGS),
    ("rubber", "gelatin silver print", MGS),
    ("oak", "lead", MGS),
    ("hazard nitrate-film", "paper", "Hazards in Collections e-tool"),
    ("hazard nitrate-film", "brass", "Hazards in Collections e-tool"),
    ("hazard acetate-film", "paper", "NPS Museum Handbook"),
    ("hazard celluloid", "steel", "common practice"),
    ("cardboard", "lead", MEMORY),
    ("oak", "pewter", MEMORY),
    ("oak", "shell", MEMORY),
    ("hazard naphthalene", "plastic", MEMORY),
]
# Pairs of which no source says anything, and words that only look like a material that harms.
TOGETHER = [
    ("cotton", "silver"),
    ("cotton wool", "silver"),
    ("wool", "glass"),
    ("wool", "gold"),
    ("beech", "lead"),
    ("oak", "brass"),
    ("oak gall ink", "lead"),
    ("acid-free cardboard", "lead"),
    ("hazard celluloid", "paper"),
    ("hazard lead", "paper"),
    ("silicone rubber", "silver"),
]


@pytest.mark.parametrize(("harming", "harmed", "source"), APART)
def test_what_a_source_keeps_apart_is_reported(harming: str, harmed: str, source: str) -> None:
    """Each pair is one finding that says whose word it is, whichever of them comes first."""
    for pair in ((harming, harmed), (harmed, harming)):
        (advice,) = backing(*pair)
        assert source in advice


@pytest.mark.parametrize(("first", "second"), TOGETHER)
def test_what_no_source_keeps_apart_is_not(first: str, second: str) -> None:
    """No finding is made up, and a word within another is no material."""
    assert backing(first, second) == []


AVOIDED = [
    "newspaper",
    "coloured tissue",
    "rubber",
    "wool",
    "pressure-sensitive tape",
    "PVC",
    "steel clips",
    "polyurethane foam",
    "starch chips",
    "loose chips",
    "food cartons",
]
GOOD = [
    "polyethylene sheet",
    "polypropylene",
    "spunbonded polyolefin",
    "acid-free board",
    "uncoated polyester",
    "washed cotton",
]


@pytest.mark.parametrize("material", AVOIDED)
def test_packing_materials_to_avoid(material: str) -> None:
    """The state museum's list of what not to use is reported word for word."""
    (advice,) = backing("stoneware", "glass", packed_with=(material,))
    assert "state museum" in advice


@pytest.mark.parametrize("material", GOOD)
def test_good_packing_materials(material: str) -> None:
    """What the conservation centre recommends is never reported."""
    assert backing("silver", "lead", packed_with=(material,)) == []
