"""Importing costs nothing and asks nothing: no environment, no disk, no network."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

WATCH = Path(__file__).with_name("watch_imports.py")


@pytest.mark.slow
def test_importing_any_module_touches_nothing(tmp_path: Path) -> None:
    """Every module can be imported in an empty environment and folder, and leaves both alone."""
    child = subprocess.run(
        [sys.executable, "-W", "error", str(WATCH)],
        cwd=tmp_path,
        env={},
        capture_output=True,
        text=True,
        check=False,
    )
    assert (child.stdout, child.stderr, child.returncode) == ("", "", 0)
    assert list(tmp_path.iterdir()) == []
