"""The one place that builds real things: the ruler, the child processes, the folders."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from service.errors import ConfigError
from service.pipeline.ready import Workshop
from service.render.ruler import PangoRuler
from service.render.task import ENVIRONMENT, FONTS_CONF, TEMPLATES
from service.render.worker import Workers

PROCESSES = 2
"""Child processes that decode and draw: one a core of the smallest machine in mind."""


@contextmanager
def open_workshop(data_folder: Path, *, processes: int = PROCESSES) -> Iterator[Workshop]:
    """Open everything the main job works with, and close it again.

    Raises:
        ConfigError: When the templates or fonts are not beside the program.
    """
    if not FONTS_CONF.is_file():
        name = "templates"
        raise ConfigError(name, reason=f"{TEMPLATES} is missing or not whole")
    with Workers(processes, environment=ENVIRONMENT) as workers:
        yield Workshop(PangoRuler(FONTS_CONF), workers, data_folder / "thumbnails")
