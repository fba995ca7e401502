"""The store beside the least that SQL can do with the same rows, in one run on this machine."""

from __future__ import annotations

import random
import resource
import sqlite3
import tempfile
from collections.abc import Iterator
from contextlib import closing, contextmanager
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

from service.keeping.refresh import refresh_today
from service.keeping.reprints import list_reprints
from service.keeping.scan import answer_scan
from service.keeping.today import compose_today
from service.records.record import Collection, ContainerRecord
from service.render.ruler import PangoRuler
from service.render.task import FONTS_CONF
from service.store.canonical import encode_record
from service.store.handles import Engine
from service.store.history import Stamp
from service.store.lists.search import search
from service.store.migrations.upgrade import upgrade_store
from service.store.open import STORE_FILE, open_folder, reading, writing
from service.store.packing.load import load_packing
from service.store.packing.save import save_packing
from service.store.plan_records import plan_records
from service.store.printed.card import NewRun, describe_card
from service.store.printed.runs import save_run
from service.store.printed.states import mark_attached
from service.store.save_records import save_records
from tests.benchmarks.store.previews import measure_previews
from tests.benchmarks.store.timed import Measured, timed
from tests.benchmarks.store.town import make_town

STAMP = Stamp("Ada Quill", datetime(2026, 11, 25, 9, 30, tzinfo=UTC))
_CHANGES = 1_000
_ASKED = 200
_PORTION = 500


def measure(containers: int, objects: int) -> Iterator[Measured]:
    """Measure a town of so many containers and objects, step after step."""
    town = make_town(containers, objects)
    ruler = PangoRuler(FONTS_CONF)
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        engine = open_folder(folder)
        upgrade_store(engine)
        floor = timed(lambda: _insert_plainly(folder / "floor.db", town))
        yield Measured(f"import {objects:,} objects", timed(lambda: save_all(engine, town)), floor)
        yield Measured("preview the same again", timed(lambda: _plan(engine, town)))
        yield Measured("word every card once", timed(lambda: refresh_today(engine, ruler)))
        yield Measured(
            "note every card as attached", timed(lambda: attach_all(engine, ruler, town))
        )
        yield Measured(f"{_CHANGES:,} changes", timed(lambda: _change(engine, town)))
        floor = timed(lambda: _join_plainly(folder / STORE_FILE))
        found: list[int] = []
        seconds = timed(lambda: found.append(len(list_reprints(engine, ruler).out_of_date)))
        yield Measured(f"reprint list, {found[0]:,} cards", seconds, floor)
        again = timed(lambda: list_reprints(engine, ruler))
        yield Measured("reprint list, nothing new", again, floor)
        yield from _measure_answers(engine, ruler, town, folder)
        yield from measure_previews(engine, town, folder, STAMP)
        engine.dispose()


def peak_mib() -> float:
    """Give the most memory this process has held."""
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024


def _measure_answers(
    engine: Engine, ruler: PangoRuler, town: Collection, folder: Path
) -> Iterator[Measured]:
    chance = random.Random(1)  # noqa: S311  Questions to ask, no secrets.
    numbers = [one.object_number for one in chance.choices(town.objects, k=_ASKED)]
    boxes = [one.container_number for one in chance.choices(town.containers, k=_ASKED)]
    with reading(engine) as connection:
        seconds = timed(lambda: [search(connection, number) for number in numbers])
        floor = timed(lambda: _find_plainly(folder / STORE_FILE, "object", numbers))
        yield Measured(f"find {_ASKED} numbers", seconds, floor)
        seconds = timed(lambda: search(connection, "lead"))
        yield Measured("find a word of every sixth title", seconds)
        seconds = timed(
            lambda: [
                answer_scan(connection, ruler, number, revision=1, letters="BCDF")
                for number in boxes
            ]
        )
        floor = timed(lambda: _find_plainly(folder / STORE_FILE, "container", boxes))
        yield Measured(f"answer {_ASKED} scans", seconds, floor)


def save_all(engine: Engine, town: Collection) -> None:
    """Take a town in."""
    with writing(engine) as connection:
        save_records(connection, town, stamp=STAMP)


def _plan(engine: Engine, town: Collection) -> None:
    with reading(engine) as connection:
        plan_records(connection, town)


def attach_all(engine: Engine, ruler: PangoRuler, town: Collection) -> None:
    """Note every card of a town as printed and attached."""
    numbers = [one.container_number for one in town.containers]
    for first in range(0, len(numbers), _PORTION):
        with writing(engine) as connection:
            today = compose_today(connection, ruler, numbers[first : first + _PORTION])
            run = NewRun(tuple(describe_card(card) for card in today.standing_cards))
            for card in save_run(connection, run, stamp=STAMP):
                mark_attached(connection, card.card_id, stamp=STAMP)


def _change(engine: Engine, town: Collection) -> None:
    """Rename objects, boxes, and take objects out, in turn."""
    chance = random.Random(2)  # noqa: S311  Changes to make, no secrets.
    for number in range(_CHANGES):
        with writing(engine) as connection:
            if number % 3 == 0:
                renamed = replace(chance.choice(town.objects), title=f"Renamed {number}")
                save_records(connection, Collection(objects=(renamed,)), stamp=STAMP)
            elif number % 3 == 1:
                box: ContainerRecord = chance.choice(town.containers)
                renamed_box = replace(box, title=f"Renamed {number}")
                save_records(connection, Collection(containers=(renamed_box,)), stamp=STAMP)
            else:
                box = chance.choice(town.containers)
                packing = load_packing(connection, box.container_number)
                fewer = replace(packing, places=packing.places[1:])
                save_packing(connection, fewer, expected_revision=packing.revision, stamp=STAMP)


@contextmanager
def _plain(path: Path) -> Iterator[sqlite3.Connection]:
    with closing(sqlite3.connect(path)) as connection:
        connection.execute("PRAGMA synchronous = FULL")
        yield connection


def _insert_plainly(path: Path, town: Collection) -> None:
    """Insert the same texts into two tables and their places into a third, and nothing else."""
    rows = [(one.object_number, encode_record(one)) for one in town.objects]
    boxes = [(one.container_number, encode_record(one)) for one in town.containers]
    lying = [
        (one.container_number, place.object_number) for one in town.packings for place in one.places
    ]
    with _plain(path) as connection, connection:
        connection.execute("CREATE TABLE o (number TEXT PRIMARY KEY, record TEXT)")
        connection.execute("CREATE TABLE c (number TEXT PRIMARY KEY, record TEXT)")
        connection.execute("CREATE TABLE p (container TEXT, number TEXT)")
        connection.executemany("INSERT OR IGNORE INTO o VALUES (?, ?)", rows)
        connection.executemany("INSERT INTO c VALUES (?, ?)", boxes)
        connection.executemany("INSERT INTO p VALUES (?, ?)", lying)


def _join_plainly(path: Path) -> None:
    """Compare two columns of every attached card, as the list must at the very least."""
    query = (
        "SELECT p.id FROM printed_cards p JOIN today_cards t ON t.container_id = p.container_id"
        " AND t.kind = p.kind AND t.side = p.side"
        " WHERE p.state = 'attached' AND p.fingerprint <> t.fingerprint"
    )
    with _plain(path) as connection:
        connection.execute(query).fetchall()


def _find_plainly(path: Path, what: str, numbers: list[str]) -> None:
    query = f"SELECT record FROM {what}s WHERE {what}_number = ?"  # noqa: S608 - two words of ours
    with _plain(path) as connection:
        for number in numbers:
            connection.execute(query, (number,)).fetchone()
