"""Runs the steps that a store still lacks, all in one transaction."""

from __future__ import annotations

from pathlib import Path

from alembic.operations import Operations
from alembic.runtime.migration import MigrationContext, MigrationStep
from alembic.script import ScriptDirectory
from sqlalchemy import Connection, Engine

from service.errors import StoreTooNewError
from service.store.open import writing

HERE = Path(__file__).parent


def upgrade_store(engine: Engine) -> tuple[str, ...]:
    """Bring the store to the form of today and name the steps that were taken, oldest first.

    Raises:
        StoreTooNewError: When a newer version of the service has changed the store.
        StoreBusyError: When others kept the store locked for too long.
    """
    scripts = ScriptDirectory(str(HERE))
    with writing(engine) as connection:
        current = MigrationContext.configure(connection).get_current_revision()
        lacking = _lacking(scripts, current)
        if lacking:
            _run(connection, scripts, lacking)
    return tuple(lacking)


def _lacking(scripts: ScriptDirectory, current: str | None) -> list[str]:
    """List the steps after `current`.

    Raises:
        StoreTooNewError: When `current` is none of the steps known.
    """
    known = [script.revision for script in scripts.walk_revisions()][::-1]
    if current is None:
        return known
    if current not in known:
        raise StoreTooNewError(current)
    return known[known.index(current) + 1 :]


def _run(connection: Connection, scripts: ScriptDirectory, lacking: list[str]) -> None:
    def steps(_heads: object, _context: object) -> list[MigrationStep]:
        return [
            MigrationStep.upgrade_from_script(scripts.revision_map, scripts.get_revision(name))
            for name in lacking
        ]

    context = MigrationContext.configure(connection, opts={"fn": steps})
    with Operations.context(context):
        context.run_migrations()
