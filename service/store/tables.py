"""The tables: one place for every column, the same on SQLite and PostgreSQL.

A record is kept whole as canonical JSON; beside it stand the columns that are searched or joined.
Packings, places and history are only ever added to.
"""

from __future__ import annotations

from enum import StrEnum

from sqlalchemy import (
    Boolean,
    CheckConstraint,
    Column,
    Date,
    ForeignKey,
    Index,
    Integer,
    Table,
    Text,
    UniqueConstraint,
)

import service.store.kept.check_tables  # noqa: F401 - its tables are of the same store
import service.store.kept.intake_tables  # noqa: F401 - likewise
import service.store.people.tables  # noqa: F401 - likewise
from service.store.base.columns import UtcTime, at, key, metadata, number, of, sorted_text, text


class CardState(StrEnum):
    """What became of a printed card."""

    MADE = "made"
    ATTACHED = "attached"
    WITHDRAWN = "withdrawn"
    SPOILED = "spoiled"


# One row: the number of the last change. Whoever changes anything locks it first.
change_counter = Table("change_counter", metadata, key(), number("changes"))

actors = Table("actors", metadata, key(), text("name", unique=True))

museum = Table("museum", metadata, key(), text("record"))

objects = Table(
    "objects",
    metadata,
    key(),
    text("object_number", unique=True),
    sorted_text("sort_key"),
    text("title"),
    text("record"),
    text("source"),
)

# `sha256` names the stored file, empty until it is brought; `is_named` says that a record names it.
photos = Table(
    "photos",
    metadata,
    Column("object_id", Integer, ForeignKey("objects.id"), primary_key=True),
    Column("position", Integer, primary_key=True),
    text("file", index=True),
    text("role"),
    text("sha256"),
    Column("is_named", Boolean, nullable=False),
)

# `revision` is that of the current packing, 0 before the first.
containers = Table(
    "containers",
    metadata,
    key(),
    text("container_number", unique=True),
    text("title"),
    text("location"),
    sorted_text("sort_key"),
    sorted_text("location_key"),
    text("inside", index=True),
    Column("revision", Integer, nullable=False, default=0),
    text("record"),
    text("source"),
)

packings = Table(
    "packings",
    metadata,
    key(),
    of("containers", "container_id", index=False),
    number("revision"),
    text("record"),
    of("actors", "actor_id", index=False),
    at(),
    UniqueConstraint("container_id", "revision"),
    CheckConstraint("revision >= 1", name="revision_counts_from_1"),
)

stored_files = Table(
    "stored_files",
    metadata,
    Column("sha256", Text, primary_key=True),
    text("suffix"),
    number("length_bytes"),
    at(),
)

# An object may be packed that is in no record, so the number refers to none. `parts` is JSON.
places = Table(
    "places",
    metadata,
    Column("packing_id", Integer, ForeignKey("packings.id"), primary_key=True),
    Column("position", Integer, primary_key=True),
    text("object_number", index=True),
    text("parts"),
)

# Rows of one change carry its number. `detail` is JSON, empty where the verb says it all.
history = Table(
    "history",
    metadata,
    key(),
    number("change"),
    at(),
    of("actors", "actor_id", index=False),
    text("verb"),
    text("container_number", index=True),
    text("object_number", index=True),
    Column("revision", Integer),
    text("detail"),
)

# `options` and `files` are JSON: what was asked for; name, SHA-256 and length of each PDF.
print_runs = Table(
    "print_runs",
    metadata,
    key(),
    at(),
    of("actors", "actor_id", index=False),
    text("options"),
    text("files"),
)

# A card is that of a container, or as a tag that of an object.
# `file` names the PDF in its run; `places` is JSON: sheet and position of each face.
printed_cards = Table(
    "printed_cards",
    metadata,
    key(),
    of("print_runs", "run_id"),
    of("containers", "container_id", nullable=True),
    of("objects", "object_id", nullable=True),
    text("kind"),
    number("side"),
    number("copy"),
    number("revision"),
    text("fingerprint"),
    text("content"),
    text("file"),
    text("places"),
    text("state"),
    of("actors", "state_actor_id", index=False),
    at("state_at"),
    UniqueConstraint("run_id", "container_id", "kind", "side", "copy"),
    UniqueConstraint("run_id", "object_id", "kind", "side", "copy"),
    CheckConstraint("(container_id IS NULL) <> (object_id IS NULL)", name="is_of_one"),
    CheckConstraint(
        "state IN ('made', 'attached', 'withdrawn', 'spoiled')",
        name="state_is_known",
    ),
)

_attached = printed_cards.c.state == CardState.ATTACHED.value
for _name, _owner in (
    ("uq_printed_cards_attached", "container_id"),
    ("uq_printed_cards_attached_tag", "object_id"),
):
    Index(
        _name,
        *(printed_cards.c[column] for column in (_owner, "kind", "side")),
        unique=True,
        sqlite_where=_attached,
        postgresql_where=_attached,
    )

# Removal slips: `back_at` is empty while the object is out.
outs = Table(
    "outs",
    metadata,
    key(),
    text("object_number", index=True),
    text("parts"),
    of("containers", "container_id"),
    text("to_whom"),
    text("reason"),
    Column("due_back", Date),
    of("actors", "actor_id", index=False),
    at("out_at"),
    Column("back_at", UtcTime),
)

# The sheet of each stock that was begun; `positions` is JSON: those that are gone.
used_sheets = Table(
    "used_sheets",
    metadata,
    Column("stock", Text, primary_key=True),
    text("positions"),
    of("actors", "actor_id", index=False),
    at(),
)

# `summary` is JSON: how many records were new, changed, unchanged and refused. `undoes` names the
# import that this one took back.
imports = Table(
    "imports",
    metadata,
    key(),
    at(),
    of("actors", "actor_id", index=False),
    text("name"),
    text("sha256"),
    text("summary"),
    of("imports", "undoes", index=False, nullable=True),
)

# What was answered to a request that named a key, so that it can be answered again.
replies = Table(
    "replies",
    metadata,
    Column("key", Text, primary_key=True),
    text("request_sha256"),
    number("status"),
    text("reply"),
    at(),
)

# Long work: what was asked for, how far it is, what came of it. `request` and `result` are JSON.
tasks = Table(
    "tasks",
    metadata,
    Column("id", Text, primary_key=True),
    text("kind"),
    text("request"),
    text("state"),
    number("done"),
    number("of"),
    text("result"),
    of("actors", "actor_id", index=False),
    at(),
    Column("finished_at", UtcTime),
)
