"""The desk: everything that work on a store needs."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from service.pipeline.ready import Workshop
from service.store.handles import Engine
from service.store.shelf.files import FileShelf


@dataclass(frozen=True, slots=True)
class Desk:
    """The store, the files it names, and the workshop that prints.

    Attributes:
        engine: Opens transactions of the store.
        shelf: Photos and finished PDFs by their SHA-256.
        workshop: What the main job works with.
        data_folder: Where the printers that were measured are kept.
    """

    engine: Engine
    shelf: FileShelf
    workshop: Workshop
    data_folder: Path
