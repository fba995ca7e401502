"""`python -m tests.benchmarks render`: the service beside other engines, on this machine.

`python -m tests.benchmarks store`: the store beside the least that SQL can do.

`python -m tests.benchmarks views`: pages over 2,000 containers beside a file of the same service.
"""

from __future__ import annotations

import argparse
import json
import sys
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import asdict
from pathlib import Path

from tests.benchmarks.content.store import ROOT, USUAL_FOLDER, Store
from tests.benchmarks.measure import adopt_orphans
from tests.benchmarks.results import Result, run_rows
from tests.benchmarks.rows import Row, all_rows
from tests.benchmarks.store.measure import measure, peak_mib
from tests.benchmarks.store.timed import Measured
from tests.benchmarks.store.views import measure_views
from tests.benchmarks.table import tables
from tests.benchmarks.targets import targets

_BEGIN, _END = "<!-- benchmark: begin -->", "<!-- benchmark: end -->"
_ROUNDS = 3


def main() -> None:
    """Make the content where it is missing, run the rows, print the tables and keep them."""
    told = _read_words()
    if told.what == "store":
        containers, objects = (800, 10_000) if told.quick else (8_000, 100_000)
        _tell(measure(containers, objects), as_json=told.json)
        return
    if told.what == "views":
        _tell(measure_views(is_quick=told.quick), as_json=told.json)
        return
    store = Store(told.data.resolve())
    store.make()
    adopt_orphans()
    rounds = 1 if told.quick else told.rounds
    rows = _chosen(told.only, is_quick=told.quick)
    results = run_rows(rows, store, rounds=rounds)
    text = tables(results, rounds=rounds)
    sys.stdout.write(_as_json(results) if told.json else f"{text}\n")
    if not told.quick and not told.only:
        _keep(ROOT / "DEVELOPERS.md", text)


def _read_words() -> argparse.Namespace:
    parser = argparse.ArgumentParser(prog="python -m tests.benchmarks")
    parser.add_argument("what", choices=("render", "store", "views"), help="what is measured")
    parser.add_argument("--quick", action="store_true", help="a tenth of it, once, not kept")
    parser.add_argument("--json", action="store_true", help="print every figure as JSON")
    parser.add_argument("--rounds", type=int, default=_ROUNDS, help="how often each row is run")
    parser.add_argument("--only", nargs="+", default=[], help="rows by the beginning of their key")
    parser.add_argument("--data", type=Path, default=USUAL_FOLDER, help="where pictures are kept")
    return parser.parse_args()


def _tell(measured: Iterable[Measured], *, as_json: bool) -> None:
    found = list(measured)
    if as_json:
        sys.stdout.write(json.dumps([asdict(one) for one in found], indent=1) + "\n")
        return
    lines = ["| what | seconds | floor | ratio |", "| --- | ---: | ---: | ---: |"]
    for one in found:
        floor = "" if one.floor_seconds is None else f"{one.floor_seconds:.3f}"
        ratio = "" if not one.floor_seconds else f"{one.seconds / one.floor_seconds:.1f}"
        lines.append(f"| {one.what} | {one.seconds:.2f} | {floor} | {ratio} |")
    sys.stdout.write("\n".join((*lines, f"Peak memory: {peak_mib():.0f} MiB.\n")))


def _chosen(only: Sequence[str], *, is_quick: bool) -> list[Row]:
    rows = [row for row in all_rows() if not only or row.key.startswith(tuple(only))]
    return [row.reduced() for row in rows] if is_quick else rows


def _as_json(results: Mapping[str, Result]) -> str:
    rows = {key: asdict(result) | {"each_ms": result.each_ms} for key, result in results.items()}
    held = [asdict(target) | {"is_held": target.is_held} for target in targets(results)]
    return json.dumps({"rows": rows, "targets": held}, indent=1) + "\n"


def _keep(path: Path, text: str) -> None:
    """Write the tables between their marks; a document without marks stays as it is."""
    before, begin, rest = path.read_text("utf-8").partition(_BEGIN)
    _, end, after = rest.partition(_END)
    if begin and end:
        path.write_text(f"{before}{begin}\n{text}\n{end}{after}", "utf-8")


if __name__ == "__main__":
    main()
