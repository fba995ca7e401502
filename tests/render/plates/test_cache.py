from __future__ import annotations

import random
import sqlite3
import stat
import sys
from collections.abc import Callable, Iterable
from contextlib import closing
from dataclasses import replace
from pathlib import Path

import pytest

from service.render.plates.cache import PlateCache
from service.render.plates.pack import pack_plate
from tests.render.plates.proved import key_of, proved_plate

_PLENTY = 50_000_000
_MANY = range(1200)


@pytest.fixture
def cache(tmp_path: Path) -> PlateCache:
    """Give a cache in a folder that is not there yet."""
    return PlateCache(tmp_path / "kept" / "plates.sqlite", most_bytes=_PLENTY)


def keep(cache: PlateCache, numbers: Iterable[int]) -> None:
    """Keep these plates."""
    cache.keep({key_of(number): proved_plate(number) for number in numbers})


def found(cache: PlateCache, numbers: Iterable[int]) -> set[int]:
    """Say which of these plates are found; each must be the very one that was kept."""
    wanted = {key_of(number): number for number in numbers}
    plates = cache.find(list(wanted))
    assert all(proved == proved_plate(wanted[key]) for key, proved in plates.items())
    return {wanted[key] for key in plates}


def test_what_was_kept_is_found(cache: PlateCache) -> None:
    """More plates than are read at once come back whole, and no others."""
    keep(cache, _MANY)
    assert found(cache, range(-100, 1300)) == set(_MANY)


def test_nothing_is_asked_and_nothing_kept(cache: PlateCache) -> None:
    """No keys give no plates; an empty cache gives none either."""
    cache.keep({})
    assert cache.find([]) == {}
    assert found(cache, [1]) == set()


def test_a_plate_kept_again_replaces_the_first(cache: PlateCache) -> None:
    """One key has one plate: the last."""
    cache.keep({key_of(1): proved_plate(2)})
    keep(cache, [1])
    assert found(cache, [1]) == {1}


def test_packed_plates_are_kept_as_they_are(cache: PlateCache) -> None:
    """What another process has packed under its key is found like any other."""
    cache.keep_packed({key_of(1): pack_plate(proved_plate(1), key=key_of(1))})
    assert found(cache, [1]) == {1}


@pytest.mark.skipif(sys.platform == "win32", reason="Windows knows no modes")
def test_the_file_is_private(cache: PlateCache) -> None:
    """Nobody but its owner can read what stands on the cards."""
    keep(cache, [1])
    assert stat.S_IMODE(cache.path.stat().st_mode) == 0o600


def test_the_file_stays_within_its_bound(tmp_path: Path) -> None:
    """Far more plates than it may hold leave it no larger than it may be."""
    cache = PlateCache(tmp_path / "plates.sqlite", most_bytes=200_000)
    for start in range(0, 1000, 50):
        keep(cache, range(start, start + 50))
    assert cache.path.stat().st_size <= 200_000
    assert found(cache, range(950, 1000)) == set(range(950, 1000))
    assert found(cache, range(500)) == set()


def test_plates_used_longest_ago_go_first(tmp_path: Path) -> None:
    """What was found again an hour later outlives what was only kept."""
    now = [1]
    plenty = PlateCache(tmp_path / "plates.sqlite", most_bytes=_PLENTY, hour=lambda: now[0])
    keep(plenty, range(100))
    now[0] = 2
    assert found(plenty, range(50)) == set(range(50))
    keep(replace(plenty, most_bytes=plenty.path.stat().st_size + 10_000), range(100, 130))
    assert found(plenty, range(50)) == set(range(50))
    assert found(plenty, range(50, 100)) < set(range(50, 100))
    assert found(plenty, range(100, 130)) == set(range(100, 130))


def test_finding_again_within_the_hour_writes_nothing(cache: PlateCache) -> None:
    """Reading costs no writing."""
    keep(cache, range(10))
    before = cache.path.read_bytes()
    assert len(found(cache, range(10))) == 10
    assert cache.path.read_bytes() == before


