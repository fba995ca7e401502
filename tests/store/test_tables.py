from __future__ import annotations

from sqlalchemy.dialects import postgresql
from sqlalchemy.schema import CreateIndex, CreateTable

from service.store.base.columns import metadata


def test_tables_can_be_made_on_postgresql() -> None:
    """Every table and index has its statement there too; attached cards and tags stay the only."""
    dialect = postgresql.dialect()  # type: ignore[no-untyped-call]
    for table in metadata.sorted_tables:
        CreateTable(table).compile(dialect=dialect)
    statements = [
        str(CreateIndex(index).compile(dialect=dialect))
        for table in metadata.sorted_tables
        for index in table.indexes
    ]
    attached = sorted(text for text in statements if "uq_printed_cards_attached" in text)
    assert [text.partition("(")[2] for text in attached] == [
        "container_id, kind, side) WHERE state = 'attached'",
        "object_id, kind, side) WHERE state = 'attached'",
    ]
