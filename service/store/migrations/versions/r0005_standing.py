"""The note tells what a container should have from what it only got on request."""

from __future__ import annotations

from alembic import op
from sqlalchemy import Boolean, Column, Integer, PrimaryKeyConstraint, Text, text
from sqlalchemy.schema import ForeignKey

revision = "r0005"
down_revision = "r0004"


def upgrade() -> None:
    """Make the note of cards anew, and mark every container: it is only ever a copy."""
    op.drop_table("today_cards")
    container = ForeignKey("containers.id", name="fk_today_cards_container_id_containers")
    op.create_table(
        "today_cards",
        Column("container_id", Integer, container),
        Column("kind", Text),
        Column("side", Integer),
        Column("fingerprint", Text, nullable=False),
        Column("standing", Boolean, nullable=False),
        PrimaryKeyConstraint("container_id", "kind", "side", name="pk_today_cards"),
    )
    connection = op.get_bind()
    connection.execute(text("DELETE FROM today_stale"))
    connection.execute(
        text(
            "INSERT INTO today_stale (container_id, since)"
            " SELECT containers.id, change_counter.changes FROM containers, change_counter"
        )
    )
