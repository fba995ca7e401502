from __future__ import annotations

from service.store.base.columns import metadata
from service.store.today.tables import today_cards, today_stale, today_wording


def test_the_note_belongs_to_the_store() -> None:
    """Its tables stand with all others, and each row is about one container, or about all."""
    assert {today_cards, today_stale, today_wording} <= set(metadata.sorted_tables)
    assert [column.name for column in today_cards.primary_key] == ["container_id", "kind", "side"]
    assert [column.name for column in today_stale.primary_key] == ["container_id"]
