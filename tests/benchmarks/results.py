"""Running the rows in turn, and the middle of what was measured."""

from __future__ import annotations

import shutil
import sys
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from statistics import median

from tests.benchmarks.check import Checked, check_file
from tests.benchmarks.content.records import make_cards, make_labels
from tests.benchmarks.content.store import FONTS, ROOT, Store
from tests.benchmarks.measure import Run, run_process
from tests.benchmarks.rows import Row


@dataclass(frozen=True, slots=True)
class Result:
    """The medians of a row's runs; `note` says why there are none."""

    row: Row
    note: str = ""
    work_seconds: float = 0.0
    wall_seconds: float = 0.0
    cpu_seconds: float = 0.0
    peak_mib: float = 0.0
    said: Mapping[str, float] | None = None
    checked: Checked | None = None

    @property
    def each_ms(self) -> float:
        """The time for one card or label; of a warm row the median of its pages."""
        pages = 1 if "warm" in self.row.options else self.row.count
        return 1000 * self.work_seconds / pages

    @property
    def file_bytes(self) -> float:
        """The size of the file."""
        return (self.said or {}).get("file_bytes", 0.0)


def run_rows(rows: Sequence[Row], store: Store, *, rounds: int) -> dict[str, Result]:
    """Run every row once a round, one after another, and each once more for its memory."""
    _keep_plates(rows, store)
    runs: dict[str, list[Run]] = {row.key: [] for row in rows}
    peaks: dict[str, float] = {}
    ready = [row for row in rows if row.is_installed]
    for number in range(rounds):
        for row in ready:
            if number < row.rounds and not _has_failed(runs[row.key]):
                _tell(f"round {number + 1}: {row.key}")
                runs[row.key].append(run_process(_words(row, store), ROOT, has_memory=False))
    for row in ready:
        if row.draws and not _has_failed(runs[row.key]):
            _tell(f"memory: {row.key}")
            peaks[row.key] = run_process(_words(row, store), ROOT, has_memory=True).peak_mib
    return {row.key: _result(row, runs[row.key], peaks, store) for row in rows}


def _keep_plates(rows: Sequence[Row], store: Store) -> None:
    """Make the plates of an earlier run anew, for the rows that use them again."""
    using = {row.kind: row for row in rows if {"kept", "changed"} & set(row.options)}
    if using:
        shutil.rmtree(store.folder / "ours", ignore_errors=True)
    for row in using.values():
        _tell(f"plates of an earlier run: {row.kind}")
        keeping = replace(row, module="ours.keeping", options=())
        run = run_process(_words(keeping, store), ROOT, has_memory=False)
        if run.error:
            _tell(run.error)


def _has_failed(runs: Sequence[Run]) -> bool:
    return any(run.error for run in runs)


def _words(row: Row, store: Store) -> list[str]:
    words = ["env", f"FONTCONFIG_FILE={FONTS / 'fonts.conf'}", sys.executable]
    words += ["-m", f"tests.benchmarks.{row.module}", "--data", str(store.folder)]
    words += ["--kind", row.kind, "--count", str(row.count), "--out", str(_out(row, store))]
    return words + [word for option in row.options for word in ("--option", option)]


def _out(row: Row, store: Store) -> Path:
    folder = store.folder / "out"
    folder.mkdir(exist_ok=True)
    return folder / f"{row.key.replace(' ', '-')}.pdf"


def _result(row: Row, runs: Sequence[Run], peaks: Mapping[str, float], store: Store) -> Result:
    if not runs:
        return Result(row, "not installed")
    failed = next((run.error for run in runs if run.error), "")
    if failed:
        return Result(row, f"failed: {failed}")
    names = runs[-1].said
    said = {name: median(run.said[name] for run in runs) for name in names}
    each = [median(run.each_seconds) for run in runs if run.each_seconds]
    return Result(
        row,
        "",
        median(each) if each else said.get("work_seconds", 0.0),
        median(run.wall_seconds for run in runs),
        median(run.cpu_seconds for run in runs),
        peaks.get(row.key, 0.0),
        said,
        _checked(row, store) if row.draws and "warm" not in row.options else None,
    )


def _checked(row: Row, store: Store) -> Checked:
    """Read the row's last file and remove it: together they would fill a small disk."""
    path = _out(row, store)
    records = make_cards(row.count) if row.kind == "card" else make_labels(row.count)
    checked = check_file(path, records)
    path.unlink()
    return checked


def _tell(what: str) -> None:
    sys.stderr.write(what + "\n")
