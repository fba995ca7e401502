"""A PostgreSQL server for the tests: of its own, on a socket in a folder of its own."""

from __future__ import annotations

import os
import shutil
import subprocess
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from tempfile import mkdtemp

from sqlalchemy import create_engine, text

_PLACES = Path("/usr/lib/postgresql")
_USER = "postgres"


def find_programs() -> Path | None:
    """Find the folder of `initdb` and `pg_ctl`, that of the newest version that is installed."""
    on_path = shutil.which("initdb")
    if on_path:
        return Path(on_path).parent
    found = sorted(_PLACES.glob("*/bin/initdb"), key=lambda path: float(path.parts[-3]))
    return found[-1].parent if found else None


@contextmanager
def run_server(programs: Path) -> Iterator[str]:
    """Run a server for as long as the block lasts, and give the URL of its databases."""
    folder = Path(mkdtemp(prefix="pg"))
    is_root = os.getuid() == 0
    # The server refuses to run as root.
    prefix = ["runuser", "-u", _USER, "--"] if is_root else []
    if is_root:
        shutil.chown(folder, _USER)
    data = folder / "data"
    options = f"-c listen_addresses='' -k {folder} -c fsync=off"

    def call(program: str, *arguments: str) -> None:
        subprocess.run(
            [*prefix, str(programs / program), *arguments],
            check=True,
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
            cwd=folder,
        )

    try:
        call("initdb", "-D", str(data), "-U", _USER, "-A", "trust", "--no-sync", "-E", "UTF8")
        call("pg_ctl", "-D", str(data), "-w", "-l", str(folder / "log"), "-o", options, "start")
        try:
            yield f"postgresql+psycopg://{_USER}@/{{database}}?host={folder}"
        finally:
            call("pg_ctl", "-D", str(data), "-m", "immediate", "stop")
    finally:
        shutil.rmtree(folder, ignore_errors=True)


def make_database(url: str, name: str, *, like: str = "template1") -> str:
    """Make a database, as a copy of another, and give its URL."""
    engine = create_engine(url.format(database=_USER), isolation_level="AUTOCOMMIT")
    with engine.connect() as connection:
        connection.execute(text(f'CREATE DATABASE "{name}" TEMPLATE "{like}"'))
    engine.dispose()
    return url.format(database=name)


def drop_database(url: str, name: str) -> None:
    """Drop a database."""
    engine = create_engine(url.format(database=_USER), isolation_level="AUTOCOMMIT")
    with engine.connect() as connection:
        connection.execute(text(f'DROP DATABASE "{name}" WITH (FORCE)'))
    engine.dispose()
