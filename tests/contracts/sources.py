"""The project's own files, read once for all contracts."""

from __future__ import annotations

import ast
from functools import cache
from pathlib import Path

ROOT = Path(__file__).parents[2]
SERVICE = ROOT / "service"
TESTS = ROOT / "tests"
TEMPLATES = ROOT / "templates"


def python_files(folder: Path) -> list[Path]:
    """Give every Python file under `folder`, in order."""
    return sorted(folder.rglob("*.py"))


@cache
def text_of(path: Path) -> str:
    """Read a text file; samples may hold bytes that are no UTF-8."""
    return path.read_text(encoding="utf-8", errors="replace")


@cache
def tree_of(path: Path) -> ast.Module:
    """Parse a Python file."""
    return ast.parse(text_of(path), filename=str(path))


def name_of(path: Path) -> str:
    """Name a file the way the project does, from its root."""
    return path.relative_to(ROOT).as_posix()
