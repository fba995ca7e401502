"""The one place that builds real things: the ruler, the child processes, the folders."""

from __future__ import annotations

import tempfile
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path

from service.errors import ConfigError
from service.pipeline.ready import Workshop
from service.render.frames.store import FrameStore
from service.render.plates.cache import PlateCache
from service.render.ruler import PangoRuler
from service.render.task import ENVIRONMENT, FONTS_CONF, TEMPLATES
from service.render.worker import Workers

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
