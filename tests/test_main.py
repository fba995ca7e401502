"""The first file that Python reads."""

from __future__ import annotations

import ast
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
PRETEND = """
import runpy, sys
sys.version_info = (3, 6, 9)
runpy.run_module("service", run_name="__main__")
"""


@pytest.mark.parametrize("name", ["__init__.py", "__main__.py"])
def test_parses_on_old_pythons(name: str) -> None:
    """Both files that are read before the version is known parse as Python 3.4."""
    ast.parse((ROOT / "service" / name).read_text(encoding="ascii"), feature_version=(3, 4))


def test_old_python_is_told_what_is_needed() -> None:
    """A Python that is too old stops at once and says which one is needed."""
    child = subprocess.run(
        [sys.executable, "-c", PRETEND], cwd=ROOT, capture_output=True, text=True, check=False
    )
    assert child.returncode == 1
    assert child.stderr.startswith("Underlid needs Python 3.11 or newer; this one is 3.6.")
