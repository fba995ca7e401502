"""System packages unpacked beside the service, for people who may not install any.

`.syslibs` holds the files of Debian packages as they would lie under `/`.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path

from service.bootstrap.words import run

FOLDER = Path(__file__).absolute().parents[2] / ".syslibs"
PIP_PACKAGES = ("python3-pip-whl",)
_UNPACKED = FOLDER / "underlid-packages"
SYSTEM_CERTIFICATES = Path("/etc/ssl/certs/ca-certificates.crt")
# Debian's pip loads the system's certificates while it is imported, and stops where there are none.
START_PIP_WITH_CERTIFICATES = """
import os, sys
from pip._vendor import certifi
certifi.where = lambda: os.environ["PIP_CERT"]
from pip._internal.cli.main import main
sys.exit(main())
"""


def unpacked() -> frozenset[str]:
    """Name the packages that were asked for and unpacked."""
    return frozenset(_UNPACKED.read_text().split()) if _UNPACKED.exists() else frozenset()


def download_commands(packages: Sequence[str]) -> list[list[str]]:
    """Give the commands that fetch `packages`, and what they need, without being root.

    apt keeps its lists and archives in our own folder, and checks every file as always.
    """
    apt = FOLDER / "apt"
    options = (f"Dir::State::lists={apt}/lists", f"Dir::Cache={apt}", "Debug::NoLocking=1")
    get = ["apt-get", *(part for option in options for part in ("-o", option))]
    install = ["install", "-y", "-q", "--no-install-recommends", "--download-only"]
    return [[*get, "update"], [*get, *install, *packages]]


def unpack_command(archive: str) -> list[str]:
    """Give the command that unpacks one package."""
    return ["dpkg-deb", "-x", archive, str(FOLDER)]


def unpack(packages: Sequence[str]) -> None:
    """Fetch `packages` and unpack them."""
    for folder in ("lists/partial", "archives/partial"):
        (FOLDER / "apt" / folder).mkdir(parents=True, exist_ok=True)
    for command in download_commands(packages):
        run(command)
    for archive in sorted(FOLDER.glob("apt/archives/*.deb")):
        run(unpack_command(str(archive)))
    _UNPACKED.write_text("\n".join(sorted(unpacked() | set(packages))))


def search_variables(variables: Mapping[str, str]) -> dict[str, str]:
    """Give what `variables` lack before a process finds the unpacked libraries."""
    present = variables.get("LD_LIBRARY_PATH", "").split(":")
    folders = [str(folder) for folder in sorted(FOLDER.glob("usr/lib/*-linux-*"))]
    if set(folders) <= set(present):
        return {}
    return {"LD_LIBRARY_PATH": ":".join([*folders, *filter(None, present)])}


def pip_variables(
    variables: Mapping[str, str], *, system_certificates: Path = SYSTEM_CERTIFICATES
) -> dict[str, str]:
    """Give what lets an unpacked pip run: its wheel, and certificates where the system has none."""
    wheels = sorted(FOLDER.glob("usr/share/python-wheels/pip-*.whl"))
    if not wheels:
        return {}
    given = {"PYTHONPATH": str(wheels[-1])}
    if not system_certificates.exists():
        given["PIP_CERT"] = variables.get("PIP_CERT") or str(_bundle_certificates())
    return given


def _bundle_certificates() -> Path:
    bundle = FOLDER / "certificates.pem"
    certificates = sorted(FOLDER.glob("usr/share/ca-certificates/*/*.crt"))
    bundle.write_bytes(b"".join(path.read_bytes() for path in certificates))
    return bundle
