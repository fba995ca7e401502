"""The plates of an earlier run, made and proved before any clock starts."""

from __future__ import annotations

import sys

from service.pipeline.printing.shelf import Shelf
from tests.benchmarks.engine import read_job, say
from tests.benchmarks.ours.press import Press


def main() -> None:
    """Make, prove and keep the plates of all records; says how many there are."""
    job = read_job(sys.argv[1:])
    press, shelf = Press(job), Shelf()
    keys = press.ink(job.records(), shelf, is_proved=True)
    press.keep(keys, shelf)
    press.close()
    say({"plates": len(set(keys))})


if __name__ == "__main__":
    main()
