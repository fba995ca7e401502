"""A printed card is that of a container, or as a tag that of an object, with a note of its own."""

from __future__ import annotations

from alembic import op
from sqlalchemy import Column, ForeignKey, Integer, PrimaryKeyConstraint, Text, text

revision = "r0006"
down_revision = "r0005"


def upgrade() -> None:
    """Let a card name an object in place of a container; the note of tags begins empty."""
    with op.batch_alter_table("printed_cards") as cards:
        cards.alter_column("container_id", existing_type=Integer(), nullable=True)
        cards.add_column(Column("object_id", Integer, _object("printed_cards")))
        cards.create_check_constraint(
            op.f("ck_printed_cards_is_of_one"), "(container_id IS NULL) <> (object_id IS NULL)"
        )
        cards.create_unique_constraint(
            op.f("uq_printed_cards_run_id_object_id_kind_side_copy"),
            ["run_id", "object_id", "kind", "side", "copy"],
        )
    op.create_index("ix_printed_cards_object_id", "printed_cards", ["object_id"])
    attached = text("state = 'attached'")
    op.create_index(
        "uq_printed_cards_attached_tag",
        "printed_cards",
        ["object_id", "kind", "side"],
        unique=True,
        sqlite_where=attached,
        postgresql_where=attached,
    )
    op.create_table(
        "today_tags",
        Column("object_id", Integer, _object("today_tags")),
        Column("fingerprint", Text, nullable=False),
        PrimaryKeyConstraint("object_id", name="pk_today_tags"),
    )
    op.create_table(
        "today_stale_tags",
        Column("object_id", Integer, _object("today_stale_tags")),
        Column("since", Integer, nullable=False),
        PrimaryKeyConstraint("object_id", name="pk_today_stale_tags"),
    )
    op.create_index("ix_today_stale_tags_since", "today_stale_tags", ["since"])


def _object(table: str) -> ForeignKey:
    return ForeignKey("objects.id", name=f"fk_{table}_object_id_objects")
