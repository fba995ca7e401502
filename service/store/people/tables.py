"""The tables of users and of what signs them in; every secret stands there as its SHA-256."""

from __future__ import annotations

from sqlalchemy import Boolean, CheckConstraint, Column, Table, Text

from service.store.base.columns import UtcTime, at, key, metadata, of, text

# `name_key` is the name as it is compared; `password` is a hash that holds its own salt and cost.
users = Table(
    "users",
    metadata,
    key(),
    text("name"),
    text("name_key", unique=True),
    text("role"),
    text("password"),
    Column("disabled", Boolean, nullable=False),
    at("added_at"),
    Column("last_seen", UtcTime),
    CheckConstraint("role IN ('view', 'pack', 'print', 'manage')", name="role_is_known"),
)

# `ends_at` is when a session ends however much it is used.
sessions = Table(
    "sessions",
    metadata,
    Column("sha256", Text, primary_key=True),
    of("users", "user_id"),
    text("device"),
    at("began_at"),
    at("last_used"),
    at("ends_at"),
)

# `scopes` is JSON: the roles whose work the token may do.
tokens = Table(
    "tokens",
    metadata,
    key(),
    text("sha256", unique=True),
    of("users", "user_id"),
    text("name"),
    text("scopes"),
    at("made_at"),
    Column("last_used", UtcTime),
    Column("revoked_at", UtcTime),
)

pairings = Table(
    "pairings",
    metadata,
    Column("sha256", Text, primary_key=True),
    of("users", "user_id"),
    at("ends_at"),
)
