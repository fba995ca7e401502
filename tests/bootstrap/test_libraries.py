"""Which libraries are missing, and what each kind of system is asked to run."""

from __future__ import annotations

import pytest

from service.bootstrap.libraries import (
    ENGINE_LIBRARIES,
    MANAGERS,
    PackageManager,
    add,
    find_manager,
    missing_libraries,
)
from service.bootstrap.words import StoppedError
from tests.bootstrap.conftest import Tree

COUNTING = 'echo "${0##*/}" "$@" >> calls'


def _add(*, as_root: bool, agreed: bool = True, pip: bool = False) -> str:
    return (
        "from service.bootstrap.libraries import add\n"
        f"add(['libpango-1.0.so.0'], pip={pip}, as_root={as_root}, agreed={agreed})"
    )


def test_finds_what_cannot_be_loaded() -> None:
    """A library that the system refuses to load is missing, the others are not."""

    def load(name: str) -> None:
        if "subset" in name:
            raise OSError(name)

    assert missing_libraries(load) == ["libharfbuzz-subset.so.0"]


def test_this_system_has_them_all() -> None:
    """Where the tests run, every library of the engine loads under the name that is probed."""
    assert len(ENGINE_LIBRARIES) == 6
    assert missing_libraries() == []


@pytest.mark.parametrize("manager", MANAGERS, ids=lambda manager: manager.program)
def test_each_system_has_its_manager(manager: PackageManager) -> None:
    """Each known manager is found by its program and never waits for an answer."""
    assert find_manager(lambda name: name if name == manager.program else None) is manager
    assert all("interactive" not in word or "non" in word for word in manager.install)
    assert manager.commands(["pango"])[-1][-1] == "pango"


def test_unknown_system_is_told_what_to_install() -> None:
    """Where no manager is known, the words name Pango and pip instead of a command."""
    with pytest.raises(StoppedError, match=r"Install Pango 1\.44 or newer"):
        find_manager(lambda _: None)


def test_nothing_missing_says_nothing(capfd: pytest.CaptureFixture[str]) -> None:
    """A system that has everything is not spoken to."""
    add([], pip=False, as_root=False, agreed=False)
    assert capfd.readouterr() == ("", "")


def test_root_is_shown_what_runs(tree: Tree) -> None:
    """As root the commands are shown in full and run, pip's package with them."""
    tree.write_program("apt-get", COUNTING)
    child = tree.python("-c", _add(as_root=True, agreed=False, pip=True))
    calls = (tree.folder / "calls").read_text().splitlines()
    assert child.returncode == 0, child.stderr
    assert calls[0] == "apt-get update"
    assert "libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0 python3." in calls[1]
    assert [line.strip() for line in child.stderr.splitlines()[2:]] == calls


def test_without_root_packages_are_unpacked(tree: Tree) -> None:
    """Anybody else gets the packages unpacked beside the service, once agreed."""
    tree.write_program("apt-get", COUNTING)
    tree.write_program("dpkg-deb", COUNTING)
    child = tree.python("-c", _add(as_root=False, pip=True))
    assert child.returncode == 0, child.stderr
    assert "dpkg-deb -x PACKAGE" in child.stderr
    assert "--download-only libpango-1.0-0" in (tree.folder / "calls").read_text()
    again = tree.python("-c", _add(as_root=False, pip=True))
    assert "Unpacked, yet not found in" in again.stderr.splitlines()[-1]


def test_nothing_runs_without_agreement(tree: Tree) -> None:
    """Without root, agreement and a terminal, nothing is run."""
    tree.write_program("apt-get", COUNTING)
    child = tree.python("-c", _add(as_root=False, agreed=False))
    assert "Nothing was installed" in child.stderr
    assert not (tree.folder / "calls").exists()


def test_other_systems_without_root_get_the_command(tree: Tree) -> None:
    """Where packages cannot be unpacked, the reader gets the line that root has to run."""
    tree.write_program("dnf", COUNTING)
    child = tree.python("-c", _add(as_root=False))
    assert child.stderr.splitlines()[-1].endswith("dnf install -y pango harfbuzz")
    assert not (tree.folder / "calls").exists()
