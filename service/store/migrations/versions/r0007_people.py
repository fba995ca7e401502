"""Users, and what signs them in; a store has none until somebody adds the first."""

from __future__ import annotations

from alembic import op
from sqlalchemy import (
    Boolean,
    CheckConstraint,
    Column,
    ForeignKey,
    Integer,
    PrimaryKeyConstraint,
    String,
    Text,
    UniqueConstraint,
)

revision = "r0007"
down_revision = "r0006"

_TIME_LENGTH = 32


def upgrade() -> None:
    """Make the tables of people."""
    _make_users()
    op.create_table(
        "sessions",
        Column("sha256", Text, nullable=False),
        _user("sessions"),
        Column("device", Text, nullable=False),
        *(_at(name) for name in ("began_at", "last_used", "ends_at")),
        PrimaryKeyConstraint("sha256", name="pk_sessions"),
    )
    op.create_table(
        "tokens",
        Column("id", Integer, nullable=False),
        Column("sha256", Text, nullable=False),
        _user("tokens"),
        *(Column(name, Text, nullable=False) for name in ("name", "scopes")),
        _at("made_at"),
        *(Column(name, String(_TIME_LENGTH)) for name in ("last_used", "revoked_at")),
        PrimaryKeyConstraint("id", name="pk_tokens"),
        UniqueConstraint("sha256", name="uq_tokens_sha256"),
    )
    op.create_table(
        "pairings",
        Column("sha256", Text, nullable=False),
        _user("pairings"),
        _at("ends_at"),
        PrimaryKeyConstraint("sha256", name="pk_pairings"),
    )
    for table in ("sessions", "tokens", "pairings"):
        op.create_index(f"ix_{table}_user_id", table, ["user_id"])


def _at(name: str) -> Column[str]:
    return Column(name, String(_TIME_LENGTH), nullable=False)


def _user(table: str) -> Column[int]:
    owner = ForeignKey("users.id", name=f"fk_{table}_user_id_users")
    return Column("user_id", Integer, owner, nullable=False)


def _make_users() -> None:
    op.create_table(
        "users",
        Column("id", Integer, nullable=False),
        *(Column(name, Text, nullable=False) for name in ("name", "name_key", "role", "password")),
        Column("disabled", Boolean, nullable=False),
        _at("added_at"),
        Column("last_seen", String(_TIME_LENGTH)),
        PrimaryKeyConstraint("id", name="pk_users"),
        UniqueConstraint("name_key", name="uq_users_name_key"),
        CheckConstraint(
            "role IN ('view', 'pack', 'print', 'manage')", name=op.f("ck_users_role_is_known")
        ),
    )
