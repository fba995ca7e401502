from __future__ import annotations

import json
from dataclasses import replace

import pytest
from sqlalchemy import Connection, Engine

from service.errors import UnstorableTextError
from service.records.record import Collection, Museum, ObjectRecord
from service.store.history import load_history
from service.store.load_records import load_museum, load_object
from service.store.open import reading, writing
from service.store.packing.take_in import Outcome
from service.store.save_records import Saved, save_records
from tests.store.made import BOXES, HAT, LAMP, LATER, LEAD, STAMP, collection, dump


def test_the_same_collection_twice_changes_nothing(connection: Connection) -> None:
    """Saving again finds everything unchanged and leaves every row of every table as it was."""
    before = dump(connection)
    saved = save_records(connection, collection(), stamp=STAMP)
    assert saved == Saved(
        objects=Outcome(unchanged=(LEAD, HAT, LAMP)),
        containers=Outcome(unchanged=BOXES),
        packings=Outcome(unchanged=("B-001", "B-002")),
        museum_changed=False,
        findings=(),
    )
    assert dump(connection) == before


def test_what_changed_is_told(connection: Connection) -> None:
    """New and changed records are counted, and the history keeps what they were."""
    first, *others = collection().objects
    changed = replace(first, title="Lead line", source={"Title": "Lead line"})
    new = ObjectRecord("N.1", "New")
    saved = save_records(connection, Collection(objects=(changed, *others, new)), stamp=LATER)
    assert saved.objects == Outcome(("N.1",), (LEAD,), (HAT, LAMP))
    assert load_object(connection, LEAD) == changed
    event = load_history(connection, object_number=LEAD)[-1]
    assert (event.entry.verb, event.stamp, event.change) == ("changed", LATER, 2)
    assert json.loads(event.entry.detail) == {
        "record": {"before": {"title": first.title}, "after": {"title": "Lead line"}},
        "source": {"before": {}, "after": {"Title": "Lead line"}},
    }


def test_of_two_records_of_a_number_the_first_counts(connection: Connection) -> None:
    """A number that comes twice is one record."""
    twice = (ObjectRecord("N.1", "First"), ObjectRecord("N.1", "Second"))
    saved = save_records(connection, Collection(objects=twice), stamp=STAMP)
    assert saved.objects.new == ("N.1",)
    assert load_object(connection, "N.1").title == "First"


def test_museum_is_saved_once(connection: Connection) -> None:
    """The museum's choices are saved when they say something, and no silence wipes them."""
    choices = Museum(name="Port Merrow Museum")
    said = Collection(museum=choices)
    done = [
        save_records(connection, each, stamp=STAMP).museum_changed
        for each in (said, said, Collection(), replace(said, museum=replace(choices, name="P")))
    ]
    assert done == [True, False, False, True]
    assert load_museum(connection).name == "P"


def test_a_text_that_cannot_be_stored_stops_all(engine: Engine) -> None:
    """One unusable text leaves nothing half saved."""
    with reading(engine) as connection:
        before = dump(connection)
    bad = Collection(objects=(ObjectRecord("N.1"), ObjectRecord("N\0")))
    with pytest.raises(UnstorableTextError), writing(engine) as connection:
        save_records(connection, bad, stamp=STAMP)
    with reading(engine) as connection:
        assert dump(connection) == before
