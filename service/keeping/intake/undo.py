"""Taking a whole import back: first what that would do, then the change itself."""

from __future__ import annotations

from collections.abc import Callable

from service.store.handles import Connection, Engine
from service.store.history import Stamp
from service.store.open import reading, writing
from service.store.taking_back.plan import UndoPlan, plan_undo
from service.store.taking_back.undo import Undone
from service.store.taking_back.undo import undo_import as take_back

AlsoSave = Callable[[Connection, Undone], None]
"""Called inside the transaction that takes an import back."""


def save_nothing_more(_connection: Connection, _undone: Undone) -> None:
    """Stand in where nothing else belongs to it."""


def preview_undo(engine: Engine, import_id: int) -> UndoPlan:
    """Say what taking an import back would do, without doing it.

    Raises:
        NotFoundError: When there is no such import.
    """
    with reading(engine) as connection:
        return plan_undo(connection, import_id)


def undo_import(
    engine: Engine, import_id: int, *, stamp: Stamp, also_save: AlsoSave = save_nothing_more
) -> Undone:
    """Take an import back, all that nobody has changed since, and say what was left alone.

    It is a change of its own in the history, and can be taken back by its own number.

    Raises:
        NotFoundError: When there is no such import.
        StoreBusyError: When others kept the store locked for too long.
    """
    with writing(engine) as connection:
        undone = take_back(connection, import_id, stamp=stamp)
        also_save(connection, undone)
    return undone
