"""The note of what today's cards say; every container there is has still to be worded."""

from __future__ import annotations

from alembic import op
from sqlalchemy import Column, ForeignKey, Integer, PrimaryKeyConstraint, Text, text

revision = "r0002"
down_revision = "r0001"


def upgrade() -> None:
    """Make the tables of the note, and mark every container."""
    op.create_table(
        "today_cards",
        _container("today_cards"),
        Column("kind", Text),
        Column("side", Integer),
        Column("fingerprint", Text, nullable=False),
        PrimaryKeyConstraint("container_id", "kind", "side", name="pk_today_cards"),
    )
    op.create_table(
        "today_stale",
        _container("today_stale"),
        Column("since", Integer, nullable=False),
        PrimaryKeyConstraint("container_id", name="pk_today_stale"),
    )
    op.create_index("ix_today_stale_since", "today_stale", ["since"])
    op.create_table(
        "today_wording",
        Column("id", Integer),
        Column("sha256", Text, nullable=False),
        PrimaryKeyConstraint("id", name="pk_today_wording"),
    )
    op.get_bind().execute(
        text(
            "INSERT INTO today_stale (container_id, since)"
            " SELECT containers.id, change_counter.changes FROM containers, change_counter"
        )
    )


def _container(table: str) -> Column[int]:
    key = ForeignKey("containers.id", name=f"fk_{table}_container_id_containers")
    return Column("container_id", Integer, key)
