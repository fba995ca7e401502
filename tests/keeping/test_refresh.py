"""Tests for bringing the note of today's cards up to date."""

from __future__ import annotations

from dataclasses import replace

import pytest

from service.cards.fingerprint import fingerprint_card
from service.keeping import refresh
from service.keeping.refresh import refresh_today, wording_sha256
from service.keeping.repack import Seen, put_in
from service.keeping.today import compose_today
from service.pages.ruler import Ruler
from service.records.record import Collection, PlaceRecord
from service.store.handles import Engine
from service.store.open import reading, writing
from service.store.save_records import save_records
from service.store.today.note import heed_wording, load_unattached, load_wording
from service.store.today.stale import CARDS, TAGS, count_stale
from service.store.today.tag_note import load_differing_tags
from tests.keeping.made import BOX, COLLECTION, COVER, EMPTY, GOWN, JAR, LEAD
from tests.keeping.tags.made import attach_tags
from tests.store.made import LATER


def test_the_note_is_what_the_cards_say(engine: Engine, ruler: Ruler) -> None:
    """Every card of every container is noted, and only what changed is worded again."""
    told: list[tuple[str, int, int]] = []
    refresh_today(engine, ruler, on_progress=lambda *step: told.append(step))
    assert told == [("cards", 3, 3)]
    with reading(engine) as connection:
        today = compose_today(connection, ruler)
        noted = {(one.container_number, one.kind, one.side) for one in load_unattached(connection)}
    assert noted == today.standing
    with writing(engine) as connection:
        put_in(connection, Seen(EMPTY, 0), PlaceRecord("X.112"), stamp=LATER)
    refresh_today(engine, ruler, on_progress=lambda *step: told.append(step))
    assert told[1:] == [("cards", 1, 1)]
    assert all(len(fingerprint_card(card)) == 64 for card in today.cards.values())


def test_portions_come_to_an_end(
    engine: Engine, ruler: Ruler, monkeypatch: pytest.MonkeyPatch
) -> None:
    """However small the portions, every container is worded."""
    monkeypatch.setattr(refresh, "OF_CONTAINERS", replace(refresh.OF_CONTAINERS, at_once=1))
    told: list[int] = []
    refresh_today(engine, ruler, on_progress=lambda _step, done, _of: told.append(done))
    assert told == [1, 2, 3]
    with reading(engine) as connection:
        assert count_stale(connection, CARDS) == 0


def test_other_words_are_heeded(engine: Engine, ruler: Ruler) -> None:
    """A program that words cards otherwise asks every container anew."""
    refresh_today(engine, ruler)
    with writing(engine) as connection:
        assert load_wording(connection) == wording_sha256()
        heed_wording(connection, "0" * 64)
    told: list[int] = []
    refresh_today(engine, ruler, on_progress=lambda _step, done, _of: told.append(done))
    assert told == [3]
    assert {BOX, COVER, EMPTY}


@pytest.mark.parametrize("portion", [1, 2, 9])
def test_only_the_tags_that_changed_are_worded(
    engine: Engine, ruler: Ruler, monkeypatch: pytest.MonkeyPatch, portion: int
) -> None:
    """However small the portions, every tag is worded once; with nothing new, none."""
    monkeypatch.setattr(refresh, "OF_OBJECTS", replace(refresh.OF_OBJECTS, at_once=portion))
    told: list[tuple[str, int, int]] = []
    with writing(engine) as connection:
        attach_tags(connection, ruler, JAR, LEAD, GOWN)
    for _ in range(2):
        refresh_today(engine, ruler, on_progress=lambda *step: told.append(step))
    told = [step for step in told if step[0] == "tags"]
    assert told[-1] == ("tags", 3, 3)
    assert len(told) == -(-3 // portion)
    with reading(engine) as connection:
        assert (count_stale(connection, TAGS), load_differing_tags(connection)) == (0, ())


def test_a_tag_that_cannot_be_worded_differs(engine: Engine, ruler: Ruler) -> None:
    """It is noted as such, and not asked about for ever."""
    museum = replace(COLLECTION.museum, object_address="http://plain.example/{object_number}")
    with writing(engine) as connection:
        attach_tags(connection, ruler, LEAD)
        save_records(connection, Collection(museum=museum), stamp=LATER)
    refresh_today(engine, ruler)
    with reading(engine) as connection:
        assert count_stale(connection, TAGS) == 0
        assert [card.made.object_number for card in load_differing_tags(connection)] == [LEAD]
