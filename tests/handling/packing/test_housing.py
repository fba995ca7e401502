from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from service.contents.packing import Packing
from service.handling.packing.report import Known
from service.records.record import ContainerKind, ContainerRecord, Lid, Weight
from tests.handling.packing.made import COVER, found, noticed, pack, thing

DAY = date(2026, 11, 30)
PHOTOGRAPH = thing("1", "albumen print", "card")


@pytest.mark.parametrize(
    ("materials", "expected"),
    [
        (("newspaper",), 1),
        (("coloured tissue",), 1),
        (("acid-free tissue",), 0),
        (("polyurethane foam",), 1),
        (("closed-cell polyethylene foam",), 0),
        (("rubber bands",), 1),
        (("silicone rubber",), 0),
        (("wool blanket",), 1),
        (("PVC sleeve",), 1),
        (("masking tape", "steel clips"), 2),
        (("cotton tape",), 0),
        ((), 0),
    ],
)
def test_materials_to_avoid(materials: tuple[str, ...], expected: int) -> None:
    """What guidance names is reported by its name; what only sounds like it is not."""
    made = pack(thing("1", "stoneware"), packing_materials=materials)
    assert [code for code, _ in found(made)] == ["unsuitable-material"] * expected


@pytest.mark.parametrize(
    ("materials", "expected"), [(("wire hanger",), 1), (("padded hanger",), 0)]
)
def test_hangers_are_padded(materials: tuple[str, ...], expected: int) -> None:
    """A thin wire is no hanger for a garment."""
    findings = noticed(pack(thing("1"), container=COVER, packing_materials=materials))
    assert [one.code for one in findings] == ["unsuitable-material"] * expected
    assert all("CCI Notes 13/5" in one.advice for one in findings)


def test_glassine_is_bad_for_photographs_only() -> None:
    """The standard speaks of photographs."""
    assert len(found(pack(PHOTOGRAPH, packing_materials=("glassine bags",)))) == 1
    assert found(pack(PHOTOGRAPH, packing_materials=("polyester sleeves",))) == []
    assert found(pack(thing("1", "iron"), packing_materials=("glassine bags",))) == []


@pytest.mark.parametrize(
    ("materials", "until", "today", "code"),
    [
        (("bubble wrap",), None, DAY, "temporary-material"),
        (("bubble wrap",), date(2026, 12, 1), DAY, ""),
        (("acid-free tissue",), None, DAY, ""),
        ((), date(2026, 11, 30), DAY, "repack-overdue"),
        ((), date(2026, 11, 29), DAY, "repack-overdue"),
        ((), date(2026, 12, 1), DAY, ""),
        ((), date(2026, 11, 29), None, ""),
    ],
    ids=["no date", "with a date", "lasting", "today", "past", "tomorrow", "no day handed in"],
)
def test_temporary_packing(
    materials: tuple[str, ...], until: date | None, today: date | None, code: str
) -> None:
    """A material for a few weeks needs a date, and the date is kept."""
    made = pack(thing("1"), packing_materials=materials, temporary_until=until)
    assert [one for one, _ in found(made, Known(today))] == ([code] if code else [])


@pytest.mark.parametrize(
    ("lid", "notes", "cards_on", "expected"),
    [
        (Lid.CLEAR, "", {"lid-card"}, 1),
        (Lid.CLEAR, "", {"end-label"}, 0),
        (Lid.OPAQUE, "", {"lid-card"}, 0),
        (Lid.CLEAR, "An old card taped on the lid", set(), 1),
        (Lid.CLEAR, "Card beside the lid", set(), 0),
        (Lid.OPAQUE, "An old card taped on the lid", set(), 0),
    ],
)
def test_nothing_covers_a_clear_lid(
    lid: Lid, notes: str, cards_on: set[str], expected: int
) -> None:
    """A card on it is reported, whether it was attached or somebody wrote that it is there."""
    made = pack(thing("1"), lid=lid, handling_notes=notes)
    codes = [code for code, _ in found(made, Known(cards_on=frozenset(cards_on)))]
    assert codes == ["covered-lid"] * expected


@pytest.mark.parametrize(
    ("limit", "cautions", "expected"),
    [
        (1, ("nothing-on-top",), 1),
        (0, ("nothing-on-top",), 0),
        (None, ("nothing-on-top",), 0),
        (1, ("fragile",), 0),
    ],
)
def test_stacking_limit_and_cautions_agree(
    limit: int | None, cautions: tuple[str, ...], expected: int
) -> None:
    """A card must not say "nothing on top" and "1 box on top"."""
    made = pack(thing("1", cautions=cautions), stacking_limit=limit)
    assert [code for code, _ in found(made)] == ["stacking-limit-disagrees"] * expected


