"""What every test stands on: a clean environment, how hard properties look, what made the ink."""

from __future__ import annotations

import ctypes
import hashlib
import os
import sqlite3
from collections.abc import Generator
from importlib.metadata import version
from pathlib import Path

import pytest
from coverage import Coverage
from hypothesis import settings

ROOT = Path(__file__).parents[1]
_UNMEASURED = {"browser", "contracts", "faults", "outside", "properties"}
"""What goes through all of the service; the tests of the parts tell what is covered."""
_CHILDREN_MEASURED = {"bootstrap", "jobs", "render", "web"}
"""Whose child processes are measured, too: elsewhere they only ink."""

settings.register_profile("dev", max_examples=25, deadline=None)
settings.register_profile("ci", max_examples=60, derandomize=True, deadline=None)
settings.register_profile("long", max_examples=2000, stateful_step_count=80, deadline=None)


def pytest_addoption(parser: pytest.Parser) -> None:
    """Offer the long run, which looks at far more cases."""
    parser.addoption("--long", action="store_true", help="look at far more cases, for hours")


def pytest_configure(config: pytest.Config) -> None:
    """Choose how hard properties look, and forget what this machine has set for the service."""
    environment = os.environ  # noqa: TID251  Tests are an entry point; children inherit this.
    short = "ci" if environment.get("CI") else "dev"
    settings.load_profile("long" if config.getoption("--long") else short)
    for name in [name for name in environment if name.startswith("UNDERLID_")]:
        del environment[name]


@pytest.hookimpl(wrapper=True)
def pytest_runtest_protocol(item: pytest.Item) -> Generator[None, object, object]:
    """Measure what is covered where a part is tested, and nowhere else: it doubles the time."""
    part = item.path.relative_to(ROOT / "tests").parts[0]
    measuring = Coverage.current()
    if measuring is None:
        return (yield)
    environment = os.environ  # noqa: TID251  Children of tests inherit this.
    told = {name: text for name, text in environment.items() if name.startswith("COVERAGE_")}
    for name in () if part in _CHILDREN_MEASURED else told:
        del environment[name]
    if part in _UNMEASURED:
        measuring.stop()
    try:
        return (yield)
    finally:
        if part in _UNMEASURED:
            measuring.start()
        environment.update(told)


def pytest_sessionfinish(session: pytest.Session) -> None:
    """Write down what a worker has covered: one that ends slowly is cut off before it would."""
    measuring = Coverage.current()
    if measuring is not None and hasattr(session.config, "workerinput"):
        measuring.save()


def pytest_report_header() -> str:
    """Name the versions of whatever moves ink or data."""
    pango = _library_version("libpango-1.0.so.0", "pango_version_string")
    harfbuzz = _library_version("libharfbuzz.so.0", "hb_version_string")
    return (
        f"ink: WeasyPrint {version('weasyprint')}, Pango {pango}, HarfBuzz {harfbuzz},"
        f" SQLite {sqlite3.sqlite_version}, fonts {_font_mark()}"
    )


def _library_version(library: str, function: str) -> str:
    try:
        ask = getattr(ctypes.CDLL(library), function)
    except (OSError, AttributeError):
        return "not found"
    ask.restype = ctypes.c_char_p
    return str(ask().decode("ascii"))


def _font_mark() -> str:
    fonts = sorted((ROOT / "templates" / "fonts").glob("*.ttf"))
    digest = hashlib.sha256()
    for font in fonts:
        digest.update(font.name.encode() + font.read_bytes())
    return f"{len(fonts)} files {digest.hexdigest()[:8]}"
