"""One process run from outside: wall clock, processor time and memory of its whole tree."""

from __future__ import annotations

import ctypes
import json
import os
import resource
import subprocess
import sys
import time
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

_SUBREAPER = 36
"""PR_SET_CHILD_SUBREAPER of Linux: what a child leaves behind becomes ours, and is counted."""
_SAMPLE_SECONDS = 0.02
_LIMIT_SECONDS = 900


@dataclass(frozen=True, slots=True)
class Run:
    """One run; `said` is the engine's own line, `error` the end of what it complained of."""

    wall_seconds: float
    cpu_seconds: float
    peak_mib: float
    said: Mapping[str, float]
    each_seconds: tuple[float, ...]
    error: str


def adopt_orphans() -> None:
    """Make sure that processes which outlive their parent are waited for here."""
    if sys.platform == "linux":
        ctypes.CDLL(None).prctl(_SUBREAPER, 1, 0, 0, 0)


def run_process(words: Sequence[str], folder: Path, *, has_memory: bool) -> Run:
    """Run a program in a folder; with `has_memory` its peak is sampled, which takes time."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    began = time.perf_counter()
    process = subprocess.Popen(
        words, cwd=folder, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True
    )
    peak_mib = _watched(process) if has_memory else 0.0
    out, complaints = process.communicate(timeout=_LIMIT_SECONDS)
    wall_seconds = time.perf_counter() - began
    _wait_for_orphans()
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    cpu_seconds = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
    said, each, error = _read_line(out, complaints, process.returncode)
    return Run(wall_seconds, cpu_seconds, peak_mib, said, each, error)


def _read_line(
    out: str, complaints: str, code: int
) -> tuple[dict[str, float], tuple[float, ...], str]:
    lines = out.strip().splitlines()
    if code != 0 or not lines:
        return {}, (), " ".join(complaints.split())[-300:] or f"exit code {code}"
    said = json.loads(lines[-1])
    each = tuple(said.pop("each_seconds", ()))
    return said, each, ""


def _watched(process: subprocess.Popen[str]) -> float:
    """Give the peak of the proportional set sizes of the tree, in MiB, until it has ended."""
    peak_kib = 0
    while process.poll() is None:
        peak_kib = max(peak_kib, sum(map(_pss_kib, _tree(process.pid))))
        time.sleep(_SAMPLE_SECONDS)
    return peak_kib / 1024


def _tree(root: int) -> Iterator[int]:
    children: dict[int, list[int]] = {}
    for path in Path("/proc").glob("[0-9]*/stat"):
        try:
            fields = path.read_text("ascii", errors="replace").rpartition(")")[2].split()
        except OSError:
            continue
        children.setdefault(int(fields[1]), []).append(int(path.parent.name))
    waiting = [root]
    while waiting:
        process = waiting.pop()
        yield process
        waiting += children.get(process, [])


def _pss_kib(process: int) -> int:
    try:
        text = Path(f"/proc/{process}/smaps_rollup").read_text("ascii")
    except OSError:
        return 0
    return next((int(line.split()[1]) for line in text.splitlines() if line.startswith("Pss:")), 0)


def _wait_for_orphans() -> None:
    while True:
        try:
            ended, _ = os.waitpid(-1, os.WNOHANG)
        except ChildProcessError:
            return
        if ended == 0:
            time.sleep(_SAMPLE_SECONDS)
