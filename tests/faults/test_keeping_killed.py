"""A process that imports, packs and prints is ended by SIGKILL: what it was told stays whole."""

from __future__ import annotations

import hashlib
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

from service.cards.fingerprint import fingerprint_card
from service.cards.kept_text import card_from_text
from service.cards.kinds import END_LABEL
from service.config import Settings
from service.keeping.desk import Desk
from service.keeping.imports import SourceFile, apply_import
from service.keeping.printing.attach import attach_run
from service.keeping.printing.prints import print_run
from service.keeping.refresh import refresh_today
from service.keeping.repack import Seen, put_in
from service.keeping.reprints import list_reprints
from service.keeping.today import compose_today
from service.pipeline.options import PrintOptions
from service.records.record import Collection, ObjectRecord, PlaceRecord
from service.store.backup import check_database
from service.store.history import load_history
from service.store.kept.imports import list_imports
from service.store.load_records import load_object
from service.store.open import STORE_FILE, reading, writing
from service.store.packing.load import load_packing
from service.store.printed.runs import list_runs, load_attached, load_run
from service.store.save_records import save_records
from service.store.today.note import load_unattached
from service.wiring import open_desk
from tests.keeping.made import BOX, COLLECTION, JAR
from tests.store.made import STAMP

pytestmark = [
    pytest.mark.print,
    pytest.mark.slow,
    pytest.mark.skipif(sys.platform == "win32", reason="it knows no SIGKILL"),
]

KILLS, KILLS_LONG = 5, 200
LONGEST_SECONDS = 1.5
LABEL = PrintOptions(kinds=(END_LABEL,), containers=frozenset({BOX}))

Told = dict[str, int]


def work_for_ever(folder: Path, pipe: Pipe) -> None:
    """Import, repack, print and attach in turn, telling each once it is done."""
    with open_desk(Settings(data=folder, processes=1)) as desk:
        while True:
            with reading(desk.engine) as connection:
                imports = len(list_imports(connection, limit=100_000))
                revision = load_packing(connection, BOX).revision
            changed = Collection(objects=(ObjectRecord(JAR, f"Bait jar {imports + 1}"),))
            apply_import(desk.engine, SourceFile("x.csv", "a" * 64), changed, stamp=STAMP)
            pipe.send(("imports", imports + 1))
            with writing(desk.engine) as connection:
                place = PlaceRecord(f"K.{revision}")
                put_in(connection, Seen(BOX, revision), place, stamp=STAMP)
            pipe.send(("revision", revision + 1))
            run = print_run(desk, LABEL, stamp=STAMP).run_id
            pipe.send(("runs", run))
            with writing(desk.engine) as connection:
                attach_run(connection, run, stamp=STAMP)
            pipe.send(("attached", run))


def kill_once(folder: Path, delay_seconds: float) -> Told:
    """Let a process work for a while and kill it; give the last of each that it was told."""
    context = multiprocessing.get_context("spawn")
    ours, theirs = context.Pipe(duplex=False)
    child = context.Process(target=work_for_ever, args=(folder, theirs))
    child.start()
    theirs.close()
    told = dict([ours.recv()])
    time.sleep(delay_seconds)
    os.kill(child.pid or 0, signal.SIGKILL)
    with suppress(EOFError):
        while True:
            what, number = ours.recv()
            told[what] = number
    child.join()
    return told


def check(desk: Desk, told: Told) -> None:
    """Check that nothing told is lost, and that whatever is there is there whole."""
    with reading(desk.engine) as connection:
        imports = len(list_imports(connection, limit=100_000))
        assert imports >= told.get("imports", 0)
        title = load_object(connection, JAR).title
        assert title == (f"Bait jar {imports}" if imports else COLLECTION.objects[0].title)
        current = load_packing(connection, BOX).revision
        assert current >= told.get("revision", 0)
        events = load_history(connection, container_number=BOX)
        packed = [event.entry.revision for event in events if event.entry.verb == "packed"]
        assert packed == list(range(1, current + 1))
        runs = list_runs(connection, limit=100_000)
        assert max((run.run_id for run in runs), default=0) >= told.get("runs", 0)
        cards = {run.run_id: load_run(connection, run.run_id) for run in runs}
        attached = {card.run_id for card in load_attached(connection, [BOX])}
    for run in runs:
        assert len(cards[run.run_id]) == 2
        for file in run.files:
            pdf = desk.shelf.get(file.sha256, ".pdf")
            assert hashlib.sha256(pdf).hexdigest() == file.sha256
    assert max(attached, default=0) >= told.get("attached", 0)
    assert len(attached) <= 1


def check_note(desk: Desk) -> None:
    """Check that the note says what wording everything anew says."""
    ruler = desk.workshop.ruler
    wrong = {one.printed.made.key for one in list_reprints(desk.engine, ruler).out_of_date}
    with reading(desk.engine) as connection:
        today = compose_today(connection, ruler)
        printed = load_attached(connection)
        noted = {(one.container_number, one.kind, one.side) for one in load_unattached(connection)}
    said = {key: fingerprint_card(card) for key, card in today.cards.items()}
    plainly = {
        one.made.key
        for one in printed
        if said.get(one.made.key) != fingerprint_card(card_from_text(one.made.content))
    }
    assert wrong == plainly
    assert noted == today.standing - {one.made.key for one in printed}


@pytest.mark.timeout(3600)
def test_nothing_told_is_lost(tmp_path: Path, request: pytest.FixtureRequest) -> None:
    """After every kill the store is whole, holds what was acknowledged, and work goes on."""
    chance = random.Random(20261125)  # noqa: S311  Moments to kill at, no secrets.
    settings = Settings(data=tmp_path, processes=1)
    with open_desk(settings) as desk:
        with writing(desk.engine) as connection:
            save_records(connection, COLLECTION, stamp=STAMP)
        refresh_today(desk.engine, desk.workshop.ruler)
    told: Told = {}
    for _ in range(KILLS_LONG if request.config.getoption("--long") else KILLS):
        told |= kill_once(tmp_path, chance.uniform(0, LONGEST_SECONDS))
        with open_desk(settings) as desk:
            check(desk, told)
            check_note(desk)
        # Only now: what the process left half done is taken back when the store is opened.
        check_database(tmp_path / STORE_FILE)
    assert set(told) >= {"imports"}
