from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from hypothesis import given
from hypothesis import strategies as st
from sqlalchemy import Connection

from service.errors import NotFoundError
from service.records.record import (
    Collection,
    ContainerRecord,
    Museum,
    ObjectRecord,
    PackingRecord,
    PlaceRecord,
)
from service.records.rows.text import tidy_text
from service.store.load_records import (
    load_collection,
    load_container,
    load_museum,
    load_object,
)
from service.store.open import reading, writing
from service.store.save_records import save_records
from tests.store.made import HAT, LAMP, LEAD, STAMP, collection, make_store
from tests.store.strategies import records_of, texts

NUMBERS = [f"B-{number}" for number in range(1, 4)]


@st.composite
def collections(draw: st.DrawFn) -> Collection:
    """Give any records whose packings can stand side by side: each has objects of its own."""
    objects = draw(
        st.lists(records_of(ObjectRecord), max_size=3, unique_by=lambda one: one.object_number)
    )
    boxes = draw(
        st.lists(
            records_of(ContainerRecord, container_number=st.sampled_from(NUMBERS)),
            max_size=3,
            unique_by=lambda one: one.container_number,
        )
    )
    packings = [
        replace(
            draw(records_of(PackingRecord)),
            container_number=box.container_number,
            revision=1,
            places=tuple(
                replace(place, object_number=f"{box.container_number}/{place.object_number}")
                for place in draw(st.lists(records_of(PlaceRecord), max_size=3))
            ),
        )
        for box in boxes
        if draw(st.booleans())
    ]
    return Collection(
        museum=draw(records_of(Museum, name=texts)),
        objects=tuple(objects),
        containers=tuple(boxes),
        packings=tuple(packings),
    )


@given(said=collections())
def test_a_collection_comes_back_as_it_was(said: Collection) -> None:
    """Whatever is saved is loaded again, field by field and in its order, source rows too."""
    with TemporaryDirectory() as folder:
        engine = make_store(Path(folder))
        with writing(engine) as connection:
            saved = save_records(connection, said, stamp=STAMP)
        with reading(engine) as connection:
            loaded = load_collection(connection)
        engine.dispose()
    assert saved.findings == ()
    assert loaded == replace(said, packings=tuple(map(_tidied, said.packings)))
    assert _sources(loaded) == _sources(said)


def _tidied(packing: PackingRecord) -> PackingRecord:
    """Give a packing as it is kept: what was typed of it is cleaned as a table would be."""
    places = tuple(
        replace(place, compartment=tidy_text(place.compartment), note=tidy_text(place.note))
        for place in packing.places
    )
    return replace(packing, places=places, reason=tidy_text(packing.reason))


def _sources(collection: Collection) -> list[Mapping[str, str]]:
    """Give the source rows, which do not count when records are compared."""
    return [
        *(record.source for record in collection.objects),
        *(record.source for record in collection.containers),
    ]


def test_single_records(connection: Connection) -> None:
    """One record is found by its number; a number that names none is refused."""
    said = collection()
    assert load_object(connection, LEAD) == said.objects[0]
    assert load_container(connection, "B-001") == said.containers[0]
    assert load_museum(connection) == Museum()
    with pytest.raises(NotFoundError, match="object 'B-001'"):
        load_object(connection, "B-001")
    with pytest.raises(NotFoundError, match="container '1931"):
        load_container(connection, LEAD)


def test_what_the_cards_of_a_container_need(connection: Connection) -> None:
    """Inner containers come along, and those that hold other parts; all else stays away."""
    more = Collection(
        containers=(ContainerRecord("F-1", inside="B-002"), ContainerRecord("F-2", inside="F-1")),
        packings=(
            PackingRecord("F-2", 1, (PlaceRecord(LAMP),)),
            PackingRecord("B-003", 1, (PlaceRecord(HAT, ("c",)),)),
        ),
    )
    save_records(connection, more, stamp=STAMP)
    loaded = load_collection(connection, ["B-002", "B-999"])
    assert [one.container_number for one in loaded.containers] == ["B-002", "B-003", "F-1", "F-2"]
    assert [one.object_number for one in loaded.objects] == [HAT, LAMP]
    assert {one.container_number for one in loaded.packings} == {"B-002", "F-2", "B-003"}


def test_containers_in_a_circle_come_once(connection: Connection) -> None:
    """Containers said to lie in each other do not keep the loading going."""
    circle = (ContainerRecord("C-1", inside="C-2"), ContainerRecord("C-2", inside="C-1"))
    save_records(connection, Collection(containers=circle), stamp=STAMP)
    assert load_collection(connection, ["C-1"]).containers == circle
