"""Tests for taking a catalogue export in."""

from __future__ import annotations

from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace

import pytest

from service.errors import UnstorableTextError
from service.keeping.imports import SourceFile, apply_import, preview_import, summarise
from service.records.record import Collection, ObjectRecord
from service.store.handles import Engine
from service.store.history import load_history
from service.store.kept.imports import list_imports
from service.store.load_records import load_object
from service.store.open import reading
from tests.keeping.made import COLLECTION, JAR, LEAD
from tests.store.made import LATER

EXPORT = SourceFile("export.csv", "a" * 64)
CHANGED = Collection(
    objects=(replace(COLLECTION.objects[0], title="Bait jar"), ObjectRecord("X.112", "Buoy"))
)


def test_the_preview_is_what_is_done(engine: Engine) -> None:
    """One new, one changed: seen first, then done, and noted with file and person."""
    plan = preview_import(engine, CHANGED)
    taken = apply_import(engine, EXPORT, CHANGED, stamp=LATER)
    assert plan.objects.outcome == taken.saved.objects
    with reading(engine) as connection:
        (noted,) = list_imports(connection)
    assert (noted.import_id, noted.name, noted.stamp) == (taken.import_id, "export.csv", LATER)
    assert noted.summary["objects new"] == noted.summary["objects changed"] == 1
    assert noted.summary == summarise(taken.saved)


def test_the_same_file_twice_changes_nothing(engine: Engine) -> None:
    """The second time everything is unchanged, and the history does not grow."""
    apply_import(engine, EXPORT, CHANGED, stamp=LATER)
    with reading(engine) as connection:
        before = load_history(connection)
    again = apply_import(engine, EXPORT, CHANGED, stamp=LATER)
    assert again.saved.objects.touched == ()
    with reading(engine) as connection:
        assert load_history(connection) == before


def test_two_at_once_do_not_harm_each_other(engine: Engine) -> None:
    """Two files that come at the same time are taken in one after the other, both whole."""
    files = [
        Collection(objects=tuple(ObjectRecord(f"{name}.{n}", "Rope") for n in range(300)))
        for name in ("A", "B")
    ]
    with ThreadPoolExecutor(2) as pool:
        taken = list(pool.map(lambda one: apply_import(engine, EXPORT, one, stamp=LATER), files))
    assert [len(one.saved.objects.new) for one in taken] == [300, 300]
    with reading(engine) as connection:
        assert load_object(connection, "B.299").title == "Rope"


def test_all_or_nothing(engine: Engine) -> None:
    """One text that cannot be stored leaves everything as it was."""
    bad = Collection(objects=(ObjectRecord(JAR, "Another title"), ObjectRecord(LEAD, "a\0b")))
    with pytest.raises(UnstorableTextError):
        apply_import(engine, EXPORT, bad, stamp=LATER)
    with reading(engine) as connection:
        assert load_object(connection, JAR).title == "Bait jar, stoneware"
        assert list_imports(connection) == ()