def test_more_than_fits_is_kept_in_part(tmp_path: Path) -> None:
    """One run that is larger than the bound does not break it."""
    cache = PlateCache(tmp_path / "plates.sqlite", most_bytes=100_000)
    keep(cache, range(500))
    assert cache.path.stat().st_size <= 150_000
    assert 0 < len(found(cache, range(500))) < 150


def _garbage(path: Path) -> None:
    path.write_bytes(random.Random(1).randbytes(50_000))  # noqa: S311  No secret.


def _cut(path: Path) -> None:
    path.write_bytes(path.read_bytes()[: path.stat().st_size // 3 + 100])


def _emptied(path: Path) -> None:
    path.write_bytes(b"")


def _head_lost(path: Path) -> None:
    path.write_bytes(bytes(4096) + path.read_bytes()[4096:])


def _other_version(path: Path) -> None:
    with closing(sqlite3.connect(path)) as file, file:
        file.execute("PRAGMA user_version = 7")


def _other_table(path: Path) -> None:
    with closing(sqlite3.connect(path)) as file, file:
        file.execute("ALTER TABLE plate RENAME COLUMN packed TO other")


def _log_mode(path: Path) -> None:
    with closing(sqlite3.connect(path)) as file:
        file.execute("PRAGMA journal_mode = WAL")


@pytest.mark.parametrize(
    "damage", [_garbage, _cut, _emptied, _head_lost, _other_version, _other_table, _log_mode]
)
def test_a_damaged_file_is_begun_anew(cache: PlateCache, damage: Callable[[Path], object]) -> None:
    """Whatever was done to the file, nothing is raised, no plate is wrong, and work goes on."""
    keep(cache, range(300))
    damage(cache.path)
    assert found(cache, range(300)) <= set(range(300))
    keep(cache, range(300, 600))
    assert found(cache, range(300, 600)) == set(range(300, 600))


@pytest.mark.parametrize("seed", range(12))
def test_flipped_bytes_never_give_a_wrong_plate(cache: PlateCache, seed: int) -> None:
    """Bytes flipped anywhere cost the plates they hit, or the file is begun anew."""
    keep(cache, range(300))
    chance = random.Random(seed)  # noqa: S311  No secret.
    stored = bytearray(cache.path.read_bytes())
    for _ in range(1 + 5 * seed):
        stored[chance.randrange(len(stored))] ^= 1 << chance.randrange(8)
    cache.path.write_bytes(stored)
    assert found(cache, range(300)) <= set(range(300))
    keep(cache, range(600))
    assert found(cache, range(600)) == set(range(600))


def test_a_damaged_row_alone_is_thrown_out(cache: PlateCache) -> None:
    """One damaged plate counts as absent, is removed, and costs no other."""
    keep(cache, range(10))
    with closing(sqlite3.connect(cache.path)) as file, file:
        file.execute("UPDATE plate SET packed = zeroblob(900) WHERE key = ?", [key_of(3)])
        file.execute("UPDATE plate SET packed = 12 WHERE key = ?", [key_of(4)])
    assert found(cache, range(10)) == set(range(10)) - {3, 4}
    with closing(sqlite3.connect(cache.path)) as file:
        assert file.execute("SELECT count(*) FROM plate").fetchone() == (8,)


def test_a_locked_file_costs_the_keeping_only(
    cache: PlateCache, caplog: pytest.LogCaptureFixture
) -> None:
    """While another process writes, plates are found but not kept, which is said in the log."""
    keep(cache, [1])
    with closing(sqlite3.connect(cache.path, isolation_level=None)) as other:
        other.execute("BEGIN IMMEDIATE")
        keep(cache, [2])
        assert found(cache, [1, 2]) == {1}
    assert "cannot be used: database is locked" in caplog.text


def test_a_place_where_no_file_can_be_costs_nothing_but_time(
    tmp_path: Path, caplog: pytest.LogCaptureFixture
) -> None:
    """A folder of the file's name, or a file where the folder should be, ends no run."""
    (tmp_path / "taken").write_text("not a folder")
    for path in (tmp_path, tmp_path / "taken" / "plates.sqlite"):
        cache = PlateCache(path, most_bytes=_PLENTY)
        keep(cache, [1])
        assert found(cache, [1]) == set()
    assert "cannot be used" in caplog.text
