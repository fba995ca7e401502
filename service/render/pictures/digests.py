"""An index of files already hashed, so that a photo that was not changed is not read again.

One line for each path holds what the file system tells of the file (device, inode, size, times)
and the SHA-256 of its bytes. A line is believed only while all of that is unchanged, and is written
only for a file that had been at rest for some seconds: one changed twice within a tick of the file
system's clock would look the same both times. The file may be deleted at any time; one that fails
its own hash counts as empty.
"""

from __future__ import annotations

import contextlib
import hashlib
import os
import time
from collections.abc import Callable
from dataclasses import dataclass, field
from itertools import islice
from pathlib import Path

from service.render.pictures.files import write_whole

# FAT counts in steps of two seconds, the coarsest of the file systems in use.
_AT_REST_NS = 4_000_000_000
# A line takes about 150 bytes; the paths learnt longest ago go first.
_MOST_LINES = 100_000


@dataclass(slots=True)
class DigestIndex:
    """The digests of the files seen; loaded at the start of a run and kept at its end."""

    path: Path
    now_ns: Callable[[], int] = time.time_ns
    _lines: dict[str, str] = field(default_factory=dict)
    _is_changed: bool = False

    def load(self) -> None:
        """Read what earlier runs have kept."""
        with contextlib.suppress(OSError, ValueError):
            mark, listed = self.path.read_text("ascii").split("\n", 1)
            if hashlib.sha256(listed.encode()).hexdigest() == mark:
                self._lines = dict(line.split(" ", 1) for line in listed.splitlines())

    def keep(self) -> None:
        """Write what was learnt; where two runs do so at once, one of them learns it anew.

        Raises:
            OSError: When the file cannot be written.
        """
        if not self._is_changed:
            return
        latest = islice(self._lines.items(), max(0, len(self._lines) - _MOST_LINES), None)
        listed = "".join(f"{key} {value}\n" for key, value in latest)
        mark = hashlib.sha256(listed.encode()).hexdigest()
        self.path.parent.mkdir(parents=True, exist_ok=True)
        write_whole(self.path, f"{mark}\n{listed}".encode())
        self._is_changed = False

    def digest_of(self, photo: Path, *, most_bytes: int) -> str:
        """Give the SHA-256 of a file's first bytes, read only where it is not known.

        Raises:
            OSError: When the file cannot be read.
        """
        key = _key(photo)
        known, _, digest = self._lines.get(key, "").rpartition(" ")
        if known and known == _state(photo.stat()):
            return digest
        return self._read(photo, key, most_bytes)

    def _read(self, photo: Path, key: str, most_bytes: int) -> str:
        began_ns = self.now_ns()
        with photo.open("rb") as file:
            before = os.fstat(file.fileno())
            digest = hashlib.sha256(file.read(most_bytes)).hexdigest()
            after = os.fstat(file.fileno())
        changed_ns = max(before.st_mtime_ns, before.st_ctime_ns)
        if _state(before) == _state(after) and changed_ns + _AT_REST_NS < began_ns:
            self._lines.pop(key, None)
            self._lines[key] = f"{_state(before)} {digest}"
            self._is_changed = True
        return digest


def _key(photo: Path) -> str:
    return hashlib.sha256(os.fsencode(photo.absolute())).hexdigest()


def _state(status: os.stat_result) -> str:
    """Tell a file from any other, and from itself after a change.

    The last number is the time at which the file system last noted a change of any kind: a program
    that sets a file's own time back, as copying does, cannot set that one.
    """
    numbers = (
        status.st_dev,
        status.st_ino,
        status.st_size,
        status.st_mtime_ns,
        status.st_ctime_ns,
    )
    return " ".join(map(str, numbers))
