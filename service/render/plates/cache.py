"""Proved plates in one private SQLite file, so that a face that was printed before costs no ink.

The file holds nothing that cannot be made again. Whatever happens to it (a killed process, a full
disk, a flipped bit, a file of another version) costs time and never a run, and no plate is given
that is not whole, byte for byte, and kept under the very key asked for. It may be deleted at any
time. Several processes may use it at once: it is opened for each piece of work anew, with a
rollback journal, since a write-ahead log can lose rows in the libraries many systems still have
(sqlite.org/wal.html, "The WAL-Reset Bug").
"""

from __future__ import annotations

import json
import logging
import sqlite3
import time
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import closing, contextmanager, suppress
from dataclasses import KW_ONLY, dataclass
from itertools import accumulate
from pathlib import Path
from typing import TypeVar

from service.render.plates.pack import PACK_VERSION, pack_plate, unpack_plate
from service.render.plates.plate import ProvedPlate

_LOG = logging.getLogger(__name__)
T = TypeVar("T")

_LAYOUT_VERSION = 1
_FILE_VERSION = 0x504C_0000 + (_LAYOUT_VERSION << 8) + PACK_VERSION
"""A file that says otherwise is of another version, or not ours, and is begun anew."""

_BUSY_SECONDS = 0.5
"""Plates are kept in a tenth of it; whoever takes longer is not waited for."""
_BATCH = 500
"""Plates read at once: long reading would hold up those who write."""
_SPARE_RATIO = 0.1
"""How much more is thrown out than must be, so that it is not done at every turn."""
_SETTINGS = (
    "PRAGMA journal_mode = DELETE",
    # Waiting for the disk costs ten times the writing. A killed process leaves the file whole all
    # the same; a power cut may damage it, which is noticed like any damage.
    "PRAGMA synchronous = OFF",
    "PRAGMA cell_size_check = ON",
)
_COMPANIONS = ("", "-journal", "-wal", "-shm")

_TROUBLES_THAT_PASS = frozenset(
    {
        sqlite3.SQLITE_PERM,
        sqlite3.SQLITE_BUSY,
        sqlite3.SQLITE_LOCKED,
        sqlite3.SQLITE_NOMEM,
        sqlite3.SQLITE_READONLY,
        sqlite3.SQLITE_INTERRUPT,
        sqlite3.SQLITE_IOERR,
        sqlite3.SQLITE_FULL,
        sqlite3.SQLITE_CANTOPEN,
        sqlite3.SQLITE_PROTOCOL,
    }
)
_PRIMARY_CODE = 0xFF
"""The rest of an error code only tells more of the same."""

_CREATE = "CREATE TABLE IF NOT EXISTS plate (key TEXT PRIMARY KEY, hour INTEGER, packed BLOB)"
_FIND = "SELECT rowid, key, hour, packed FROM plate WHERE key IN (SELECT value FROM json_each(?))"
_MARK = "UPDATE plate SET hour = ? WHERE rowid = ?"
_FORGET = "DELETE FROM plate WHERE rowid = ?"
_KEEP = "INSERT OR REPLACE INTO plate (key, hour, packed) VALUES (?, ?, ?)"
_THROW_OUT = """
DELETE FROM plate WHERE rowid IN (
  SELECT rowid FROM (
    SELECT rowid, sum(length(packed)) OVER older - length(packed) AS older_bytes
    FROM plate WINDOW older AS (ORDER BY hour, rowid ROWS UNBOUNDED PRECEDING)
  ) WHERE older_bytes < ?
)
"""


