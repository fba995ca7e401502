"""Words that must not stand in the project, or must not be printed."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.contracts.sources import (
    ROOT,
    SERVICE,
    TEMPLATES,
    TESTS,
    name_of,
    python_files,
    text_of,
    tree_of,
)

# Whatever sets the service up: which mirror a machine uses is that machine's business.
SET_UP_FILES = [
    path
    for path in (
        *ROOT.glob(".ci/*"),
        *python_files(SERVICE / "bootstrap"),
        *TESTS.rglob("*.sh"),
        ROOT / "Dockerfile",
        ROOT / "pyproject.toml",
    )
    if path.is_file()
]
OWN_FILES = [
    path
    for folder in (SERVICE, TESTS, TEMPLATES, ROOT / "sample_records", ROOT / ".ci")
    for path in sorted(folder.rglob("*"))
    if path.suffix in {".css", ".csv", ".html", ".json", ".md", ".py", ".sh", ".toml", ".txt"}
]
PRINTED_FILES = [
    path
    for path in sorted(TEMPLATES.rglob("*"))
    if path.suffix in {".html", ".svg", ".toml", ".po", ".pot"} and "fonts" not in path.parts
]
LOOPBACK = "127.0.0.1"
ADDRESS = re.compile(rf"https?://(?!{re.escape(LOOPBACK)})|--(?:extra-)?index|--find-links")
UNFINISHED = re.compile(r"\b(?:TO[D]O|FIX[M]E|XX[X])\b")
MACHINE_PATH = re.compile(r"(?<![\w.])/(?:work|root|home|Users)/\w")
PROMISE = re.compile(r"\bsafe\b", re.IGNORECASE)
JINJA_CODE = re.compile(r"\{\{.*?\}\}|\{%.*?%\}|\{#.*?#\}", re.DOTALL)


def _strings(tree: ast.Module) -> Iterator[str]:
    """Give every string a program can show: all but docstrings."""
    documented = (ast.Module, ast.ClassDef, ast.FunctionDef, ast.AsyncFunctionDef)
    bare = {
        id(node.value)
        for owner in ast.walk(tree)
        if isinstance(owner, documented)
        for node in owner.body
        if isinstance(node, ast.Expr)
    }
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in bare:
            yield node.value


@pytest.mark.parametrize("path", SET_UP_FILES, ids=name_of)
def test_set_up_names_no_registry(path: Path) -> None:
    """No lock, script or image file ties the project to one registry or mirror."""
    assert ADDRESS.findall(text_of(path)) == []


def test_nothing_is_left_unfinished() -> None:
    """No file holds a mark of work put off."""
    assert [name_of(path) for path in OWN_FILES if UNFINISHED.search(text_of(path))] == []


def test_no_path_of_one_machine() -> None:
    """No file knows where on somebody's disk it lies."""
    assert [name_of(path) for path in OWN_FILES if MACHINE_PATH.search(text_of(path))] == []


def test_program_promises_nothing() -> None:
    """No sentence of ours calls an object, a weight or a hazard harmless by that one word."""
    found = [
        f"{name_of(path)}: {text}"
        for path in python_files(SERVICE)
        for text in _strings(tree_of(path))
        if PROMISE.search(text)
    ]
    assert found == []


def test_templates_promise_nothing() -> None:
    """No template prints that one word either; the filter of that name is code, not print."""
    printed = {name_of(path): JINJA_CODE.sub("", text_of(path)) for path in PRINTED_FILES}
    assert [name for name, text in printed.items() if PROMISE.search(text)] == []
