"""Where things lie: tests beside their sources, a fixed top level, a map of the modules."""

from __future__ import annotations

import subprocess
from pathlib import Path

from tests.contracts.sources import ROOT, SERVICE, TESTS, name_of, python_files, text_of

TOP_LEVEL = {
    "DEVELOPERS.md",
    "Dockerfile",
    "README.md",
    "pyproject.toml",
    "sample_records",
    "service",
    "templates",
    "tests",
}
# Folders of tests that follow a question, not a source file.
ACROSS = {"benchmarks", "browser", "contracts", "faults", "outside", "properties"}


def _test_of(source: Path) -> str:
    inner = source.relative_to(SERVICE)
    return (inner.parent / f"test_{inner.stem.strip('_')}.py").as_posix()


def _tracked() -> list[str]:
    """Name every file that belongs to the project; without git, every file there is."""
    if not (ROOT / ".git").exists():
        return [path.name for path in ROOT.iterdir()]
    command = ["git", "-C", str(ROOT), "ls-files"]
    return subprocess.run(command, capture_output=True, text=True, check=True).stdout.splitlines()


def test_every_source_has_its_test() -> None:
    """What a file does is proved in the test file of the same path and name."""
    sources = [path for path in python_files(SERVICE) if path.stem != "__init__"]
    assert [name_of(path) for path in sources if not (TESTS / _test_of(path)).exists()] == []


def test_every_test_has_its_source() -> None:
    """A test file outlives no source file, and goes by no other name."""
    expected = {_test_of(path) for path in python_files(SERVICE)}
    found = [path.relative_to(TESTS) for path in TESTS.rglob("test_*.py")]
    assert [
        str(path)
        for path in found
        if path.parts[0] not in ACROSS and path.as_posix() not in expected
    ] == []


def test_top_level_is_fixed() -> None:
    """A newcomer sees the same few names for ever; only settings begin with a dot."""
    names = {name.split("/")[0] for name in _tracked()}
    assert {name for name in names if not name.startswith(".")} <= TOP_LEVEL


def test_developers_find_every_package() -> None:
    """The map in DEVELOPERS.md has a line for each package and module of the service."""
    text = text_of(ROOT / "DEVELOPERS.md")
    parts = [
        name_of(path)
        for path in sorted(SERVICE.iterdir())
        if (path / "__init__.py").exists() or path.suffix == ".py"
    ]
    lacking = [part for part in parts if f"`{part}`" not in text and "__init__" not in part]
    assert lacking == []


def test_readme_starts_with_two_commands() -> None:
    """README gives the command that serves and the command that checks, and the licence."""
    text = text_of(ROOT / "README.md")
    assert "python3 -m service\n" in text
    assert "python3 -m service test\n" in text
    assert "MIT" in text
