from __future__ import annotations

from dataclasses import replace

from service.keeping.tags.today import compose_today_tags
from service.pages.ruler import Ruler
from service.records.record import Collection, ObjectRecord
from service.store.handles import Connection
from service.store.save_records import save_records
from tests.keeping.made import COLLECTION, JAR, LEAD
from tests.store.made import LATER

OWL = "X.112"


def test_only_the_objects_asked_for_are_worded(connection: Connection, ruler: Ruler) -> None:
    """One tag each, and nothing for a number that no record has."""
    today = compose_today_tags(connection, ruler, [LEAD, JAR, "X.999"])
    assert set(today.cards) == {(JAR, "object-tag", 1), (LEAD, "object-tag", 1)}
    assert today.failed == {}


def test_tags_are_worded_as_printed(connection: Connection, ruler: Ruler) -> None:
    """What guidance presumes is on it, packed or not; a sign without a glyph stands as its code."""
    owl = ObjectRecord(OWL, "Owl \U0001f3fa", "taxidermy", "1920s")
    save_records(connection, Collection(objects=(owl,)), stamp=LATER)
    said = str(compose_today_tags(connection, ruler, [OWL]).cards[OWL, "object-tag", 1])
    assert "Arsenic presumed" in said
    assert "Owl [U+1F3FA]" in said


def test_what_cannot_be_worded_is_told(connection: Connection, ruler: Ruler) -> None:
    """A museum whose address is no lasting one hears why, object by object."""
    museum = replace(COLLECTION.museum, object_address="http://plain.example/{object_number}")
    save_records(connection, Collection(museum=museum), stamp=LATER)
    today = compose_today_tags(connection, ruler, [LEAD])
    assert today.cards == {}
    assert {number: error.code for number, error in today.failed.items()} == {
        LEAD: "address-pattern"
    }
