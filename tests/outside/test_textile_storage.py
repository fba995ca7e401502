"""Hanging and packing of textiles against what conservation bodies have published.

Sources: Canadian Conservation Institute (CCI), CCI Notes 13/2 and 13/5; US National Park Service,
Conserve O Gram (COG) 4/5; a national museum's leaflet "How to pack textiles"; ISO 18902, read in a
secondary copy. Each row says what the source says in our words, and a record of which it speaks.
"""

from __future__ import annotations

from datetime import date

import pytest

from service.contents.arrange import arrange_packings
from service.contents.packing import Packing
from service.handling.hanging.assess import assess_hanging
from service.handling.packing.check import check_packing
from service.records.measures import Measure
from service.records.record import (
    Collection,
    ContainerKind,
    ContainerRecord,
    ObjectRecord,
    PackingRecord,
    PlaceRecord,
    Weight,
)

SOUND = ("sound-shoulders",)


def dress(
    *factors: str, materials: tuple[str, ...] = ("cotton",), caution: str = ""
) -> ObjectRecord:
    """Make a dress with hang factors."""
    cautions = (caution,) if caution else ()
    return ObjectRecord(
        "1", object_name="dress", materials=materials, cautions=cautions, hang_factors=factors
    )


# Source, what it says, the record, and the way of keeping it.
ADVICE = [
    ("CCI 13/5", "fragile garments are stored flat", dress(*SOUND, caution="fragile"), "box flat"),
    ("CCI 13/5", "heavily decorated or beaded: flat", dress("beads", *SOUND), "box flat"),
    ("CCI 13/5", "weak shoulder seams: flat", dress("weak-shoulders"), "box flat"),
    ("CCI 13/2", "knitted: flat", dress("knit", *SOUND), "box flat"),
    ("CCI 13/2", "cut on the bias: flat", dress("bias-cut", *SOUND), "box flat"),
    ("CCI 13/5", "what hangs has a padded hanger", dress(*SOUND), "hang padded"),
    (
        "How to pack textiles",
        "woollens that cannot bear their weight are not hung",
        dress(materials=("wool",)),
        "box flat",
    ),
    (
        "How to pack textiles",
        "large flat textiles are rolled, right side out",
        ObjectRecord("1", object_name="quilt", dimensions=(Measure("width", 2200.0),)),
        "roll",
    ),
    (
        "COG 4/5",
        "a heavy skirt hangs by tapes at the waist",
        dress("heavy-hem", *SOUND),
        "hang with waist tapes",
    ),
]


@pytest.mark.parametrize(
    ("record", "way"), [row[2:] for row in ADVICE], ids=[f"{row[0]}: {row[1]}" for row in ADVICE]
)
def test_advice_on_hanging_is_the_published_one(record: ObjectRecord, way: str) -> None:
    """A record of which the source speaks gets the advice of the source, backed by a source."""
    advice = assess_hanging(record)
    assert advice.way.value == way
    assert any(rule.source for rule in advice.rules)


def pack(
    record: ObjectRecord, *, note: str = "", materials: tuple[str, ...] = (), in_cover: bool = False
) -> Packing:
    """Pack one object."""
    kind = ContainerKind.GARMENT_COVER if in_cover else ContainerKind.BOX
    container = ContainerRecord("B-1", kind, packing_materials=materials)
    places = PackingRecord("B-1", 1, (PlaceRecord("1", note=note),))
    collection = Collection(objects=(record,), containers=(container,), packings=(places,))
    return arrange_packings(collection).packings[0]


SILK = ObjectRecord("1", materials=("silk",))
RUSTY = ObjectRecord("1", materials=("linen", "iron"), condition="corroding hooks")
ALBUMEN = ObjectRecord("1", materials=("albumen print",))
# What the source says, a packing against it, one that follows it, and the words of the source.
PACKED = [
    (
        "every fold is padded",
        pack(SILK, note="folded in three"),
        pack(SILK, note="folded over padded rolls"),
        "CCI Notes 13/2",
    ),
    (
        "pins and staples are removed",
        pack(SILK, note="label held by a staple"),
        pack(SILK, note="label sewn on"),
        "CCI Notes 13/5",
    ),
    (
        "corroding fasteners are isolated",
        pack(RUSTY),
        pack(
            ObjectRecord(
                "1", materials=("linen", "iron"), condition="corroding hooks isolated with tissue"
            )
        ),
        "CCI Notes 13/5",
    ),
    (
        "tissue is unbuffered",
        pack(SILK, materials=("buffered tissue",)),
        pack(SILK, materials=("acid-free unbuffered tissue",)),
        "CCI Notes 13/5",
    ),
    (
        "no thin wire hangers",
        pack(dress(*SOUND), materials=("wire hanger",), in_cover=True),
        pack(dress(*SOUND), materials=("padded hanger",), in_cover=True),
        "CCI Notes 13/5",
    ),
    (
        "no glassine with photographs",
        pack(ALBUMEN, materials=("glassine",)),
        pack(ALBUMEN, materials=("uncoated polyester",)),
        "ISO 18902",
    ),
    (
        "no newspaper, no polyurethane foam",
        pack(SILK, materials=("polyurethane foam",)),
        pack(SILK, materials=("polyethylene foam",)),
        "state museum",
    ),
    (
        "knitted garments do not hang",
        pack(dress("knit"), in_cover=True),
        pack(dress("knit")),
        "CCI Notes 13/5",
    ),
]


@pytest.mark.parametrize(
    ("against", "following", "source"), [row[1:] for row in PACKED], ids=[row[0] for row in PACKED]
)
def test_a_packing_against_the_source_is_reported(
    against: Packing, following: Packing, source: str
) -> None:
    """What the source forbids is one finding that names the source; what it asks for is none."""
    (finding,) = check_packing(against)
    assert source in finding.advice
    assert check_packing(following) == ()


def test_habits_without_a_source_say_so() -> None:
    """Heavy below light is a common practice that no publisher was found for."""
    objects = (ObjectRecord("1", weight=Weight(3000.0)), ObjectRecord("2", weight=Weight(300.0)))
    places = (PlaceRecord("1"), PlaceRecord("2", layer=2))
    collection = Collection(
        objects=objects,
        containers=(ContainerRecord("B-1", temporary_until=date(2026, 11, 30)),),
        packings=(PackingRecord("B-1", 1, places),),
    )
    (finding,) = check_packing(arrange_packings(collection).packings[0])
    assert finding.advice.endswith("common practice, no source.)")