def _clock_hour() -> int:
    return int(time.time() // 3600)


@dataclass(frozen=True, slots=True)
class PlateCache:
    """The file, made when it is first used.

    It takes about `most_bytes`: then those plates go that were used longest ago. Use is remembered
    by the hour, so that finding a plate again costs no writing; `hour` counts from any beginning.
    """

    path: Path
    _: KW_ONLY
    most_bytes: int
    hour: Callable[[], int] = _clock_hour

    def find(self, keys: Sequence[str]) -> dict[str, ProvedPlate]:
        """Give those plates that are kept under these keys."""
        wanted = list(dict.fromkeys(keys))
        return (self._use(lambda file: _read(file, wanted, self.hour())) if wanted else None) or {}

    def keep(self, plates: Mapping[str, ProvedPlate]) -> None:
        """Keep plates under their keys; where that fails it is logged, and they are made again."""
        self.keep_packed({key: pack_plate(proved, key=key) for key, proved in plates.items()})

    def keep_packed(self, plates: Mapping[str, bytes]) -> None:
        """Keep plates that were packed under their keys."""
        hour = self.hour()
        rows = [(key, hour, packed) for key, packed in plates.items()]
        sizes_bytes = accumulate(len(packed) for packed in plates.values())
        fitting = sum(size_bytes <= self.most_bytes for size_bytes in sizes_bytes)
        if fitting:
            self._use(lambda file: _write(file, rows[:fitting], most_bytes=self.most_bytes))

    def _use(self, work: Callable[[sqlite3.Connection], T]) -> T | None:
        """Work with the file; one that is damaged is begun anew. None when it cannot be used."""
        for _ in range(2):
            try:
                return self._opened_for(work)
            except (sqlite3.Error, OSError, _ForeignFileError) as trouble:
                _LOG.warning("the kept plates in %s cannot be used: %s", self.path, trouble)
                if _passes(trouble) or not self._removed():
                    break
        return None

    def _removed(self) -> bool:
        """Remove the file, then what belongs to it: a journal beside no file is not played back."""
        with suppress(OSError):
            for companion in _COMPANIONS:
                Path(f"{self.path}{companion}").unlink(missing_ok=True)
            return True
        return False

    def _opened_for(self, work: Callable[[sqlite3.Connection], T]) -> T:
        self.path.parent.mkdir(parents=True, exist_ok=True)
        with closing(
            sqlite3.connect(self.path, timeout=_BUSY_SECONDS, isolation_level=None)
        ) as file:
            # A damaged text is bytes like any other until its digest has been looked at.
            file.text_factory = bytes
            for setting in _SETTINGS:
                file.execute(setting)
            if _number(file, "user_version") != _FILE_VERSION:
                self._begin(file)
            return work(file)

    def _begin(self, file: sqlite3.Connection) -> None:
        """Make the table in an empty file, for its owner's eyes alone.

        Raises:
            _ForeignFileError: When the file is not empty.
        """
        self.path.chmod(0o600)
        with _writing(file):
            if _number(file, "user_version") == _FILE_VERSION:
                return
            if _number(file, "schema_version") != 0:
                raise _ForeignFileError
            file.execute(_CREATE)
            file.execute(f"PRAGMA user_version = {_FILE_VERSION}")


class _ForeignFileError(Exception):
    """Raised for a file of another version."""

    def __init__(self) -> None:
        super().__init__("it is of another version")


def _passes(trouble: Exception) -> bool:
    """Tell whether the file itself may be whole."""
    code = getattr(trouble, "sqlite_errorcode", 0)
    return isinstance(trouble, OSError) or (code & _PRIMARY_CODE) in _TROUBLES_THAT_PASS


def _number(file: sqlite3.Connection, pragma: str) -> int:
    return int(file.execute(f"PRAGMA {pragma}").fetchone()[0])


@contextmanager
def _writing(file: sqlite3.Connection) -> Iterator[None]:
    file.execute("BEGIN IMMEDIATE")
    with file:
        yield


def _read(file: sqlite3.Connection, keys: Sequence[str], hour: int) -> dict[str, ProvedPlate]:
    """Give the plates that are whole; the others are thrown out."""
    found: dict[str, ProvedPlate] = {}
    damaged, older = [], []
    for start in range(0, len(keys), _BATCH):
        batch = json.dumps(keys[start : start + _BATCH])
        for rowid, stored_key, used, packed in file.execute(_FIND, [batch]).fetchall():
            key = _text(stored_key)
            proved = unpack_plate(packed, key=key) if isinstance(packed, bytes) else None
            if proved is None:
                damaged.append((rowid,))
                continue
            found[key] = proved
            if used != hour:
                older.append((hour, rowid))
    if damaged or older:
        # Where another process writes for long, the plates found are given all the same.
        with suppress(sqlite3.OperationalError), _writing(file):
            file.executemany(_FORGET, damaged)
            file.executemany(_MARK, older)
    return found


def _text(stored: object) -> str:
    return stored.decode("utf-8", "replace") if isinstance(stored, bytes) else ""


def _write(
    file: sqlite3.Connection, rows: Sequence[tuple[str, int, bytes]], *, most_bytes: int
) -> None:
    with _writing(file):
        _make_room(file, most_bytes - sum(len(packed) for _, _, packed in rows))
        file.executemany(_KEEP, rows)
        _make_room(file, most_bytes)


def _make_room(file: sqlite3.Connection, most_bytes: int) -> None:
    """Throw out what was used longest ago, until no more than this is taken up."""
    page_bytes = _number(file, "page_size")
    while True:
        used_pages = _number(file, "page_count") - _number(file, "freelist_count")
        excess_bytes = used_pages * page_bytes - most_bytes
        if excess_bytes <= 0:
            return
        enough_bytes = excess_bytes + int(_SPARE_RATIO * max(0, most_bytes))
        if file.execute(_THROW_OUT, [enough_bytes]).rowcount <= 0:
            return
