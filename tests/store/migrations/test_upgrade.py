from __future__ import annotations

from pathlib import Path

import pytest
from alembic.autogenerate import compare_metadata
from alembic.runtime.migration import MigrationContext
from sqlalchemy import Engine, inspect, text

from service.errors import StoreTooNewError
from service.store.base.columns import metadata
from service.store.migrations.upgrade import upgrade_store
from service.store.migrations.versions import r0003_search
from service.store.open import open_folder, reading, writing
from tests.store.made import dump


def _constraints(engine: Engine) -> dict[str, object]:
    """Give what the comparison does not look at: keys, checks and their names."""
    look = inspect(engine)
    return {
        table: (
            look.get_pk_constraint(table),
            sorted(look.get_foreign_keys(table), key=str),
            sorted(look.get_check_constraints(table), key=str),
        )
        for table in metadata.tables
    }


def _is_ours(name: str | None, kind: str, _parents: object) -> bool:
    """Leave out the tables of the index of words, which each database makes in its own way."""
    return kind != "table" or not str(name).startswith(r0003_search.TABLES)


def test_an_upgraded_store_has_the_tables_of_today(tmp_path: Path) -> None:
    """Every step one after another gives exactly the tables that the code knows."""
    engine, plain = open_folder(tmp_path / "steps"), open_folder(tmp_path / "plain")
    assert upgrade_store(engine) == tuple(f"r000{step}" for step in range(1, 9))
    with reading(engine) as connection:
        options = {"compare_server_default": True, "include_name": _is_ours}
        context = MigrationContext.configure(connection, opts=options)
        assert compare_metadata(context, metadata) == []
    with writing(plain) as connection:
        metadata.create_all(connection)
    assert _constraints(engine) == _constraints(plain)
    engine.dispose()
    plain.dispose()


def test_upgrading_again_does_nothing(engine: Engine) -> None:
    """A store of today's form is left as it is."""
    with reading(engine) as connection:
        before = dump(connection)
    assert upgrade_store(engine) == ()
    with reading(engine) as connection:
        assert dump(connection) == before


def test_a_newer_store_is_refused(engine: Engine) -> None:
    """A store that a newer version changed is neither used nor changed."""
    with writing(engine) as connection:
        connection.execute(text("UPDATE alembic_version SET version_num = 'r9999'"))
    with pytest.raises(StoreTooNewError, match="r9999"):
        upgrade_store(engine)
