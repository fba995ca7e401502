"""From a bare tree to the command line."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.bootstrap.conftest import Tree


@pytest.mark.slow
def test_first_start_sets_up_and_later_ones_step_aside(tree: Tree) -> None:
    """The first start makes the environment; both run in it, and only the first talks."""
    first = tree.python("-m", "service", "print", "--yes", "here")
    second = tree.python("-m", "service", "print", "here")
    inside = f"{tree.folder / '.venv'} print here\n"
    assert (first.returncode, first.stdout) == (7, inside), first.stderr
    assert "Setting up .venv" in first.stderr
    assert (second.returncode, second.stdout, second.stderr) == (7, inside, "")


@pytest.mark.slow
def test_changed_lock_is_installed_again(tree: Tree) -> None:
    """An environment made from another lock is brought up to date before anything runs in it."""
    tree.write_program("uv", "exit 0")
    tree.python("-m", "service")
    (tree.folder / ".ci" / "constraints.txt").write_text("# another\n")
    again = tree.python("-m", "service", "print")
    assert "Setting up .venv" in again.stderr
    assert again.returncode == 7


@pytest.mark.slow
def test_checks_need_their_own_lock(tree: Tree) -> None:
    """`test` installs the longer lock, with which the service runs as it is."""
    tree.write_program("uv", "exit 0")
    checks = tree.python("-m", "service", "test")
    assert "constraints-dev.txt" in checks.stderr
    assert "== format" in checks.stdout
    assert tree.python("-m", "service").stderr == ""


@pytest.mark.slow
def test_set_up_that_fails_ends_with_words(tree: Tree) -> None:
    """A lock that cannot be installed stops the start, names what failed, leaves no stamp."""
    (tree.folder / ".ci" / "constraints.txt").write_text("nothing==1.0  # without a hash\n")
    failed = tree.python("-m", "service")
    assert failed.returncode == 1
    assert "This failed: " in failed.stderr.splitlines()[-1]
    assert not (tree.folder / ".venv" / "underlid-lock").exists()


@pytest.mark.slow
def test_unpacked_libraries_are_searched(tree: Tree) -> None:
    """Libraries unpacked beside the service are found by the process that runs it."""
    tree.write_program("uv", "exit 0")
    libraries: Path = tree.folder / ".syslibs" / "usr" / "lib" / "any-linux-gnu"
    libraries.mkdir(parents=True)
    (tree.folder / "service" / "cli" / "main.py").write_text(
        "import os\ndef run(_):\n    print(os.environ['LD_LIBRARY_PATH'])\n    return 0\n"
    )
    assert tree.python("-m", "service").stdout.split(":")[0].strip() == str(libraries)
