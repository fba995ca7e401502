"""The tables of what is taken in: mappings of headings, former states, and how photos are shown."""

from __future__ import annotations

from sqlalchemy import Boolean, Column, ForeignKey, Integer, Table, Text

from service.store.base.columns import at, metadata, number, of, text

# `mapping` is JSON: which heading fills which field, and how the table is written.
mappings = Table(
    "mappings",
    metadata,
    Column("name", Text, primary_key=True),
    text("mapping"),
    of("actors", "actor_id", index=False),
    at(),
)

# What an import changed: `kind` and `number` say what, `before` and `source` how it was (None where
# there was nothing), `after_sha256` how it then was (empty where nothing is left), and `revision`
# which packing was made.
import_states = Table(
    "import_states",
    metadata,
    Column("import_id", Integer, ForeignKey("imports.id"), primary_key=True),
    Column("kind", Text, primary_key=True),
    Column("number", Text, primary_key=True),
    Column("before", Text),
    text("source"),
    text("after_sha256"),
    Column("revision", Integer),
)

# How an object shows a photo; without a row as it came. `crop` is JSON, empty where it is whole,
# `role` empty where it is as brought, `place` its place in an order that somebody gave.
photo_edits = Table(
    "photo_edits",
    metadata,
    Column("object_id", Integer, ForeignKey("objects.id"), primary_key=True),
    Column("sha256", Text, primary_key=True),
    number("turns"),
    text("crop"),
    text("role"),
    Column("place", Integer),
    Column("is_printed", Boolean, nullable=False),
    Column("is_removed", Boolean, nullable=False),
)
