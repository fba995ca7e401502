"""A counter over a store, for what pages gather without HTTP."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from service.jobs.line import open_line
from service.keeping.desk import Desk
from service.pipeline.ready import Workshop
from service.render.ruler import PangoRuler
from service.render.task import FONTS_CONF
from service.store.open import open_folder
from service.store.shelf.files import open_shelf
from service.web.store.counter import Backroom, Counter
from tests.web.store.opened import MOMENT


@contextmanager
def open_counter(folder: Path, workshop: Workshop) -> Iterator[Counter]:
    """Give a counter at the moment of the tests."""
    engine = open_folder(folder)
    desk = Desk(engine, open_shelf(folder / "files", scratch=folder), workshop, folder)
    with open_line(engine) as line:
        yield Counter(desk, PangoRuler(FONTS_CONF), Backroom(line), clock=lambda: MOMENT)
    engine.dispose()
