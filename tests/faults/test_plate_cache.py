"""What becomes of kept plates when the process that keeps them is killed."""

from __future__ import annotations

import random
import subprocess
import sys
import time
from pathlib import Path

import pytest

from service.render.plates.cache import PlateCache
from tests.render.plates.proved import key_of, proved_plate

ROOT = Path(__file__).parents[2]
_NUMBERS = range(400)
_MOST_BYTES = 250_000
"""Less than all plates take, so that plates are thrown out all the time as well."""

_KEEPER = """
import random, sys
from pathlib import Path
from service.render.plates.cache import PlateCache
from tests.render.plates.proved import key_of, proved_plate

cache = PlateCache(Path(sys.argv[1]), most_bytes=int(sys.argv[2]))
plates = {number: (key_of(number), proved_plate(number)) for number in range(400)}
print("ready", flush=True)
while True:
    cache.keep(dict(random.sample(list(plates.values()), 60)))
"""


def _killed_at_random(path: Path, chance: random.Random) -> None:
    """Let a child keep plates, and kill it in the middle."""
    command = [sys.executable, "-c", _KEEPER, str(path), str(_MOST_BYTES)]
    with subprocess.Popen(command, cwd=ROOT, stdout=subprocess.PIPE) as child:
        assert child.stdout is not None
        assert child.stdout.readline() == b"ready\n"
        time.sleep(chance.uniform(0.005, 0.15))
        child.kill()


@pytest.mark.slow
def test_killed_keepers_leave_whole_plates(tmp_path: Path) -> None:
    """After each of many kills every plate found is whole, and plates can be kept and found."""
    path = tmp_path / "plates.sqlite"
    chance = random.Random(9)  # noqa: S311  No secret.
    seen: set[str] = set()
    for run in range(12):
        _killed_at_random(path, chance)
        cache = PlateCache(path, most_bytes=_MOST_BYTES)
        found = cache.find([key_of(number) for number in _NUMBERS])
        assert all(
            found[key_of(number)] == proved_plate(number)
            for number in _NUMBERS
            if key_of(number) in found
        )
        seen |= found.keys()
        cache.keep({key_of(-run): proved_plate(-run)})
        assert cache.find([key_of(-run)]) == {key_of(-run): proved_plate(-run)}
    assert seen


@pytest.mark.slow
def test_several_processes_keep_at_once(tmp_path: Path) -> None:
    """While others write, what is found is whole; killed all at once, they leave a sound file."""
    path = tmp_path / "plates.sqlite"
    command = [sys.executable, "-c", _KEEPER, str(path), str(_MOST_BYTES)]
    children = [subprocess.Popen(command, cwd=ROOT, stdout=subprocess.PIPE) for _ in range(2)]
    try:
        for child in children:
            assert child.stdout is not None
            assert child.stdout.readline() == b"ready\n"
        cache = PlateCache(path, most_bytes=_MOST_BYTES)
        keys = {key_of(number): number for number in _NUMBERS}
        for _ in range(20):
            found = cache.find(list(keys))
            assert all(proved == proved_plate(keys[key]) for key, proved in found.items())
    finally:
        for child in children:
            child.kill()
            child.communicate()
    assert cache.find(list(keys))
