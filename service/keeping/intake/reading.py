"""Reads a source by the mappings of this museum, and looks into one before."""

from __future__ import annotations

from collections.abc import Mapping

from service.keeping.desk import Desk
from service.pipeline.read import Content, read_source, sample_file
from service.records.mapping.mapping import ColumnMapping
from service.records.mapping.sample import Sample
from service.records.record import Collection
from service.store.kept.mappings import load_mappings
from service.store.open import reading


def read_mapped(desk: Desk, files: Mapping[str, Content], *, mapping: str = "") -> Collection:
    """Read records: by the mapping named, else by one made for the same headings, else by ours.

    Raises:
        NotFoundError: When there is no such mapping.
        RecordsError: When nothing of the source can be used.
        JobError: When the reader had to be stopped.
    """
    with reading(desk.engine) as connection:
        mappings = load_mappings(connection, wanted=mapping)
    return read_source(files, desk.workshop.workers, mappings)


def look_into(desk: Desk, name: str, data: bytes, *, like: ColumnMapping) -> Sample:
    """Say what a file holds and what its headings may mean; nothing is taken in.

    `like` says what its rows are and, as far as it is known, how it is written.

    Raises:
        RecordsError: When nothing of it can be used, or `like` cannot be.
        JobError: When the reader had to be stopped.
    """
    with reading(desk.engine) as connection:
        mappings = load_mappings(connection)
    return sample_file(name, data, desk.workshop.workers, like=like, mappings=mappings)
