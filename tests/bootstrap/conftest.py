"""A tree as somebody downloads it, small enough to be set up in a test without any network."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path

import pytest

SERVICE = Path(__file__).parents[2] / "service"
COMMAND_LINE = """
import sys

def run(arguments):
    print(sys.prefix, *arguments)
    return 7
"""


@dataclass(frozen=True, slots=True)
class Tree:
    """A folder with the bootstrap, two locks that name no package, and a command line."""

    folder: Path

    @property
    def programs(self) -> Path:
        """The only folder that is searched for programs."""
        return self.folder / "programs"

    def write_program(self, name: str, lines: str) -> None:
        """Put a small shell program where this tree looks for programs."""
        path = self.programs / name
        path.write_text(f"#!/bin/sh\n{lines}\n")
        path.chmod(0o755)

    def python(self, *arguments: str) -> subprocess.CompletedProcess[str]:
        """Run this test's Python inside the tree, with nobody at the terminal."""
        return subprocess.run(
            [sys.executable, *arguments],
            cwd=self.folder,
            env={**os.environ, "PATH": str(self.programs)},  # noqa: TID251  Ours, but for the path.
            stdin=subprocess.DEVNULL,
            capture_output=True,
            text=True,
            check=False,
        )


@pytest.fixture
def tree(tmp_path: Path) -> Tree:
    """Give a tree in which nothing has been set up."""
    folder = tmp_path / "tree"
    (folder / "service" / "cli").mkdir(parents=True)
    for name in ("__init__.py", "__main__.py"):
        shutil.copy(SERVICE / name, folder / "service" / name)
    # A link, not a copy: coverage then counts for the file itself.
    (folder / "service" / "bootstrap").symlink_to(SERVICE / "bootstrap")
    (folder / "service" / "cli" / "main.py").write_text(COMMAND_LINE)
    (folder / "programs").mkdir()
    (folder / ".ci").mkdir()
    for name in ("constraints.txt", "constraints-dev.txt"):
        (folder / ".ci" / name).write_text(f"# {name}\n")
    return Tree(folder)
