from __future__ import annotations

from service.store.base.columns import metadata
from service.store.today.tables import (
    today_cards,
    today_stale,
    today_stale_tags,
    today_tags,
    today_wording,
)


def test_the_note_belongs_to_the_store() -> None:
    """Its tables stand with all others; each row is about one container or object, or all."""
    ours = {today_cards, today_stale, today_wording, today_tags, today_stale_tags}
    assert ours <= set(metadata.sorted_tables)
    assert [column.name for column in today_cards.primary_key] == ["container_id", "kind", "side"]
    assert [column.name for column in today_stale.primary_key] == ["container_id"]
    for table in (today_tags, today_stale_tags):
        assert [column.name for column in table.primary_key] == ["object_id"]
