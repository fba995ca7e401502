from __future__ import annotations

from alembic.operations import Operations
from alembic.runtime.migration import MigrationContext
from sqlalchemy import Connection, text

from service.records.mapping.mapping import ColumnMapping
from service.store.kept.imports import list_imports, note_import
from service.store.kept.mappings import list_mappings, save_mapping
from service.store.migrations.versions import r0008_mappings
from tests.store.made import LATER, STAMP


def test_imports_from_before_are_kept(connection: Connection) -> None:
    """They undo nothing, and mappings can be saved from now on."""
    note_import(connection, "export.csv", "a" * 64, {"objects new": 3}, stamp=STAMP)
    for table in ("mappings", "import_states", "photo_edits"):
        connection.execute(text(f"DROP TABLE {table}"))
    with Operations.context(MigrationContext.configure(connection)) as step:
        with step.batch_alter_table("imports") as imports:
            imports.drop_constraint("fk_imports_undoes_imports", type_="foreignkey")
            imports.drop_column("undoes")
        r0008_mappings.upgrade()
    (kept,) = list_imports(connection)
    assert (kept.name, kept.summary) == ("export.csv", {"objects new": 3})
    save_mapping(connection, "x", ColumnMapping(headings=(("N", "object_number"),)), stamp=LATER)
    assert [one.name for one in list_mappings(connection)] == ["x"]
