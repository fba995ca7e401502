from __future__ import annotations

import pytest

from service.records.measures import Measure
from service.records.record import ObjectRecord, Part, PlaceRecord
from tests.handling.packing.made import BOX, found, noticed, pack, thing

INNER = (Measure("", 590.0), Measure("", 440.0), Measure("", 125.0))
TUBE = (Measure("length", 1080.0), Measure("diameter", 115.0))


def measured(*sides: tuple[str, float], materials: tuple[str, ...] = ("wood",)) -> ObjectRecord:
    """Make an object with these measures."""
    return thing("1", *materials, dimensions=tuple(Measure(*side) for side in sides))


@pytest.mark.parametrize(
    ("record", "inner", "expected"),
    [
        (measured(("length", 591)), INNER, True),
        (measured(("length", 590)), INNER, False),
        (measured(("", 500), ("", 441), ("", 10)), INNER, True),
        (measured(("height", 440), ("width", 125), ("depth", 590)), INNER, False),
        (measured(("height", 130), ("diameter", 130)), INNER, True),
        (measured(("height", 130), ("diameter", 125)), INNER, False),
        (measured(("length", 900), ("diameter", 116)), TUBE, True),
        (measured(("length", 1080), ("diameter", 115)), TUBE, False),
        (measured(("length", 900), materials=("linen",)), INNER, False),
        (measured(("flat width", 900), ("rolled length", 500)), INNER, False),
        (measured(("line", 18_300), ("lead height", 175)), INNER, False),
        (measured(("", 300), ("", 200), ("", 130), ("", 130)), INNER, False),
        (measured(("length", 900)), (), False),
        (thing("1", "wood"), INNER, False),
    ],
    ids=[
        "longer",
        "just fits",
        "too wide",
        "fits when turned",
        "too thick round",
        "just fits round",
        "too thick for a tube",
        "just fits a tube",
        "cloth bends",
        "rolled",
        "a line is coiled",
        "several parts, longest counts",
        "inside not measured",
        "object not measured",
    ],
)
def test_larger_than_the_inside(
    record: ObjectRecord, inner: tuple[Measure, ...], *, expected: bool
) -> None:
    """An object that cannot lie inside, however it is turned, is reported; else nothing is."""
    made = pack(record, inner_dimensions=inner)
    assert found(made) == ([("object-too-large", "1")] if expected else [])


def test_only_the_parts_that_lie_here_are_measured() -> None:
    """The long staff is elsewhere; its head lies here and fits."""
    staff = thing(
        "1",
        "wood",
        parts=(Part("a", "staff"), Part("b", "head")),
        dimensions=(Measure("a length", 1500.0), Measure("b length", 120.0)),
    )
    for parts, expected in ((("b",), 0), (("a",), 1), ((), 1)):
        made = pack((staff, PlaceRecord("1", parts)), container=BOX, inner_dimensions=INNER)
        assert len(found(made)) == expected


def test_the_finding_names_both_measures() -> None:
    """Whoever measures again knows which side to look at."""
    made = pack(measured(("", 500), ("", 450), ("", 10)), inner_dimensions=INNER)
    (finding,) = noticed(made)
    assert finding.message.startswith("1 measures 450 mm where there are 440 mm inside.")


@pytest.mark.parametrize(
    "label",
    [
        *("flat", "open", "opened", "unrolled", "unfolded", "extended", "image", "sheet"),
        *("line", "cord", "rope", "chain", "strap", "cable", "circumference"),
    ],
)
def test_as_it_need_not_lie(label: str) -> None:
    """What is measured so need not fit (common practice, no source); a rigid side of it must."""
    inner = (Measure("width", 300.0), Measure("height", 100.0))
    long = thing("1", "wood", dimensions=(Measure(f"{label} length", 900.0),))
    assert not found(pack(long, inner_dimensions=inner))
    assert found(
        pack(thing("1", "wood", dimensions=(Measure("length", 900.0),)), inner_dimensions=inner)
    )


def test_of_many_measures_only_the_longest_counts() -> None:
    """Four measures are those of several parts: none of them need lie beside another."""
    inner = tuple(Measure("side", side_mm) for side_mm in (300.0, 200.0, 50.0))
    sides = tuple(Measure("side", side_mm) for side_mm in (290.0, 280.0, 270.0, 260.0))
    assert not found(pack(thing("1", "wood", dimensions=sides), inner_dimensions=inner))
    longer = (*sides[:3], Measure("side", 310.0))
    assert found(pack(thing("1", "wood", dimensions=longer), inner_dimensions=inner))


def test_one_that_bends_ends_no_search() -> None:
    """What lies after a cloth is measured too; where the inside is not known nothing is."""
    cloth = thing("1", "linen", dimensions=(Measure("length", 900.0),))
    staff = thing("2", "wood", dimensions=(Measure("length", 900.0),))
    assert found(pack(cloth, staff, inner_dimensions=INNER)) == [("object-too-large", "2")]
    assert found(pack(cloth, staff)) == []
