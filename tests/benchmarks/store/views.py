"""The first view of pages over a store of 2,000 containers, served by a process of its own."""

from __future__ import annotations

import statistics
import tempfile
from collections.abc import Iterator
from pathlib import Path

import httpx

from service.keeping.refresh import refresh_today
from service.render.ruler import PangoRuler
from service.render.task import FONTS_CONF
from service.store.migrations.upgrade import upgrade_store
from service.store.open import open_folder
from service.web.views.shell.assets import STYLE, find_asset
from tests.benchmarks.store.measure import attach_all, save_all
from tests.benchmarks.store.timed import Measured, timed
from tests.benchmarks.store.town import make_town
from tests.browser.served import served

CONTAINERS, OBJECTS = 2_000, 24_000
_AGAIN = 9
_PAGES = {
    "today": "/",
    "containers": "/containers",
    "containers as one walks": "/containers?order=walk",
    "one container": "/containers/B-00042",
    "objects": "/objects",
    "a number found": "/find?q=1942.7.4",
    "checks due": "/checks",
    "print desk": "/print",
}


def measure_views(*, is_quick: bool) -> Iterator[Measured]:
    """Measure each page the first time after the start, and again; the floor is a file of ours."""
    share = 10 if is_quick else 1
    town = make_town(CONTAINERS // share, OBJECTS // share)
    ruler = PangoRuler(FONTS_CONF)
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        engine = open_folder(folder)
        upgrade_store(engine)
        save_all(engine, town)
        refresh_today(engine, ruler)
        attach_all(engine, ruler, town)
        engine.dispose()
        with (
            served(folder) as address,
            httpx.Client(base_url=address, headers={"Accept": "text/html"}, timeout=60) as client,
        ):
            floor = _view_again(client, find_asset(STYLE))
            for what, path in _PAGES.items():
                yield Measured(f"{what}, first view", _view(client, path), floor)
                yield Measured(f"{what}, again", _view_again(client, path), floor)


def _view(client: httpx.Client, path: str) -> float:
    return timed(lambda: client.get(path, follow_redirects=True).raise_for_status())


def _view_again(client: httpx.Client, path: str) -> float:
    return statistics.median(_view(client, path) for _ in range(_AGAIN))
