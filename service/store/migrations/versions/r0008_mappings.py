"""Mappings of headings, what imports changed and which undid which, and how photos are shown."""

from __future__ import annotations

from alembic import op
from sqlalchemy import (
    Boolean,
    Column,
    ForeignKey,
    Integer,
    PrimaryKeyConstraint,
    String,
    Text,
)

revision = "r0008"
down_revision = "r0007"


def upgrade() -> None:
    """Make the three tables; of imports from before nothing is known that could be undone."""
    op.create_table(
        "mappings",
        Column("name", Text, nullable=False),
        Column("mapping", Text, nullable=False),
        Column("actor_id", Integer, _of("mappings", "actor_id", "actors"), nullable=False),
        Column("at", String(32), nullable=False),
        PrimaryKeyConstraint("name", name="pk_mappings"),
    )
    op.create_table(
        "import_states",
        Column("import_id", Integer, _of("import_states", "import_id", "imports"), nullable=False),
        Column("kind", Text, nullable=False),
        Column("number", Text, nullable=False),
        Column("before", Text),
        Column("source", Text, nullable=False),
        Column("after_sha256", Text, nullable=False),
        Column("revision", Integer),
        PrimaryKeyConstraint("import_id", "kind", "number", name="pk_import_states"),
    )
    op.create_table(
        "photo_edits",
        Column("object_id", Integer, _of("photo_edits", "object_id", "objects"), nullable=False),
        Column("sha256", Text, nullable=False),
        Column("turns", Integer, nullable=False),
        Column("crop", Text, nullable=False),
        Column("role", Text, nullable=False),
        Column("place", Integer),
        Column("is_printed", Boolean, nullable=False),
        Column("is_removed", Boolean, nullable=False),
        PrimaryKeyConstraint("object_id", "sha256", name="pk_photo_edits"),
    )
    with op.batch_alter_table("imports") as imports:
        imports.add_column(Column("undoes", Integer, _of("imports", "undoes", "imports")))


def _of(table: str, column: str, other: str) -> ForeignKey:
    return ForeignKey(f"{other}.id", name=f"fk_{table}_{column}_{other}")
