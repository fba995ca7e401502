"""The desk: everything that work on a store needs."""

from __future__ import annotations

from dataclasses import dataclass

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
    """

    engine: Engine
    shelf: FileShelf
    workshop: Workshop
