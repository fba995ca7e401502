from __future__ import annotations

from dataclasses import replace

import pytest

from service.keeping.tags import refresh
from service.keeping.tags.refresh import refresh_today_tags
from service.pages.ruler import Ruler
from service.records.record import Collection
from service.store.handles import Engine
from service.store.open import reading, writing
from service.store.save_records import save_records
from service.store.today.tag_note import count_stale_tags, load_differing_tags
from tests.keeping.made import COLLECTION, GOWN, JAR, LEAD
from tests.keeping.tags.made import attach_tags
from tests.store.made import LATER


@pytest.mark.parametrize("portion", [1, 2, 9])
def test_only_what_changed_is_worded(
    engine: Engine, ruler: Ruler, monkeypatch: pytest.MonkeyPatch, portion: int
) -> None:
    """However small the portions, every tag is worded once; with nothing new, none."""
    monkeypatch.setattr(refresh, "PORTION", portion)
    told: list[tuple[int, int]] = []
    with writing(engine) as connection:
        attach_tags(connection, ruler, JAR, LEAD, GOWN)
    for _ in range(2):
        refresh_today_tags(
            engine, ruler, on_progress=lambda _step, done, of: told.append((done, of))
        )
    assert told[-1] == (3, 3)
    assert len(told) == -(-3 // portion)
    with reading(engine) as connection:
        assert (count_stale_tags(connection), load_differing_tags(connection)) == (0, ())


def test_a_tag_that_cannot_be_worded_differs(engine: Engine, ruler: Ruler) -> None:
    """It is noted as such, and not asked about for ever."""
    museum = replace(COLLECTION.museum, object_address="http://plain.example/{object_number}")
    with writing(engine) as connection:
        attach_tags(connection, ruler, LEAD)
        save_records(connection, Collection(museum=museum), stamp=LATER)
    refresh_today_tags(engine, ruler)
    with reading(engine) as connection:
        assert count_stale_tags(connection) == 0
        assert [card.made.object_number for card in load_differing_tags(connection)] == [LEAD]
