"""The one place that builds real things: the ruler, the child processes, the folders, the store."""

from __future__ import annotations

import tempfile
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path

from service.config import Settings
from service.errors import ConfigError
from service.keeping.desk import Desk
from service.pipeline.ready import Workshop
from service.render.frames.store import FrameStore
from service.render.plates.cache import PlateCache
from service.render.ruler import PangoRuler
from service.render.task import ENVIRONMENT, FONTS_CONF, TEMPLATES
from service.render.worker import Workers
from service.store.handles import Engine
from service.store.migrations.upgrade import upgrade_store
from service.store.open import open_folder, open_url
from service.store.shelf.files import FileShelf, open_bucket, open_shelf

PROCESSES = 2
"""Child processes that decode and draw: one a core of the smallest machine in mind."""
MOST_PLATE_BYTES = 1 << 30
"""What the plates of earlier runs may take on disk: some 150,000 rich cards."""


@contextmanager
def open_workshop(data_folder: Path, *, processes: int = PROCESSES) -> Iterator[Workshop]:
    """Open everything the main job works with, and close it again.

    Raises:
        ConfigError: When the templates or fonts are not beside the program.
    """
    if not FONTS_CONF.is_file():
        name = "templates"
        raise ConfigError(name, reason=f"{TEMPLATES} is missing or not whole")
    data_folder.mkdir(parents=True, exist_ok=True)
    with (
        Workers(processes, environment=ENVIRONMENT) as workers,
        Workers(processes) as decoders,
        closing(FrameStore(data_folder / "frames")) as frames,
        tempfile.TemporaryDirectory(prefix="underlid-") as scratch,
    ):
        yield Workshop(
            PangoRuler(FONTS_CONF),
            workers,
            decoders,
            data_folder / "thumbnails",
            frames,
            PlateCache(data_folder / "plates.db", most_bytes=MOST_PLATE_BYTES),
            Path(scratch),
        )


@contextmanager
def open_desk(settings: Settings) -> Iterator[Desk]:
    """Open the store, the shelf of its files and the workshop, and close them again.

    Child processes are started when the first work for them comes.

    Raises:
        ConfigError: When the templates or fonts are not beside the program.
        StoreTooNewError: When a newer version of the service has changed the store.
        StoreBusyError: When others kept the store locked for too long.
    """
    with (
        open_workshop(settings.data, processes=settings.processes) as workshop,
        open_store(settings) as engine,
    ):
        shelf = _open_files(settings, workshop.scratch_folder)
        yield Desk(engine, shelf, workshop, settings.data)


@contextmanager
def open_store(settings: Settings) -> Iterator[Engine]:
    """Open the store alone, brought to the form of today, and close it again.

    Raises:
        StoreTooNewError: When a newer version of the service has changed the store.
        StoreBusyError: When others kept the store locked for too long.
    """
    engine = open_url(settings.database) if settings.database else open_folder(settings.data)
    try:
        upgrade_store(engine)
        yield engine
    finally:
        engine.dispose()


def _open_files(settings: Settings, scratch: Path) -> FileShelf:
    if settings.files:
        return open_bucket(settings.files, scratch=scratch)
    return open_shelf(settings.data / "files", scratch=scratch)
