"""Tests for the note of what today's object tags say."""

from __future__ import annotations

from dataclasses import replace

import pytest
from sqlalchemy import Connection

from service.records.record import Collection, ObjectRecord
from service.store.printed.card import NewRun
from service.store.printed.runs import save_run
from service.store.printed.states import mark_attached
from service.store.save_records import save_records
from service.store.today.note import heed_wording, load_differing, load_unattached
from service.store.today.stale import TAGS, count_stale, load_stale
from service.store.today.tag_note import load_differing_tags, save_today_tags
from tests.store.made import HAT, LAMP, LATER, LEAD
from tests.store.printed.made import TAG

HELD = dict.fromkeys((LEAD, HAT, LAMP), TAG.fingerprint)


@pytest.fixture(autouse=True)
def tagged(connection: Connection) -> None:
    """Attach a tag to each object."""
    tags = tuple(replace(TAG, object_number=number) for number in HELD)
    for card in save_run(connection, NewRun(tags), stamp=LATER):
        mark_attached(connection, card.card_id, stamp=LATER)


def differing(connection: Connection) -> list[str]:
    """Name the objects whose tag is not what was noted."""
    return [card.made.object_number for card in load_differing_tags(connection)]


def test_a_tag_that_says_something_else_is_found(connection: Connection) -> None:
    """One that was never worded, that says something else or cannot be worded; others are not."""
    stale = load_stale(connection, TAGS, limit=2)
    assert stale.numbers == (LEAD, HAT)
    save_today_tags(connection, dict.fromkeys((LEAD, HAT), TAG.fingerprint), as_of=stale.as_of)
    assert differing(connection) == [LAMP]
    save_today_tags(connection, {LAMP: ""}, as_of=stale.as_of)
    assert (count_stale(connection, TAGS), differing(connection)) == (0, [LAMP])


def test_no_container_lacks_a_tag(connection: Connection) -> None:
    """Tags are no cards of containers: neither wrong nor missed there."""
    assert load_differing(connection) == ()
    assert not [one for one in load_unattached(connection) if one.kind == TAG.kind]


def test_what_changed_meanwhile_stays_marked(connection: Connection) -> None:
    """An object that changed after its tag was worded is not noted, and stays marked."""
    as_of = load_stale(connection, TAGS, limit=9).as_of
    renamed = ObjectRecord(HAT, "Another title")
    save_records(connection, Collection(objects=(renamed,)), stamp=LATER)
    save_today_tags(connection, HELD, as_of=as_of)
    assert load_stale(connection, TAGS, limit=9).numbers == (HAT,)
    assert differing(connection) == [HAT]


def test_who_comes_late_writes_over_nothing(connection: Connection) -> None:
    """What somebody else has noted meanwhile is newer, or the same."""
    as_of = load_stale(connection, TAGS, limit=9).as_of
    save_today_tags(connection, HELD, as_of=as_of)
    save_today_tags(connection, {HAT: "b" * 64}, as_of=as_of)
    assert differing(connection) == []


def test_other_wording_marks_every_tag(connection: Connection) -> None:
    """Tags worded by other rules are all asked anew."""
    save_today_tags(connection, HELD, as_of=load_stale(connection, TAGS, limit=9).as_of)
    assert count_stale(connection, TAGS) == 0
    assert heed_wording(connection, "1" * 64)
    assert count_stale(connection, TAGS) == 3
