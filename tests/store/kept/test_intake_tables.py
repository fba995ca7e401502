from __future__ import annotations

from service.store.base.columns import metadata
from service.store.kept.intake_tables import import_states, mappings, photo_edits


def test_the_tables_are_of_the_store() -> None:
    """All belong to the tables that are made."""
    for table in (mappings, import_states, photo_edits):
        assert metadata.tables[table.name] is table
