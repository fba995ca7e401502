"""The system libraries of the layout engine: which are missing, and how each system gets them."""

from __future__ import annotations

import ctypes
import shutil
import sys
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import NoReturn

from service.bootstrap import system_files
from service.bootstrap.words import StoppedError, ask, run, say, shown

# What WeasyPrint 70 loads, by the names that Linux gives them.
ENGINE_LIBRARIES = (
    "libgobject-2.0.so.0",
    "libpango-1.0.so.0",
    "libharfbuzz.so.0",
    "libfontconfig.so.1",
    "libpangoft2-1.0.so.0",
    "libharfbuzz-subset.so.0",
)


@dataclass(frozen=True, slots=True)
class PackageManager:
    """How one family of systems installs Pango; only apt-get has been tried."""

    program: str
    install: tuple[str, ...]
    pango: tuple[str, ...]
    pip: tuple[str, ...] = ()
    update: tuple[str, ...] = ()

    def commands(self, packages: Sequence[str]) -> list[list[str]]:
        """Give the commands that install `packages`, to be run as root."""
        update = [[self.program, *self.update]] if self.update else []
        return [*update, [self.program, *self.install, *packages]]


MANAGERS = (
    PackageManager(
        program="apt-get",
        update=("update",),
        install=("install", "-y", "-q", "--no-install-recommends"),
        pango=("libpango-1.0-0", "libpangoft2-1.0-0", "libharfbuzz-subset0"),
        pip=(f"python3.{sys.version_info.minor}-venv",),
    ),
    PackageManager("dnf", ("install", "-y"), pango=("pango", "harfbuzz")),
    PackageManager(
        "zypper",
        ("--non-interactive", "install"),
        pango=("libpango-1_0-0", "libharfbuzz-subset0"),
    ),
    PackageManager("pacman", ("-S", "--needed", "--noconfirm"), pango=("pango", "harfbuzz")),
    PackageManager("apk", ("add",), pango=("pango", "harfbuzz-subset")),
)


def missing_libraries(load: Callable[[str], object] = ctypes.CDLL) -> list[str]:
    """Name the engine's libraries that cannot be loaded; on Windows and macOS the lock has them."""
    if sys.platform in {"win32", "darwin"}:
        return []
    return [name for name in ENGINE_LIBRARIES if not _loads(name, load)]


def find_manager(which: Callable[[str], str | None] = shutil.which) -> PackageManager:
    """Find the package manager of this system.

    Raises:
        StoppedError: when there is none that is known.
    """
    for manager in MANAGERS:
        if which(manager.program):
            return manager
    message = (
        "No known package manager is here. Install Pango 1.44 or newer with HarfBuzz and its"
        " subset library, and Python's venv module with pip, then start again."
    )
    raise StoppedError(message)


def add(libraries: Sequence[str], *, pip: bool, as_root: bool, agreed: bool) -> None:
    """Install what brings `libraries`, and pip where it is wanted; say what will be run first.

    Root is not asked, since nothing is left to be decided; anybody else is, unless `agreed`.

    Raises:
        StoppedError: when the reader does not agree, or when nothing here can install it.
    """
    if not libraries and not pip:
        return
    say(f"Missing on this system: {', '.join([*libraries, *(['pip'] if pip else [])])}.")
    manager = find_manager()
    pango = manager.pango if libraries else ()
    if as_root:
        _install(manager, [*pango, *(manager.pip if pip else ())])
    elif manager.program == "apt-get":
        _unpack([*pango, *(system_files.PIP_PACKAGES if pip else ())], agreed=agreed)
    else:
        _stop("\n".join(["Have this run by root, then start again:", *_lines(manager, pango)]))


def _install(manager: PackageManager, packages: Sequence[str]) -> None:
    say("\n".join(["Running, as root:", *_lines(manager, packages)]))
    for command in manager.commands(packages):
        run(command)
    if left := missing_libraries():
        _stop(f"Installed, yet these still cannot be loaded: {', '.join(left)}.")


def _unpack(packages: Sequence[str], *, agreed: bool) -> None:
    if system_files.unpacked() >= set(packages):
        _stop(f"Unpacked, yet not found in {system_files.FOLDER}. Remove it and start again.")
    commands = [*system_files.download_commands(packages), system_files.unpack_command("PACKAGE")]
    say("\n".join(["To be run, without root:", *(f"  {shown(command)}" for command in commands)]))
    ask("Download and unpack them?", agreed=agreed)
    system_files.unpack(packages)


def _lines(manager: PackageManager, packages: Sequence[str]) -> list[str]:
    return [f"  {shown(command)}" for command in manager.commands(packages)]


def _loads(name: str, load: Callable[[str], object]) -> bool:
    try:
        load(name)
    except OSError:
        return False
    return True


def _stop(message: str) -> NoReturn:
    raise StoppedError(message)
