"""Folders for what is half made, below the data folder; those of processes that died are removed.

Each folder has a lock beside it, which its owner holds: the lock goes with the process however that
ends, and whoever comes next sweeps what was left.
"""

from __future__ import annotations

import shutil
import uuid
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from service.jobs.locks import hold_file

FOLDER = "scratch"
_LOCK = ".lock"


@contextmanager
def open_scratch(data_folder: Path) -> Iterator[Path]:
    """Give an empty folder that is removed with all in it when the block ends."""
    around = data_folder / FOLDER
    around.mkdir(parents=True, exist_ok=True, mode=0o700)
    sweep_scratch(data_folder)
    while True:
        folder = around / uuid.uuid4().hex
        lock = folder.with_suffix(_LOCK)
        with hold_file(lock) as is_ours:
            # Who sweeps at this very moment may have taken the file for a lock that was left.
            if is_ours and lock.exists():
                folder.mkdir()
                try:
                    yield folder
                finally:
                    shutil.rmtree(folder, ignore_errors=True)
                    _forget(lock)
                return


def sweep_scratch(data_folder: Path) -> int:
    """Remove the folders whose owners are gone, and say how many there were."""
    swept = 0
    for lock in sorted((data_folder / FOLDER).glob(f"*{_LOCK}")):
        with hold_file(lock) as is_free:
            if is_free:
                shutil.rmtree(lock.with_suffix(""), ignore_errors=True)
                _forget(lock)
                swept += 1
    return swept


def _forget(lock: Path) -> None:
    # Some systems remove no file that is open; it is swept another time.
    with suppress(OSError):
        lock.unlink()
