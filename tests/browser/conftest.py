"""Chromium, and the invented museum to look at: printed, attached, and one box repacked since."""

from __future__ import annotations

import fcntl
import io
import os
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from PIL import Image
from playwright.sync_api import Browser, BrowserContext, sync_playwright
from rich.console import Console

from service.cli.demo import show_demo
from service.config import Settings
from service.store.kept.tasks import TaskState, add_task, finish_task
from service.store.open import open_folder, writing
from tests.browser.crowd import add_crowd
from tests.browser.served import served
from tests.store.made import STAMP

_PLACES = ("/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome")
_QUIET = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)


@pytest.fixture(scope="module")
def chromium() -> Iterator[Browser]:
    """Start the browser of the system; with CI set its lack is a failure.

    It keeps an event loop running in this thread, so it ends before tests of other files begin.
    """
    place = next((place for place in _PLACES if Path(place).exists()), "")
    if not place:
        if os.environ.get("CI"):  # noqa: TID251 - tests are an entry point
            pytest.fail("Chromium is missing, and CI needs it")
        pytest.skip("Chromium is not installed")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=place, args=list(_QUIET))
        yield browser
        browser.close()


@pytest.fixture(scope="session")
def printed_demo(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Print and attach the invented museum once for all workers; give the folder of its store."""
    own = tmp_path_factory.getbasetemp()
    shared = own.parent if own.name.startswith("popen-") else own
    folder = shared / "printed-demo"
    with (shared / "printed-demo.lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        if not folder.exists():
            begun = tmp_path_factory.mktemp("begun")
            _print_demo(begun)
            (begun / "demo").rename(folder)
    return folder


def _print_demo(folder: Path) -> None:
    before = Path.cwd()
    os.chdir(folder)
    try:
        settings = Settings(data=folder, processes=2, actor="Ada Quill")
        assert show_demo(Console(file=io.StringIO()), settings) == 0
    finally:
        os.chdir(before)
    add_finished_task(folder / "demo")


def add_finished_task(folder: Path) -> None:
    """Remember a print that ended well, with something noticed."""
    finding = {"severity": "warning", "where": "B-027", "message": "Seen.", "advice": "Look."}
    result = {"run_id": 1, "cards": 2, "files": [{"name": "lid-card.pdf"}], "findings": [finding]}
    engine = open_folder(folder)
    with writing(engine) as connection:
        add_task(connection, "print-0", "print", {}, stamp=STAMP)
        finish_task(connection, "print-0", TaskState.DONE, result, at=STAMP.at)
    engine.dispose()


@pytest.fixture(scope="session")
def museum(printed_demo: Path, tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """Serve the demo to whoever only looks; give its address."""
    folder = shutil.copytree(printed_demo, tmp_path_factory.mktemp("looked-at") / "data")
    with served(folder) as address:
        yield address


@pytest.fixture
def crowded_museum(printed_demo: Path, tmp_path: Path) -> Iterator[str]:
    """Serve a copy of the demo with a drawer of four hundred objects."""
    folder = shutil.copytree(printed_demo, tmp_path / "data")
    add_crowd(folder)
    with served(folder) as address:
        yield address


@pytest.fixture
def own_museum(printed_demo: Path, tmp_path: Path) -> Iterator[str]:
    """Serve a copy of the demo to a test that changes it."""
    with served(shutil.copytree(printed_demo, tmp_path / "data")) as address:
        yield address


@pytest.fixture
def new_museum(tmp_path: Path) -> Iterator[str]:
    """Serve a store in which nothing is yet."""
    with served(tmp_path / "data") as address:
        yield address


@pytest.fixture
def phone(chromium: Browser) -> Iterator[BrowserContext]:
    """Give a window as narrow as a small phone, with a finger for a mouse."""
    with chromium.new_context(viewport={"width": 360, "height": 740}, has_touch=True) as context:
        yield context


@pytest.fixture
def photo(tmp_path: Path) -> Path:
    """Give a photo as a camera leaves it."""
    path = tmp_path / "image.jpg"
    Image.new("RGB", (640, 480), (90, 120, 90)).save(path, "JPEG")
    return path


@pytest.fixture
def desktop(chromium: Browser) -> Iterator[BrowserContext]:
    """Give a window of an office screen."""
    with chromium.new_context(viewport={"width": 1440, "height": 900}) as context:
        yield context
