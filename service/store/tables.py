"""The tables: one place for every column, the same on SQLite and PostgreSQL.

A record is kept whole as canonical JSON; beside it stand the columns that are searched or joined.
Times are UTC ISO text of one length, so that they sort as text on every database. Packings, places
and history are only ever added to.
"""

from __future__ import annotations

from datetime import UTC, datetime
from enum import StrEnum

from sqlalchemy import (
    CheckConstraint,
    Column,
    Date,
    Dialect,
    ForeignKey,
    Index,
    Integer,
    MetaData,
    String,
    Table,
    Text,
    TypeDecorator,
    UniqueConstraint,
)

TIME_LENGTH = 32


class CardState(StrEnum):
    """What became of a printed card."""

    MADE = "made"
    ATTACHED = "attached"
    WITHDRAWN = "withdrawn"
    SPOILED = "spoiled"


class UtcTime(TypeDecorator[datetime]):
    """A moment as ISO text in UTC with microseconds: 2026-11-25T15:54:55.000000+00:00."""

    impl = String(TIME_LENGTH)
    cache_ok = True

    def process_bind_param(self, value: datetime | None, dialect: Dialect) -> str | None:
        """Write a moment; one without a time zone is refused.

        Raises:
            ValueError: When the moment has no time zone.
        """
        del dialect
        if value is None:
            return None
        if value.tzinfo is None:
            message = f"{value} has no time zone."
            raise ValueError(message)
        return value.astimezone(UTC).isoformat(timespec="microseconds")

    def process_result_value(self, value: str | None, dialect: Dialect) -> datetime | None:
        """Read a moment."""
        del dialect
        return None if value is None else datetime.fromisoformat(value)


metadata = MetaData(
    naming_convention={
        "ix": "ix_%(column_0_label)s",
        "uq": "uq_%(table_name)s_%(column_0_N_name)s",
        "ck": "ck_%(table_name)s_%(constraint_name)s",
        "fk": "fk_%(table_name)s_%(column_0_name)s_%(referred_table_name)s",
        "pk": "pk_%(table_name)s",
    }
)


def _key() -> Column[int]:
    return Column("id", Integer, primary_key=True)


def _text(name: str, *, unique: bool = False, index: bool = False) -> Column[str]:
    return Column(name, Text, nullable=False, unique=unique, index=index)


def _number(name: str) -> Column[int]:
    return Column(name, Integer, nullable=False)


def _of(table: str, name: str, *, index: bool = True) -> Column[int]:
    return Column(name, Integer, ForeignKey(f"{table}.id"), nullable=False, index=index)


def _at(name: str = "at") -> Column[datetime]:
    return Column(name, UtcTime, nullable=False)


# One row: the number of the last change. Whoever changes anything locks it first.
change_counter = Table("change_counter", metadata, _key(), _number("changes"))

actors = Table("actors", metadata, _key(), _text("name", unique=True))

museum = Table("museum", metadata, _key(), _text("record"))

objects = Table(
    "objects",
    metadata,
    _key(),
    _text("object_number", unique=True),
    _text("title"),
    _text("record"),
    _text("source"),
)

# `sha256` names the stored file, and is empty until it has been brought.
photos = Table(
    "photos",
    metadata,
    Column("object_id", Integer, ForeignKey("objects.id"), primary_key=True),
    Column("position", Integer, primary_key=True),
    _text("file", index=True),
    _text("role"),
    _text("sha256"),
)

# `revision` is that of the current packing, 0 before the first.
containers = Table(
    "containers",
    metadata,
    _key(),
    _text("container_number", unique=True),
    _text("title"),
    _text("location"),
    _text("inside", index=True),
    Column("revision", Integer, nullable=False, default=0),
    _text("record"),
    _text("source"),
)

packings = Table(
    "packings",
    metadata,
    _key(),
    _of("containers", "container_id", index=False),
    _number("revision"),
    _text("record"),
    _of("actors", "actor_id", index=False),
    _at(),
    UniqueConstraint("container_id", "revision"),
    CheckConstraint("revision >= 1", name="revision_counts_from_1"),
)

# An object may be packed that is in no record, so the number refers to none. `parts` is JSON.
places = Table(
    "places",
    metadata,
    Column("packing_id", Integer, ForeignKey("packings.id"), primary_key=True),
    Column("position", Integer, primary_key=True),
    _text("object_number", index=True),
    _text("parts"),
)

# Rows of one change carry its number. `detail` is JSON, empty where the verb says it all.
history = Table(
    "history",
    metadata,
    _key(),
    _number("change"),
    _at(),
    _of("actors", "actor_id", index=False),
    _text("verb"),
    _text("container_number", index=True),
    _text("object_number", index=True),
    Column("revision", Integer),
    _text("detail"),
)

# `options` and `files` are JSON: what was asked for; name, SHA-256 and length of each PDF.
print_runs = Table(
    "print_runs",
    metadata,
    _key(),
    _at(),
    _of("actors", "actor_id", index=False),
    _text("options"),
    _text("files"),
)

printed_cards = Table(
    "printed_cards",
    metadata,
    _key(),
    _of("print_runs", "run_id"),
    _of("containers", "container_id"),
    _text("kind"),
    _number("side"),
    _number("copy"),
    _number("revision"),
    _text("fingerprint"),
    _text("content"),
    _text("state"),
    _of("actors", "state_actor_id", index=False),
    _at("state_at"),
    UniqueConstraint("run_id", "container_id", "kind", "side", "copy"),
    CheckConstraint(
        "state IN ('made', 'attached', 'withdrawn', 'spoiled')",
        name="state_is_known",
    ),
)

_attached = printed_cards.c.state == CardState.ATTACHED.value
Index(
    "uq_printed_cards_attached",
    printed_cards.c.container_id,
    printed_cards.c.kind,
    printed_cards.c.side,
    unique=True,
    sqlite_where=_attached,
    postgresql_where=_attached,
)

checks = Table(
    "checks",
    metadata,
    _key(),
    _of("containers", "container_id"),
    Column("checked_on", Date, nullable=False),
    _text("note"),
    _of("actors", "actor_id", index=False),
    _at(),
)
