"""The tables of the round: who looked at a container on which day, and what each look gave."""

from __future__ import annotations

from sqlalchemy import CheckConstraint, Column, Date, ForeignKey, Integer, Table, Text

from service.store.base.columns import at, key, metadata, of, text

checks = Table(
    "checks",
    metadata,
    key(),
    of("containers", "container_id"),
    Column("checked_on", Date, nullable=False),
    text("note"),
    of("actors", "actor_id", index=False),
    at(),
)

# A check noted before there were results has none: it says only that somebody looked.
check_results = Table(
    "check_results",
    metadata,
    Column("check_id", Integer, ForeignKey("checks.id"), primary_key=True),
    Column("kind", Text, primary_key=True),
    text("result"),
    text("note"),
    CheckConstraint("result IN ('ok', 'found', 'not-done')", name="result_is_known"),
)
