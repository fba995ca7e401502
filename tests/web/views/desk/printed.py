"""A store in which cards of the sample box were printed, without ink."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import httpx

from service.pipeline.ready import Workshop
from tests.web.store.examples import add_run
from tests.web.store.opened import open_client


@contextmanager
def open_printed(filled: Path, folder: Path, workshop: Workshop) -> Iterator[httpx.Client]:
    """Give a client of a service over a copy of the filled store with one run in it."""
    shutil.copytree(filled, folder)
    add_run(folder)
    with open_client(folder, workshop) as client:
        yield client
