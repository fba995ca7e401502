"""Tests for the folders of what is half made."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from service.jobs.scratch import FOLDER, open_scratch, sweep_scratch

ROOT = Path(__file__).parents[2]
OWNER = """
import sys
from pathlib import Path
from service.jobs.scratch import open_scratch
with open_scratch(Path(sys.argv[1])) as folder:
    (folder / "half.pdf").write_bytes(b"%PDF")
    print(folder, flush=True)
    sys.stdin.read()
"""


def test_a_folder_goes_with_its_block(tmp_path: Path) -> None:
    """What is in it goes with it, and the lock too."""
    with open_scratch(tmp_path) as folder:
        (folder / "inner").mkdir()
        assert folder.is_relative_to(tmp_path / FOLDER)
    assert list((tmp_path / FOLDER).iterdir()) == []


def test_a_folder_goes_when_its_block_fails(tmp_path: Path) -> None:
    """A server that is told to stop leaves by an exception; the lock goes all the same."""

    def work() -> None:
        with open_scratch(tmp_path) as folder:
            (folder / "half.pdf").write_bytes(b"%PDF")
            sys.exit(0)

    with pytest.raises(SystemExit):
        work()
    assert list((tmp_path / FOLDER).iterdir()) == []


def test_a_folder_in_use_is_left_alone(tmp_path: Path) -> None:
    """Neither a second owner of this process nor a sweep takes a folder that is held."""
    with open_scratch(tmp_path) as first, open_scratch(tmp_path) as second:
        assert first != second
        assert sweep_scratch(tmp_path) == 0
        assert first.is_dir()
        assert second.is_dir()


def test_what_a_killed_process_left_is_swept(tmp_path: Path) -> None:
    """As long as the owner lives its folder stays; once it was killed the next owner removes it."""
    command = [sys.executable, "-c", OWNER, str(tmp_path)]
    with subprocess.Popen(
        command, cwd=ROOT, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
    ) as owner:
        assert owner.stdout is not None
        left = Path(owner.stdout.readline().strip())
        assert sweep_scratch(tmp_path) == 0
        assert (left / "half.pdf").is_file()
        owner.kill()
        owner.wait()
    assert left.is_dir()
    with open_scratch(tmp_path) as folder:
        assert list((tmp_path / FOLDER).iterdir()) != []
        assert not left.exists()
        assert folder.is_dir()
    assert list((tmp_path / FOLDER).iterdir()) == []


def test_there_may_be_nothing_to_sweep(tmp_path: Path) -> None:
    """A data folder that was never worked in has no scratch folder."""
    assert sweep_scratch(tmp_path / "new") == 0
