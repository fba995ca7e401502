"""The environment and its stamp."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

from service.bootstrap import environment
from service.bootstrap.environment import DEV_LOCK, RUNTIME_LOCK, Lock, stamp_of
from tests.bootstrap.conftest import Tree


@pytest.fixture
def locks(tmp_path: Path) -> tuple[Lock, Lock]:
    """Give a short lock and a longer one that holds all of it."""
    short, long = tmp_path / "short", tmp_path / "long"
    short.write_text("one\n")
    long.write_text("one\ntwo\n")
    return Lock(short, contained_in=(long,)), Lock(long)


def test_longer_environment_serves_the_shorter_lock(locks: tuple[Lock, Lock]) -> None:
    """What holds the tools of the tests can run the service, not the other way round."""
    short, long = locks
    assert short.accepts(stamp_of(short.path))
    assert short.accepts(stamp_of(long.path))
    assert not long.accepts(stamp_of(short.path))


def test_changed_lock_refuses_the_old_stamp(locks: tuple[Lock, Lock]) -> None:
    """One changed byte of a lock asks for a new installation."""
    _, long = locks
    before = stamp_of(long.path)
    long.path.write_text("one\ntwo==2\n")
    assert not long.accepts(before)


def test_longer_lock_holds_the_shorter() -> None:
    """Every package the service runs on is in the lock of the tests, at the same version."""
    runtime, dev = (
        {line.split(" ")[0] for line in lock.path.read_text().splitlines() if "==" in line}
        for lock in (RUNTIME_LOCK, DEV_LOCK)
    )
    assert len(runtime) > 20
    assert runtime - dev == set()


def test_linux_needs_no_folder_named() -> None:
    """Only where a package brings the engine's libraries is their folder named."""
    assert bool(environment.engine_variables()) == (sys.platform in {"win32", "darwin"})


@pytest.mark.parametrize("program", ["uv", "nothing"])
def test_pip_is_there(tree: Tree, program: str) -> None:
    """With uv or without, this Python needs no package to install others."""
    tree.write_program(program, "exit 0")
    script = "from service.bootstrap.environment import needs_pip; print(needs_pip())"
    assert tree.python("-c", script).stdout == "False\n"


def test_uv_installs_when_it_is_there(tree: Tree) -> None:
    """Where uv is found it installs the lock by hashes, and pip is not asked."""
    tree.write_program("uv", 'echo "$@" >> calls')
    script = "from service.bootstrap import environment as e; e.install(e.RUNTIME_LOCK)"
    child = tree.python("-c", script)
    assert child.returncode == 0, child.stderr
    call = (tree.folder / "calls").read_text().split()
    assert call[:2] == ["pip", "install"]
    assert call[-3:] == ["--require-hashes", "-r", str(tree.folder / ".ci" / "constraints.txt")]
