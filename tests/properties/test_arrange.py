"""What holds for every collection, however its packings contradict each other."""

from __future__ import annotations

from collections import Counter

from hypothesis import given
from hypothesis import strategies as st

from service.cards.kinds import CARD_KINDS, compose_cards
from service.contents.arrange import arrange_packings
from service.contents.packing import Packing
from service.contents.weights import Certainty, weigh_packing
from service.findings import CODES
from service.records.measures import Grid
from service.records.record import (
    Collection,
    ContainerRecord,
    ObjectRecord,
    PackingRecord,
    PlaceRecord,
    Weight,
)
from tests.contents.made import MUSEUM

NUMBERS = [f"1987.{number}" for number in range(1, 8)]
BOXES = [f"B-{number}" for number in range(1, 6)]

weights = st.none() | st.integers(1, 30_000).map(lambda mass_g: Weight(float(mass_g)))
objects = st.lists(
    st.builds(ObjectRecord, st.sampled_from(NUMBERS), weight=weights),
    unique_by=lambda record: record.object_number,
)
containers = st.lists(
    st.builds(
        ContainerRecord,
        st.sampled_from(BOXES),
        compartments=st.none() | st.builds(Grid, st.integers(1, 4), st.integers(1, 4)),
        tare=weights,
        gross=weights,
        inside=st.sampled_from(["", "", *BOXES, "B-99"]),
    ),
    unique_by=lambda record: record.container_number,
)
places = st.builds(
    PlaceRecord,
    st.sampled_from(NUMBERS),
    parts=st.lists(st.sampled_from("abc"), unique=True, max_size=2).map(tuple),
    layer=st.integers(1, 3),
    compartment=st.sampled_from(["", "A1", "B3", "D9", "left"]),
)
packings = st.lists(
    st.builds(
        PackingRecord,
        st.sampled_from([*BOXES, "B-77"]),
        st.integers(1, 5),
        st.lists(places, max_size=6).map(tuple),
    ),
    max_size=8,
)
collections = st.builds(
    Collection, st.just(MUSEUM), objects.map(tuple), containers.map(tuple), packings.map(tuple)
)


@given(collections)
def test_every_container_is_there_once(collection: Collection) -> None:
    """No contradiction loses a container, and what was found can be looked up."""
    made = arrange_packings(collection)
    found = Counter(one.container.container_number for one in made.packings)
    assert found == Counter(record.container_number for record in collection.containers)
    assert all(one.code in CODES for one in made.findings)


@given(collections)
def test_every_place_of_the_latest_packing_is_kept(collection: Collection) -> None:
    """Layers and compartments sort what lies in a container and drop none of it."""
    made = arrange_packings(collection)
    for packing in made.packings:
        number = packing.container.container_number
        rows = [row for row in collection.packings if row.container_number == number]
        latest = max(rows, key=lambda row: row.revision, default=None)
        wanted = Counter(latest.places) if latest else Counter()
        assert Counter(item.place for item in packing.contents) == wanted
        assert [layer.number for layer in packing.layers] == sorted(
            {place.layer for place in wanted}
        )


@given(collections)
def test_nothing_lies_in_itself(collection: Collection) -> None:
    """However containers name each other, no container is found inside itself."""

    def look(packing: Packing, above: frozenset[str]) -> None:
        number = packing.container.container_number
        assert number not in above
        for inner in packing.nested:
            look(inner, above | {number})

    for packing in arrange_packings(collection).packings:
        look(packing, frozenset())


@given(collections)
def test_weights_never_promise_too_much(collection: Collection) -> None:
    """A whole weight has no gap; everything known is in every sum, once."""
    for packing in arrange_packings(collection).packings:
        weight = weigh_packing(packing)
        assert weight.things == len({item.record.object_number for item in packing.everything})
        loose = {item.record.object_number: item.record.weight for item in packing.contents}
        known_g = sum(one.weight_g for one in loose.values() if one)
        if weight.certainty is Certainty.SUM:
            assert weight.unweighed == 0
            assert weight.tare_known
        if weight.certainty is not Certainty.MEASURED:
            assert weight.weight_g >= known_g


@given(collections)
def test_every_container_can_be_worded(collection: Collection) -> None:
    """Whatever was packed how, each container gets its cards, and each card its letters."""
    for packing in arrange_packings(collection).packings:
        cards = compose_cards(packing, MUSEUM, kinds=CARD_KINDS)
        assert cards
        assert all(len(card.head.check_letters) == 4 for card in cards)
