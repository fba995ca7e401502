"""A print run ended by SIGKILL: what it had made is whole, and the next run goes on from there."""

from __future__ import annotations

import multiprocessing
import os
import signal
import sqlite3
import sys
import time
from collections.abc import Mapping, Sequence
from contextlib import closing
from dataclasses import replace
from pathlib import Path

import pytest

from service.cards.kinds import END_LABEL
from service.pipeline.options import PrintOptions
from service.pipeline.run import print_collection
from service.records.record import (
    Collection,
    ContainerRecord,
    Museum,
    ObjectRecord,
    PackingRecord,
    PlaceRecord,
)
from service.render.plates.cache import PlateCache
from service.render.plates.plate import ProvedPlate
from service.wiring import open_workshop

pytestmark = [
    pytest.mark.print,
    pytest.mark.slow,
    pytest.mark.skipif(sys.platform == "win32", reason="it knows no groups of processes"),
]

BOXES = 240
OPTIONS = PrintOptions(kinds=(END_LABEL,))
PATIENCE_SECONDS = 50.0


class Counting(PlateCache):
    """A cache that notes how many plates it was given and how many it found."""

    kept = 0
    found = 0

    def find(self, keys: Sequence[str]) -> dict[str, ProvedPlate]:
        """Find, and count."""
        known = super().find(keys)
        Counting.found += len(known)
        return known

    def keep_packed(self, plates: Mapping[str, bytes]) -> None:
        """Keep, and count."""
        Counting.kept += len(plates)
        super().keep_packed(plates)


def collection() -> Collection:
    """Make boxes of one object each, all different."""
    numbers = [f"B-{number:04d}" for number in range(BOXES)]
    return Collection(
        museum=Museum(name="Port Merrow Museum"),
        objects=tuple(ObjectRecord(f"1987.{number}", "Sounding lead") for number in numbers),
        containers=tuple(ContainerRecord(number, title="Leads") for number in numbers),
        packings=tuple(
            PackingRecord(number, 1, (PlaceRecord(f"1987.{number}"),)) for number in numbers
        ),
    )


def print_all(data: Path) -> None:
    """Print every box; runs in a process that will be killed with its children."""
    os.setsid()
    with open_workshop(data, processes=1) as workshop:
        print_collection(collection(), {}, OPTIONS, workshop)


def plates_in(path: Path) -> int:
    """Count the plates that were kept, looking from outside."""
    if not path.exists():
        return 0
    with closing(sqlite3.connect(path)) as file:
        try:
            return int(file.execute("SELECT count(*) FROM plate").fetchone()[0])
        except sqlite3.OperationalError:
            return 0  # It is being made, or written at this moment.


def test_the_next_run_goes_on_from_there(tmp_path: Path) -> None:
    """A run killed half way leaves plates that the next one finds, proves and completes."""
    process = multiprocessing.get_context("spawn").Process(target=print_all, args=(tmp_path,))
    process.start()
    path, began = tmp_path / "plates.db", time.monotonic()
    while plates_in(path) < BOXES // 4 and time.monotonic() - began < PATIENCE_SECONDS:
        time.sleep(0.01)
    os.killpg(process.pid or 0, signal.SIGKILL)
    process.join()
    left = plates_in(path)
    assert BOXES // 4 <= left < 2 * BOXES
    with open_workshop(tmp_path, processes=1) as workshop:
        counted = Counting(path, most_bytes=workshop.plates.most_bytes)
        again = replace(workshop, plates=counted)
        outcome = print_collection(collection(), {}, OPTIONS, again)
    assert outcome.cards == 2 * BOXES
    assert Counting.found == left
    assert Counting.kept == 2 * BOXES - left
