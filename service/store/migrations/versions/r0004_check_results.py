"""What each look of a check gave; checks noted before have no results and none are invented."""

from __future__ import annotations

from alembic import op
from sqlalchemy import CheckConstraint, Column, ForeignKey, Integer, PrimaryKeyConstraint, Text

revision = "r0004"
down_revision = "r0003"


def upgrade() -> None:
    """Make the table of results."""
    op.create_table(
        "check_results",
        Column(
            "check_id",
            Integer,
            ForeignKey("checks.id", name="fk_check_results_check_id_checks"),
            nullable=False,
        ),
        Column("kind", Text, nullable=False),
        Column("result", Text, nullable=False),
        Column("note", Text, nullable=False),
        PrimaryKeyConstraint("check_id", "kind", name="pk_check_results"),
        CheckConstraint(
            "result IN ('ok', 'found', 'not-done')",
            name=op.f("ck_check_results_result_is_known"),
        ),
    )
