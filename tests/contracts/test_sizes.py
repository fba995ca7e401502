"""Sizes that keep a file and a function readable in one sitting; no linter counts these."""

from __future__ import annotations

import ast
from collections import Counter
from pathlib import Path
from statistics import median

from tests.contracts.sources import (
    SERVICE,
    TEMPLATES,
    TESTS,
    name_of,
    python_files,
    text_of,
    tree_of,
)

SERVICE_FILE_LINES = 250
TEST_FILE_LINES = 400
TEMPLATE_LINES = 120
FUNCTION_LINES = 40
MEDIAN_FUNCTION_LINES = 8
FOLDER_FILES = 10

# Data tables and command definitions, each with the reason why it is one function.
LONG_BY_NATURE: dict[str, str] = {}


# Files that are one table or one tree, which a reader wants to see in one place.
LONG_FILES = {"service/errors.py": "the whole error tree, with its drawing at the top"}


def _too_long(paths: list[Path], limit: int) -> list[str]:
    lengths = {
        name_of(path): len(text_of(path).splitlines())
        for path in paths
        if name_of(path) not in LONG_FILES
    }
    return [f"{name}: {length}" for name, length in lengths.items() if length > limit]


def _function_lines(path: Path) -> dict[str, int]:
    """Count the lines of code of each function, without docstring, comments and blanks."""
    lines = text_of(path).splitlines()
    counted = {}
    for node in ast.walk(tree_of(path)):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            skipped = _docstring_lines(node)
            numbers = range(node.lineno, (node.end_lineno or node.lineno) + 1)
            code = [lines[n - 1].strip() for n in numbers if n not in skipped]
            counted[f"{name_of(path)}::{node.name}"] = sum(
                bool(line) and not line.startswith("#") for line in code
            )
    return counted


def _docstring_lines(node: ast.FunctionDef | ast.AsyncFunctionDef) -> range:
    if ast.get_docstring(node) is None:
        return range(0)
    first = node.body[0]
    return range(first.lineno, (first.end_lineno or first.lineno) + 1)


def test_service_files_are_short() -> None:
    """No file of the service is longer than a reader takes in at once."""
    assert _too_long(python_files(SERVICE), SERVICE_FILE_LINES) == []


def test_test_files_are_short() -> None:
    """No test file is longer than a reader takes in at once."""
    assert _too_long(python_files(TESTS), TEST_FILE_LINES) == []


def test_templates_are_short() -> None:
    """No template of ours is longer than a reader takes in at once."""
    pages = [path for path in TEMPLATES.rglob("*.html") if "vendor" not in path.parts]
    assert _too_long(sorted(pages), TEMPLATE_LINES) == []


def test_functions_are_short() -> None:
    """Every function fits a screen, but for tables and command definitions named here."""
    counted = {
        name: lines
        for path in python_files(SERVICE)
        for name, lines in _function_lines(path).items()
        if lines > FUNCTION_LINES
    }
    assert {name: counted[name] for name in counted if name not in LONG_BY_NATURE} == {}
    assert set(LONG_BY_NATURE) <= set(counted), "no longer long: take it off the list"


def test_most_functions_are_very_short() -> None:
    """Half of all functions are a few lines, so that names carry the story."""
    counted = [lines for path in python_files(SERVICE) for lines in _function_lines(path).values()]
    assert median(counted) <= MEDIAN_FUNCTION_LINES


def test_folders_hold_few_files() -> None:
    """A folder of the service holds one subject."""
    files = Counter(name_of(path.parent) for path in python_files(SERVICE) if "__" not in path.stem)
    assert {name: count for name, count in files.items() if count > FOLDER_FILES} == {}