@pytest.mark.parametrize(
    ("kind", "weight_g", "expected"),
    [
        (ContainerKind.BOX, 15_001.0, 1),
        (ContainerKind.BOX, 15_000.0, 0),
        (ContainerKind.DRAWER, 30_000.0, 0),
    ],
)
def test_boxes_are_filled_to_15_kg(kind: ContainerKind, weight_g: float, expected: int) -> None:
    """Only a box is carried; a weight that is not known is not judged."""
    container = ContainerRecord("B-1", kind, gross=Weight(weight_g))
    made = pack(thing("1"), container=container)
    assert [code for code, _ in found(made)] == ["overfilled"] * expected
    assert found(pack(thing("1"), container=replace(container, gross=None))) == []


@pytest.mark.parametrize(
    "material",
    [
        # An Australian state museum's guidance, Storage Materials and Boxes.
        *("newspaper", "coloured tissue", "rubber bands", "wool blanket", "PVC sleeve"),
        *("pressure sensitive tape", "steel clips", "polyurethane foam"),
        *("starch chips", "loose chips", "food cartons"),
        # CCI Notes 13/5: hangers of thin wire, unsealed wood.
        *("wire hanger", "unsealed wooden hanger"),
        # Other words for the same: common practice, no source.
        *("newsprint", "colored tissue", "dyed tissue", "wire hangers", "food carton"),
        *("adhesive tape", "sticky tape", "masking tape", "parcel tape"),
        # Steel as the clips are: from memory.
        *("paper clips", "staples"),
    ],
)
def test_each_material_to_avoid(material: str) -> None:
    """Each that guidance names is told, in the words in which people write it."""
    assert len(found(pack(packing_materials=(f"some {material}",)))) == 1


@pytest.mark.parametrize(
    "material",
    [
        *("bubble wrap", "bubblewrap", "polystyrene chips", "ordinary foam", "cling film"),
        *("clingfilm", "upholstery foam"),
    ],
)
def test_each_temporary_material(material: str) -> None:
    """For the journey only (common practice, no source), unless there is a date to repack by."""
    assert found(pack(packing_materials=(material,))) == [("temporary-material", "")]
    later = date(2027, 1, 1)
    assert not found(pack(packing_materials=(material,), temporary_until=later))


def test_a_card_on_a_clear_lid_is_read_of() -> None:
    """Either place of the record can speak of it, among other things."""
    said = "Card on the lid"
    for made in (
        pack(lid=Lid.CLEAR, handling_notes=said),
        pack(lid=Lid.CLEAR, packing_materials=("acid-free tissue", said)),
    ):
        assert found(made) == [("covered-lid", "")]


@pytest.mark.parametrize(("limit", "words"), [(1, "1 box may"), (2, "2 boxes may")])
def test_boxes_are_counted_in_words(limit: int, words: str) -> None:
    """Only what forbids it is named."""
    fragile = thing("1", cautions=("nothing-on-top",))
    (finding,) = noticed(pack(fragile, thing("2"), stacking_limit=limit), Known())
    assert finding.message.startswith(words)
    assert "but nothing on 1." in finding.message


SHARED = pack(PHOTOGRAPH, packing_materials=("newspaper", "wool blanket", "glassine bags"))


@pytest.mark.parametrize(
    ("made", "says"),
    [
        (
            SHARED,
            ["Packed with newspaper.", "Packed with wool blanket.", "Glassine lies with 1."],
        ),
        (
            pack(thing("1"), packing_materials=("bubble wrap",)),
            ["Packed with bubble wrap, and no date to repack by is recorded."],
        ),
        (
            pack(thing("1"), temporary_until=DAY),
            ["The packing is temporary until 2026-11-30; that day has come."],
        ),
        (
            pack(thing("1"), lid=Lid.CLEAR, handling_notes="Card on the lid"),
            ["The lid is clear and has a card on it."],
        ),
        (
            pack(thing("1", cautions=("nothing-on-top",)), stacking_limit=3),
            ["3 boxes may stand on top, but nothing on 1."],
        ),
        (
            pack(thing("1"), container=ContainerRecord("B-1", gross=Weight(16_440.0))),
            ["It weighs 16.4 kg or more."],
        ),
    ],
    ids=["materials", "temporary", "overdue", "lid", "stacking", "weight"],
)
def test_a_finding_says_what_and_where(made: Packing, says: list[str]) -> None:
    """It begins with what is wrong, in this container, and goes on with why."""
    findings = noticed(made, Known(DAY))
    assert [one.message[: len(what)] for one, what in zip(findings, says, strict=True)] == says
    assert {str(one.where) for one in findings} == {"B-1"}


def test_materials_are_told_apart() -> None:
    """What stands in two entries is no material that neither of them names."""
    assert not found(pack(PHOTOGRAPH, packing_materials=("sheets of glass", "ine paper")))
    hanging = noticed(pack(thing("1"), container=COVER, packing_materials=("wire hanger",)))
    assert hanging[0].message.startswith("Packed with wire hanger.")
