"""The tables of the note: fingerprints as of now, and what changed since."""

from __future__ import annotations

from sqlalchemy import Boolean, Column, ForeignKey, Integer, Table, Text

from service.store.base.columns import metadata


def _container() -> Column[int]:
    return Column("container_id", Integer, ForeignKey("containers.id"), primary_key=True)


# `standing` is false for what is printed on request: no container lacks it.
today_cards = Table(
    "today_cards",
    metadata,
    _container(),
    Column("kind", Text, primary_key=True),
    Column("side", Integer, primary_key=True),
    Column("fingerprint", Text, nullable=False),
    Column("standing", Boolean, nullable=False),
)

# `since` is the number of the last change after which the container's cards may say something else.
today_stale = Table(
    "today_stale",
    metadata,
    _container(),
    Column("since", Integer, nullable=False, index=True),
)

# Of objects that have a tag on them; empty where the tag cannot be worded.
today_tags = Table(
    "today_tags",
    metadata,
    Column("object_id", Integer, ForeignKey("objects.id"), primary_key=True),
    Column("fingerprint", Text, nullable=False),
)

today_stale_tags = Table(
    "today_stale_tags",
    metadata,
    Column("object_id", Integer, ForeignKey("objects.id"), primary_key=True),
    Column("since", Integer, nullable=False, index=True),
)

# One row: by which wording the fingerprints were made.
today_wording = Table(
    "today_wording",
    metadata,
    Column("id", Integer, primary_key=True),
    Column("sha256", Text, nullable=False),
)
