"""The first form of the store."""

from __future__ import annotations

from alembic import op
from sqlalchemy import (
    Boolean,
    CheckConstraint,
    Column,
    Date,
    ForeignKey,
    Index,
    Integer,
    MetaData,
    String,
    Table,
    Text,
    UniqueConstraint,
    insert,
    text,
)

revision = "r0001"
down_revision = None

_APPEND_ONLY = ("history", "packings", "places")

_tables = MetaData(
    naming_convention={
        "ix": "ix_%(column_0_label)s",
        "uq": "uq_%(table_name)s_%(column_0_N_name)s",
        "ck": "ck_%(table_name)s_%(constraint_name)s",
        "fk": "fk_%(table_name)s_%(column_0_name)s_%(referred_table_name)s",
        "pk": "pk_%(table_name)s",
    }
)


def upgrade() -> None:
    """Make every table, start counting changes, and guard what is only added to."""
    connection = op.get_bind()
    _tables.create_all(connection, checkfirst=False)
    connection.execute(insert(_tables.tables["change_counter"]).values(id=1, changes=0))
    for statement in guards_for(connection.dialect.name):
        connection.execute(text(statement))


def guards_for(database: str) -> list[str]:
    """Give the statements that make a database refuse to change what is only added to."""
    if database == "postgresql":
        return [_REFUSE_ON_POSTGRESQL, *map(_guard_on_postgresql, _APPEND_ONLY)]
    return [_guard_on_sqlite(name, verb) for name in _APPEND_ONLY for verb in ("UPDATE", "DELETE")]


_REFUSE_ON_POSTGRESQL = (
    "CREATE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql AS"
    " $$ BEGIN RAISE EXCEPTION '% is only added to', TG_TABLE_NAME; END $$"
)


def _guard_on_postgresql(name: str) -> str:
    return (
        f"CREATE TRIGGER {name}_refuse_change BEFORE UPDATE OR DELETE ON {name}"
        " FOR EACH ROW EXECUTE FUNCTION refuse_change()"
    )


def _guard_on_sqlite(name: str, verb: str) -> str:
    return (
        f"CREATE TRIGGER {name}_refuse_{verb.lower()} BEFORE {verb} ON {name}"
        f" BEGIN SELECT RAISE(ABORT, '{name} is only added to'); END"
    )


def _key() -> Column[int]:
    return Column("id", Integer, primary_key=True)


def _named(name: str) -> Column[str]:
    return Column(name, Text, primary_key=True)


def _text(name: str, *, unique: bool = False, index: bool = False) -> Column[str]:
    return Column(name, Text, nullable=False, unique=unique, index=index)


def _sorted(name: str) -> Column[str]:
    kind = Text().with_variant(Text(collation="C"), "postgresql")
    return Column(name, kind, nullable=False, index=True)


def _number(name: str) -> Column[int]:
    return Column(name, Integer, nullable=False)


def _of(table: str, name: str, *, index: bool = True) -> Column[int]:
    return Column(name, Integer, ForeignKey(f"{table}.id"), nullable=False, index=index)


def _actor(name: str = "actor_id") -> Column[int]:
    return _of("actors", name, index=False)


def _at(name: str = "at") -> Column[str]:
    return Column(name, String(32), nullable=False)


def _row_of(table: str, name: str) -> tuple[Column[int], Column[int]]:
    """Give the key of a row that has a place in a list."""
    return (
        Column(name, Integer, ForeignKey(f"{table}.id"), primary_key=True),
        Column("position", Integer, primary_key=True),
    )


Table("change_counter", _tables, _key(), _number("changes"))
Table("actors", _tables, _key(), _text("name", unique=True))
Table("museum", _tables, _key(), _text("record"))
Table(
    "objects",
    _tables,
    _key(),
    _text("object_number", unique=True),
    _sorted("sort_key"),
    *map(_text, ("title", "record", "source")),
)
Table(
    "photos",
    _tables,
    *_row_of("objects", "object_id"),
    _text("file", index=True),
    *map(_text, ("role", "sha256")),
    Column("is_named", Boolean, nullable=False),
)
Table(
    "containers",
    _tables,
    _key(),
    _text("container_number", unique=True),
    *map(_text, ("title", "location")),
    *map(_sorted, ("sort_key", "location_key")),
    _text("inside", index=True),
    _number("revision"),
    *map(_text, ("record", "source")),
)
Table(
    "packings",
    _tables,
    _key(),
    _of("containers", "container_id", index=False),
    _number("revision"),
    _text("record"),
    _actor(),
    _at(),
    UniqueConstraint("container_id", "revision"),
    CheckConstraint("revision >= 1", name="revision_counts_from_1"),
)
Table(
    "places",
    _tables,
    *_row_of("packings", "packing_id"),
    _text("object_number", index=True),
    _text("parts"),
)
Table(
    "history",
    _tables,
    _key(),
    _number("change"),
    _at(),
    _actor(),
    _text("verb"),
    _text("container_number", index=True),
    _text("object_number", index=True),
    Column("revision", Integer),
    _text("detail"),
)
Table("print_runs", _tables, _key(), _at(), _actor(), *map(_text, ("options", "files")))
_cards = Table(
    "printed_cards",
    _tables,
    _key(),
    _of("print_runs", "run_id"),
    _of("containers", "container_id"),
    _text("kind"),
    *map(_number, ("side", "copy", "revision")),
    *map(_text, ("fingerprint", "content", "file", "places", "state")),
    _actor("state_actor_id"),
    _at("state_at"),
    UniqueConstraint("run_id", "container_id", "kind", "side", "copy"),
    CheckConstraint("state IN ('made', 'attached', 'withdrawn', 'spoiled')", name="state_is_known"),
)
Index(
    "uq_printed_cards_attached",
    *(_cards.c[name] for name in ("container_id", "kind", "side")),
    unique=True,
    sqlite_where=_cards.c.state == "attached",
    postgresql_where=_cards.c.state == "attached",
)
Table(
    "checks",
    _tables,
    _key(),
    _of("containers", "container_id"),
    Column("checked_on", Date, nullable=False),
    _text("note"),
    _actor(),
    _at(),
)
Table("stored_files", _tables, _named("sha256"), _text("suffix"), _number("length_bytes"), _at())
Table(
    "outs",
    _tables,
    _key(),
    _text("object_number", index=True),
    _text("parts"),
    _of("containers", "container_id"),
    *map(_text, ("to_whom", "reason")),
    Column("due_back", Date),
    _actor(),
    _at("out_at"),
    Column("back_at", String(32)),
)
Table("used_sheets", _tables, _named("stock"), _text("positions"), _actor(), _at())
Table("imports", _tables, _key(), _at(), _actor(), *map(_text, ("name", "sha256", "summary")))
Table(
    "replies",
    _tables,
    _named("key"),
    _text("request_sha256"),
    _number("status"),
    _text("reply"),
    _at(),
)
Table(
    "tasks",
    _tables,
    _named("id"),
    *map(_text, ("kind", "request", "state")),
    *map(_number, ("done", "of")),
    _text("result"),
    _actor(),
    _at(),
    Column("finished_at", String(32)),
)
