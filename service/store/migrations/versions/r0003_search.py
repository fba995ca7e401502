"""The index of words: FTS5 on SQLite, tsvector on PostgreSQL; what is there is put into it."""

from __future__ import annotations

from alembic import op
from sqlalchemy import select, text

from service.records.record import ContainerRecord, ObjectRecord
from service.store.canonical import decode_record
from service.store.lists.index import CONTAINER_WORDS, OBJECT_WORDS, keep_words
from service.store.lists.words import words_of_container, words_of_object
from service.store.tables import containers, objects

revision = "r0003"
down_revision = "r0002"

TABLES = ("object_words", "container_words")


def upgrade() -> None:
    """Make both indexes, and fill them."""
    connection = op.get_bind()
    for statement in statements_for(connection.dialect.name):
        connection.execute(text(statement))
    query = select(objects.c.id, objects.c.record)
    found = connection.execute(query).all()
    words = {key: words_of_object(decode_record(ObjectRecord, record)) for key, record in found}
    keep_words(connection, OBJECT_WORDS, words)
    found = connection.execute(select(containers.c.id, containers.c.record)).all()
    words = {
        key: words_of_container(decode_record(ContainerRecord, record)) for key, record in found
    }
    keep_words(connection, CONTAINER_WORDS, words)


def statements_for(database: str) -> list[str]:
    """Give the statements that make the indexes on a database."""
    if database == "sqlite":
        # Words are folded already; without removal of accents each stays the word it is.
        return [
            f"CREATE VIRTUAL TABLE {name} USING fts5"
            "(words, tokenize = 'unicode61 remove_diacritics 0', detail = none)"
            for name in TABLES
        ]
    return [
        statement
        for name in TABLES
        for statement in (
            f"CREATE TABLE {name} (key INTEGER PRIMARY KEY, words tsvector NOT NULL)",
            f"CREATE INDEX ix_{name}_words ON {name} USING gin (words)",
        )
    ]
