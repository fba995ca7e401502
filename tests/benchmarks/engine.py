"""What every engine of the benchmark shares: what is asked of it, its clock and its one line.

An engine is a script of its own, run in a process of its own. Interpreter, imports and records are
there before its clock starts; fonts, drawing and the finished file are in its time.
"""

from __future__ import annotations

import argparse
import gc
import json
import sys
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Protocol

from service.symbols.symbol import Symbol
from tests.benchmarks.content.records import Record, make_cards, make_labels
from tests.benchmarks.content.store import Store

WARM_UP, WARM_RUNS = 5, 40


@dataclass(frozen=True, slots=True)
class Job:
    """What to make: `options` are the engine's own words, such as "lean" or "tags".

    `symbols` stand by what they hold, `marks` are operators in a box of 24 x 24.
    """

    store: Store
    kind: str
    count: int
    out: Path
    options: frozenset[str] = frozenset()
    symbols: dict[str, Symbol] = field(default_factory=dict)
    marks: dict[str, str] = field(default_factory=dict)

    @property
    def is_cards(self) -> bool:
        """Whether rich cards are asked for, and not labels."""
        return self.kind == "card"

    @property
    def is_tagged(self) -> bool:
        """Whether the file shall carry a structure tree."""
        return "tags" in self.options

    def records(self) -> Sequence[Record]:
        """Make the records asked for."""
        return make_cards(self.count) if self.is_cards else make_labels(self.count)


class Engine(Protocol):
    """Draws records into a file."""

    def render(self, records: Sequence[Record], out: Path) -> None:
        """Write one PDF."""
        ...

    def close(self) -> None:
        """Let go of what was started."""
        ...


def run_engine(
    make: Callable[[Job], Engine], *, before: Callable[[Job], object] | None = None
) -> None:
    """Read what is asked for, do it, and say in one line of JSON how long it took.

    `before` is done before the clock starts: it readies what printing finds ready.
    """
    job = read_job(sys.argv[1:])
    if before:
        before(job)
    # What the harness itself has made is no burden of the engine's.
    records = job.records()
    gc.collect()
    gc.freeze()
    said = _warm(make, job, records) if "warm" in job.options else _whole(make, job, records)
    gc.unfreeze()
    say(said)


def read_job(words: Sequence[str]) -> Job:
    """Read the words of a command line; what is ready-made is read before the clock starts."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--data", type=Path, required=True)
    parser.add_argument("--kind", choices=("card", "label"), required=True)
    parser.add_argument("--count", type=int, required=True)
    parser.add_argument("--out", type=Path, required=True)
    parser.add_argument("--option", action="append", default=[])
    told = parser.parse_args(words)
    store = Store(told.data)
    options = frozenset(told.option)
    return Job(
        store,
        told.kind,
        told.count,
        told.out,
        options,
        store.symbols(),
        store.marks(),
    )


def say(said: dict[str, object]) -> None:
    """Write the one line the harness reads."""
    sys.stdout.write(json.dumps(said) + "\n")


def _whole(make: Callable[[Job], Engine], job: Job, records: Sequence[Record]) -> dict[str, object]:
    began, began_cpu = time.perf_counter(), time.process_time()
    engine = make(job)
    ready = time.perf_counter()
    engine.render(records, job.out)
    ended, ended_cpu = time.perf_counter(), time.process_time()
    engine.close()
    return {
        "work_seconds": ended - began,
        "start_seconds": ready - began,
        "own_cpu_seconds": ended_cpu - began_cpu,
        "file_bytes": job.out.stat().st_size,
    }


def _warm(make: Callable[[Job], Engine], job: Job, records: Sequence[Record]) -> dict[str, object]:
    """Draw one record after another in a process that has done so before."""
    engine = make(job)
    taken = []
    for record in records[: WARM_UP + WARM_RUNS]:
        began = time.perf_counter()
        engine.render([record], job.out)
        taken.append(time.perf_counter() - began)
    engine.close()
    return {"each_seconds": taken[WARM_UP:], "file_bytes": job.out.stat().st_size}
