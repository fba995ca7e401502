"""The kinds of column, the same on SQLite and PostgreSQL.

Times are UTC ISO text of one length, so that they sort as text on every database.
"""

from __future__ import annotations

from datetime import UTC, datetime

from sqlalchemy import (
    Column,
    Dialect,
    ForeignKey,
    Integer,
    MetaData,
    String,
    Text,
    TypeDecorator,
)

TIME_LENGTH = 32

SORTED = Text().with_variant(Text(collation="C"), "postgresql")
"""Text that sorts by its characters alone on every database: keys of the natural order."""


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


def key() -> Column[int]:
    """Give the column of a key that the database counts."""
    return Column("id", Integer, primary_key=True)


def text(name: str, *, unique: bool = False, index: bool = False) -> Column[str]:
    """Give a column of text that is always there."""
    return Column(name, Text, nullable=False, unique=unique, index=index)


def sorted_text(name: str) -> Column[str]:
    """Give a column of text that sorts by its characters alone."""
    return Column(name, SORTED, nullable=False, index=True)


def number(name: str) -> Column[int]:
    """Give a column of whole numbers."""
    return Column(name, Integer, nullable=False)


def of(table: str, name: str, *, index: bool = True, nullable: bool = False) -> Column[int]:
    """Give a column that names a row of another table."""
    return Column(name, Integer, ForeignKey(f"{table}.id"), nullable=nullable, index=index)


def at(name: str = "at") -> Column[datetime]:
    """Give a column of a moment."""
    return Column(name, UtcTime, nullable=False)
