"""The environment in `.venv`: made from the lock, known by a stamp."""

from __future__ import annotations

import hashlib
import importlib.util
import os
import shutil
import sys
from dataclasses import dataclass
from pathlib import Path

from service.bootstrap import system_files
from service.bootstrap.words import run, say, succeeds

ROOT = Path(__file__).absolute().parents[2]
VENV = ROOT / ".venv"
PYTHON = VENV / ("Scripts/python.exe" if os.name == "nt" else "bin/python")
STAMP = VENV / "underlid-lock"


@dataclass(frozen=True, slots=True)
class Lock:
    """A full list of packages with their hashes; `contained_in` are locks that hold all of it."""

    path: Path
    contained_in: tuple[Path, ...] = ()

    def accepts(self, stamp: str) -> bool:
        """Tell whether an environment with this stamp holds what the lock names."""
        return stamp in {stamp_of(path) for path in (self.path, *self.contained_in)}


def stamp_of(lock: Path) -> str:
    """Name a lock by what it holds."""
    return hashlib.sha256(lock.read_bytes()).hexdigest()


DEV_LOCK = Lock(ROOT / ".ci" / "constraints-dev.txt")
RUNTIME_LOCK = Lock(ROOT / ".ci" / "constraints.txt", contained_in=(DEV_LOCK.path,))


def is_running_inside() -> bool:
    """Tell whether this process is the environment's own Python."""
    return Path(sys.prefix).resolve() == VENV.resolve()


def is_ready(lock: Lock) -> bool:
    """Tell whether the environment holds what `lock` names."""
    return PYTHON.exists() and STAMP.exists() and lock.accepts(STAMP.read_text(encoding="ascii"))


def install(lock: Lock) -> None:
    """Make the environment where there is none, and install `lock` into it.

    The stamp is written last, so an installation that was cut off is done again.
    """
    say(f"Setting up .venv from {lock.path.relative_to(ROOT)}; this takes a minute or two.")
    STAMP.unlink(missing_ok=True)
    if not PYTHON.exists():
        run([sys.executable, "-m", "venv", "--clear", "--without-pip", str(VENV)])
    if not _uv_installs(lock):
        _pip_installs(lock)
    STAMP.write_text(stamp_of(lock.path), encoding="ascii")


def needs_pip() -> bool:
    """Tell whether neither uv, nor Python, nor an unpacked package can bring an installer."""
    found = (
        shutil.which("uv")
        or importlib.util.find_spec("ensurepip")
        or system_files.pip_variables(os.environ)
    )
    return not found


def engine_variables() -> dict[str, str]:
    """Name the folder of the engine's libraries where a package of the lock brings them.

    Neither Windows nor macOS has been tried; the folders are those of the packages themselves.
    """
    if sys.platform == "win32":
        folder = VENV / "Lib" / "site-packages" / "gstreamer_libs" / "bin"
        return {"WEASYPRINT_DLL_DIRECTORIES": str(folder)}
    if sys.platform == "darwin":
        folders = sorted(VENV.glob("lib/python*/site-packages/gstreamer_libs/lib"))
        return {"DYLD_FALLBACK_LIBRARY_PATH": os.pathsep.join(map(str, folders))}
    return {}


def _uv_installs(lock: Lock) -> bool:
    uv = shutil.which("uv")
    if uv is None:
        return False
    command = [uv, "pip", "install", "--quiet", "--python", str(PYTHON)]
    return succeeds([*command, "--require-hashes", "-r", str(lock.path)])


def _pip_installs(lock: Lock) -> None:
    variables = system_files.pip_variables(os.environ)
    if not variables and not any(VENV.glob("[Ll]ib*/**/site-packages/pip")):
        run([str(PYTHON), "-m", "ensurepip"])
    pip = ["-c", system_files.START_PIP_WITH_CERTIFICATES]
    command = [str(PYTHON), *(pip if "PIP_CERT" in variables else ["-m", "pip"])]
    command += ["install", "--quiet", "--no-input", "--disable-pip-version-check"]
    run([*command, "--require-hashes", "-r", str(lock.path)], variables=variables)
