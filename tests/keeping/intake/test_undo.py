from __future__ import annotations

import pytest

from service.errors import NotFoundError
from service.keeping.imports import SourceFile, apply_import
from service.keeping.intake.undo import preview_undo, undo_import
from service.keeping.reprints import list_reprints
from service.pages.ruler import Ruler
from service.store.handles import Connection, Engine
from service.store.open import reading, writing
from service.store.taking_back.undo import Undone
from tests.keeping.made import BOX, JAR, attach_all
from tests.keeping.test_imports import CHANGED, EXPORT
from tests.store.made import LATER
from tests.store.taking_back.made import facts

_OTHER = SourceFile("other.csv", "b" * 64)


def _facts(engine: Engine) -> dict[str, object]:
    with reading(engine) as connection:
        return facts(connection)


def test_an_undone_import_leaves_no_card_wrong(engine: Engine, ruler: Ruler) -> None:
    """The card that the import made wrong says the truth again."""
    with writing(engine) as connection:
        attach_all(connection, ruler, BOX)
    before, listed = _facts(engine), list_reprints(engine, ruler)
    number = apply_import(engine, EXPORT, CHANGED, stamp=LATER).import_id
    assert list_reprints(engine, ruler).out_of_date
    plan = preview_undo(engine, number)
    assert [one.number for one in (*plan.back, *plan.removed)] == [JAR, "X.112"]
    assert undo_import(engine, number, stamp=LATER).plan.back == plan.back
    assert _facts(engine) == before
    assert list_reprints(engine, ruler) == listed


def test_all_of_it_or_nothing(engine: Engine) -> None:
    """What else belongs to it is saved with it; where that fails, nothing is taken back."""
    number = apply_import(engine, _OTHER, CHANGED, stamp=LATER).import_id
    before = _facts(engine)

    def fail(_connection: Connection, undone: Undone) -> None:
        assert undone.import_id == number + 1
        raise RuntimeError

    with pytest.raises(RuntimeError):
        undo_import(engine, number, stamp=LATER, also_save=fail)
    assert _facts(engine) == before
    with pytest.raises(NotFoundError):
        preview_undo(engine, number + 1)
