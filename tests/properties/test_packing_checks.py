"""What must be true of packing checks, whatever somebody has written into the records."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from service.contents.packing import Packing
from service.findings import CODES
from service.handling.hanging.assess import HangWay, assess_hanging
from service.handling.packing.check import check_packing
from service.records.codes import CAUTION_CODES, HANG_FACTOR_CODES, HAZARD_CODES
from service.records.measures import Measure
from service.records.record import (
    ContainerKind,
    ContainerRecord,
    Hazard,
    HazardState,
    ObjectRecord,
    PlaceRecord,
    Weight,
)
from tests.contents.made import packing

_WORDS = ("oak", "silver", "wool", "folded", "pins", "rust", "tray", "bubble wrap", "in", ";", "no")
TEXTS = st.one_of(st.lists(st.sampled_from(_WORDS), max_size=5).map(" ".join), st.text(max_size=20))
MEASURES = st.builds(Measure, TEXTS, st.floats(0.1, 5000.0))


def _some(codes: tuple[str, ...]) -> st.SearchStrategy[tuple[str, ...]]:
    return st.lists(st.sampled_from(codes), max_size=3).map(tuple)


def objects(number: str) -> st.SearchStrategy[ObjectRecord]:
    """Make an object with anything in the fields that are looked at."""
    return st.builds(
        ObjectRecord,
        object_number=st.just(number),
        object_name=TEXTS,
        materials=st.lists(TEXTS, max_size=3).map(tuple),
        dimensions=st.lists(MEASURES, max_size=4).map(tuple),
        weight=st.none() | st.builds(Weight, st.floats(1.0, 30_000.0)),
        condition=TEXTS,
        handling_notes=TEXTS,
        hazards=st.lists(
            st.builds(Hazard, st.sampled_from(HAZARD_CODES), st.sampled_from(HazardState), TEXTS),
            max_size=2,
        ).map(tuple),
        cautions=_some(CAUTION_CODES),
        hang_factors=_some(HANG_FACTOR_CODES),
    )


def places(number: str) -> st.SearchStrategy[PlaceRecord]:
    """Make a place for an object."""
    return st.builds(
        PlaceRecord,
        object_number=st.just(number),
        layer=st.integers(1, 3),
        compartment=st.sampled_from(("", "A1", "A2")),
        note=TEXTS,
    )


@st.composite
def packings(draw: st.DrawFn) -> Packing:
    """Pack up to four objects into a container of any kind."""
    numbers = [str(number) for number in range(draw(st.integers(0, 4)))]
    container = draw(
        st.builds(
            ContainerRecord,
            container_number=st.just("B-1"),
            kind=st.sampled_from(ContainerKind),
            inner_dimensions=st.lists(MEASURES, max_size=3).map(tuple),
            packing_materials=st.lists(TEXTS, max_size=3).map(tuple),
            stacking_limit=st.none() | st.integers(0, 3),
            handling_notes=TEXTS,
        )
    )
    records = [draw(objects(number)) for number in numbers]
    return packing(records, container, places=[draw(places(number)) for number in numbers])


@given(packings())
def test_every_finding_can_be_looked_up(made: Packing) -> None:
    """Nothing that is written stops a check; each finding has its place, words and backing."""
    numbers = {packed.record.object_number for packed in made.contents}
    for finding in check_packing(made):
        assert finding.code in CODES
        assert finding.where.container_number == "B-1"
        assert finding.where.object_number in numbers | {""}
        assert finding.message.endswith(".")
        assert "(Rule " in finding.advice


@given(packings())
def test_order_of_objects_does_not_matter(made: Packing) -> None:
    """The same things lie there, in whatever order they were listed."""
    contents = made.contents[::-1]
    turned = packing(
        [packed.record for packed in contents],
        made.container,
        places=[packed.place for packed in contents],
    )
    assert _told(turned) == _told(made)


def _told(made: Packing) -> list[tuple[str, str]]:
    return sorted((one.code, one.where.object_number) for one in check_packing(made))


@given(objects("1"))
def test_what_must_not_hang_is_never_advised_to(record: ObjectRecord) -> None:
    """No other field outweighs what the record forbids, and silence is never leave."""
    advice = assess_hanging(record)
    hangs = advice.way in {HangWay.HANG_PADDED, HangWay.HANG_WITH_TAPES}
    assert not (hangs and {"do-not-hang", "keep-flat", "fragile"}.intersection(record.cautions))
    assert advice.rules
    assert bool(advice.reasons) == (advice.way is not HangWay.UNKNOWN)
