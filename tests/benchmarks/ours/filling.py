"""The service: frames filled, or plates of an earlier run used again, and the sheets written.

Options: "kept" takes every plate from the cache, from a list of keys as a print run is recorded by;
"changed" does so with one record changed; "proof" reads plates and file back; "tags" as with all.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

from service.pipeline.printing.shelf import Shelf
from tests.benchmarks.content.records import Record
from tests.benchmarks.engine import Job, run_engine
from tests.benchmarks.ours.press import Press, ready_pictures


class Filling:
    """One file of all records."""

    def __init__(self, job: Job) -> None:
        """Open the press."""
        self._job = job
        self._press = Press(job)

    def render(self, records: Sequence[Record], out: Path) -> None:
        """Gather the plates, write the file, and prove both where that is asked for."""
        options = self._job.options
        if options & {"kept", "changed"}:
            keys = self._press.kept_keys()[: len(records)]
            shelf = self._press.kept_plates(keys)
            if "changed" in options:
                changed = replace(records[0], title="A title changed since")
                keys[0] = self._press.ink([changed], shelf, is_proved=False)[0]
        else:
            shelf = Shelf()
            keys = self._press.ink(records, shelf, is_proved="proof" in options)
        self._press.write(keys, shelf, out)
        if "proof" in options:
            self._press.prove(keys, shelf, out)

    def close(self) -> None:
        """Close the press."""
        self._press.close()


if __name__ == "__main__":
    run_engine(Filling, before=lambda job: ready_pictures(job.store))
