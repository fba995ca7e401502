"""Whatever an import changes: taken back, everything is as it was, and so is the reprint list.

What the test knows of the former state is read before, from the store and by another way than the
undo's own: all records and contents, and the list that people act on. A box that the import both
made and packed stays, empty, for its packings are history; nothing else may differ.
"""

from __future__ import annotations

import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from service.keeping.imports import SourceFile, apply_import
from service.keeping.intake.undo import preview_undo, undo_import
from service.keeping.printing.attach import attach_card
from service.keeping.reprints import ReprintList, list_reprints
from service.keeping.today import compose_today
from service.records.record import (
    Collection,
    ContainerRecord,
    Hazard,
    HazardState,
    Museum,
    ObjectRecord,
    PackingRecord,
    PlaceRecord,
)
from service.render.ruler import PangoRuler
from service.render.task import FONTS_CONF
from service.store.handles import Engine
from service.store.open import reading, writing
from service.store.printed.card import NewRun, describe_card
from service.store.printed.runs import save_run
from service.store.save_records import save_records
from service.store.taking_back.plan import UndoPlan
from tests.store.made import LATER, STAMP, make_store
from tests.store.taking_back.made import facts

pytestmark = [pytest.mark.slow, pytest.mark.timeout(600)]

RULER = PangoRuler(FONTS_CONF)
FILE = SourceFile("export.csv", "a" * 64)
OBJECTS = ("1987.412.9", "1987.412.10", "X.112", "PMM.77.3")
BOXES = ("B-9", "B-10", "B-11")

titles = st.sampled_from(["", "Bait jar", "Lead line"])
hazards = st.sampled_from([(), (Hazard("lead", HazardState.CONFIRMED),)])
sources = st.sampled_from([{}, {"Titel": "Krug"}])
objects = st.builds(ObjectRecord, st.sampled_from(OBJECTS), titles, hazards=hazards, source=sources)
inside = st.sampled_from(["", *BOXES])
boxes = st.builds(ContainerRecord, st.sampled_from(BOXES), title=titles, inside=inside)
places = st.builds(PlaceRecord, st.sampled_from(OBJECTS), layer=st.integers(1, 2))
packings = st.builds(
    PackingRecord,
    st.sampled_from(BOXES),
    places=st.lists(places, max_size=2, unique_by=lambda one: one.object_number).map(tuple),
    packed_by=st.sampled_from(["", "Ivy Hale"]),
    reason=st.sampled_from(["", "new trays"]),
)


def _lists(of: st.SearchStrategy[object], number: str) -> st.SearchStrategy[tuple[object, ...]]:
    return st.lists(of, max_size=3, unique_by=lambda one: getattr(one, number)).map(tuple)


collections = st.builds(
    Collection,
    st.sampled_from([Museum(), Museum("Port Merrow Museum"), Museum("The other")]),
    _lists(objects, "object_number"),
    _lists(boxes, "container_number"),
    _lists(packings, "container_number"),
)


@contextmanager
def _store(first: Collection) -> Iterator[Engine]:
    """Give a store with a collection, all of whose cards are on their boxes."""
    with tempfile.TemporaryDirectory() as folder:
        engine = make_store(Path(folder))
        with writing(engine) as connection:
            save_records(connection, first, stamp=STAMP)
            cards = compose_today(connection, RULER).standing_cards
            made = tuple(map(describe_card, cards))
            for card in save_run(connection, NewRun(made), stamp=STAMP) if made else ():
                attach_card(connection, card.card_id, stamp=STAMP)
        yield engine
        engine.dispose()


def _look(engine: Engine) -> tuple[dict[str, object], ReprintList]:
    with reading(engine) as connection:
        found = facts(connection)
    return found, list_reprints(engine, RULER)


def _without(
    seen: tuple[dict[str, object], ReprintList], kept: set[str]
) -> tuple[object, object, object]:
    """Leave the boxes out that stay empty."""
    found, listed = seen
    records = found["records"]
    assert isinstance(records, dict)
    rest = {number: one for number, one in records.items() if number not in kept}
    unattached = [one for one in listed.unattached if one.container_number not in kept]
    return {**found, "records": rest}, listed.out_of_date, unattached


def _kept(plan: UndoPlan) -> set[str]:
    """Name the boxes that stay; nothing else has a reason to."""
    assert {one.code for one in plan.findings} <= {"kept-of-import"}
    numbers = {one.where.container_number for one in plan.findings}
    assert "" not in numbers
    return numbers


@settings(max_examples=30, deadline=None)
@given(collections, collections)
def test_an_import_and_its_undo_change_nothing(first: Collection, second: Collection) -> None:
    """Records, contents, the museum and the reprint list are those of before; twice is once."""
    with _store(first) as engine:
        before = _look(engine)
        number = apply_import(engine, FILE, second, stamp=LATER).import_id
        after = _look(engine)
        plan = preview_undo(engine, number)
        undone = undo_import(engine, number, stamp=LATER)
        assert (undone.plan.back, undone.plan.removed) == (plan.back, plan.removed)
        kept = _kept(plan)
        # A box that was packed stays, and so does what the import made around it.
        packed = {one.container_number for one in second.packings}
        assert kept <= packed | {one.container_number for one in second.containers}
        assert _without(_look(engine), kept) == _without(before, set())
        assert undo_import(engine, number, stamp=LATER).import_id is None
        if undone.import_id is not None:
            undo_import(engine, undone.import_id, stamp=LATER)
            assert _look(engine)[0] == after[0]
            assert [one.reprint for one in _look(engine)[1].out_of_date] == [
                one.reprint for one in after[1].out_of_date
            ]
