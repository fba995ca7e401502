"""The one place that builds real things: the ruler, the child processes, the folders, the store."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path

from service.config import Settings
from service.errors import ConfigError
from service.jobs.scratch import open_scratch
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


_TASKS_PER_PROCESS = 20
_PREVIEWS_PER_PROCESS = 1_000
"""A child that is renewed keeps whoever looks at a preview waiting; its memory is bound as well."""


@contextmanager
def open_workshop(
    data_folder: Path,
    *,
    processes: int = PROCESSES,
    tasks_per_process: int = _TASKS_PER_PROCESS,
) -> Iterator[Workshop]:
    """Open everything the main job works with, and close it again.

    Any number of workshops, of this process or others, may share a data folder: frames, plates and
    thumbnails are put in place whole.

    Raises:
        ConfigError: When the templates or fonts are not beside the program.
    """
    if not FONTS_CONF.is_file():
        name = "templates"
        raise ConfigError(name, reason=f"{TEMPLATES} is missing or not whole")
    data_folder.mkdir(parents=True, exist_ok=True)
    with (
        Workers(processes, tasks_per_process=tasks_per_process, environment=ENVIRONMENT) as workers,
        Workers(processes) as decoders,
        closing(FrameStore(data_folder / "frames")) as frames,
        open_scratch(data_folder) as scratch,
    ):
        yield Workshop(
            PangoRuler(FONTS_CONF),
            workers,
            decoders,
            data_folder / "thumbnails",
            frames,
            PlateCache(data_folder / "plates.db", most_bytes=MOST_PLATE_BYTES),
            scratch,
        )


@contextmanager
def open_bench(settings: Settings) -> Iterator[Workshop]:
    """Open a small workshop beside the desk's, where previews need not wait for a print run.

    One child draws and one decodes; each is started with its first work.

    Raises:
        ConfigError: When the templates or fonts are not beside the program.
    """
    with open_workshop(
        settings.data, processes=1, tasks_per_process=_PREVIEWS_PER_PROCESS
    ) as bench:
        yield bench


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
