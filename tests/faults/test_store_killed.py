"""A process that packs is ended by SIGKILL: what it was told is saved is there, nothing half."""

from __future__ import annotations

import multiprocessing
import os
import random
import signal
import sys
import time
from contextlib import suppress
from multiprocessing.connection import Connection as Pipe
from pathlib import Path

import pytest
from sqlalchemy import Connection, Engine, func, select, text

from service.records.record import PackingRecord, PlaceRecord
from service.store.history import load_history
from service.store.open import open_folder, reading, writing
from service.store.packing.load import load_packing
from service.store.packing.move import Move, move_object
from service.store.packing.save import save_packing
from service.store.tables import containers, packings, places
from tests.store.made import LEAD, STAMP, fill, make_store

pytestmark = [
    pytest.mark.slow,
    pytest.mark.skipif(sys.platform == "win32", reason="it knows no SIGKILL"),
]

KILLS = 15
LONGEST_SECONDS = 0.15
PAIR = ("B-001", "B-002")


def pack_for_ever(folder: Path, pipe: Pipe) -> None:
    """Pack a box and move an object to and fro, telling every revision once it is saved."""
    engine = open_folder(folder)
    while True:
        with writing(engine) as connection:
            seen = load_packing(connection, "B-003").revision
            spots = tuple(PlaceRecord(f"K.{seen}.{part}") for part in range(1, 6))
            saved = save_packing(
                connection,
                PackingRecord("B-003", places=spots),
                expected_revision=seen,
                stamp=STAMP,
            )
        pipe.send(("B-003", saved.revision))
        with writing(engine) as connection:
            moved = move_object(connection, _next_move(connection), stamp=STAMP)
        for packing in moved:
            pipe.send((packing.container_number, packing.revision))


def _next_move(connection: Connection) -> Move:
    first, second = (load_packing(connection, number) for number in PAIR)
    here = any(place.object_number == LEAD for place in first.places)
    start, end = (first, second) if here else (second, first)
    return Move(
        PlaceRecord(LEAD),
        start.container_number,
        start.revision,
        end.container_number,
        end.revision,
    )


def kill_once(folder: Path, delay_seconds: float) -> dict[str, int]:
    """Let a process pack for a while and kill it; give the last revisions it was told."""
    context = multiprocessing.get_context("spawn")
    ours, theirs = context.Pipe(duplex=False)
    child = context.Process(target=pack_for_ever, args=(folder, theirs))
    child.start()
    theirs.close()
    told = dict([ours.recv()])
    time.sleep(delay_seconds)
    os.kill(child.pid or 0, signal.SIGKILL)
    with suppress(EOFError):
        while True:
            number, revision = ours.recv()
            told[number] = revision
    child.join()
    return told


def check(engine: Engine, told: dict[str, int]) -> None:
    """Check that nothing told is lost, no revision is skipped, and the history agrees."""
    with reading(engine) as connection:
        assert connection.execute(text("PRAGMA integrity_check")).scalars().all() == ["ok"]
        assert connection.execute(text("PRAGMA foreign_key_check")).all() == []
        query = select(containers.c.id, containers.c.container_number, containers.c.revision)
        for key, number, current in connection.execute(query).all():
            assert current >= told.get(number, 0)
            _check_container(connection, key, number, current)
        changes = [event.change for event in load_history(connection)]
        first, second = (load_packing(connection, number) for number in PAIR)
    assert sorted(set(changes)) == list(range(1, max(changes) + 1))
    both = [*first.places, *second.places]
    assert [place.object_number for place in both].count(LEAD) == 1


def _check_container(connection: Connection, key: int, number: str, current: int) -> None:
    """Check that the revisions are 1 to the current one, each whole and told in the history."""
    query = (
        select(packings.c.revision, func.count(places.c.position))
        .join(places, isouter=True)
        .where(packings.c.container_id == key)
        .group_by(packings.c.revision)
        .order_by(packings.c.revision)
    )
    counted = connection.execute(query).all()
    assert [revision for revision, _ in counted] == list(range(1, current + 1))
    told = [event.entry for event in load_history(connection, container_number=number)]
    assert [entry.revision for entry in told if entry.revision] == list(range(1, current + 1))
    for revision, count in counted:
        assert len(load_packing(connection, number, revision=revision).places) == count


def test_nothing_told_is_lost(tmp_path: Path) -> None:
    """After every kill the store is whole, holds what was acknowledged, and can go on."""
    engine = make_store(tmp_path)
    fill(engine)
    chance = random.Random(20261125)  # noqa: S311  Moments to kill at, no secrets.
    for _ in range(KILLS):
        told = kill_once(tmp_path, chance.uniform(0, LONGEST_SECONDS))
        check(engine, told)
    engine.dispose()
