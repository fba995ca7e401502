"""Removal slips on paper: one to leave in the gap for each object that is out."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from service.cards.papers.removal_slip import RemovalSlip, Taken, compose_removal_slip
from service.cards.second.papers import speak_paper
from service.keeping.desk import Desk
from service.keeping.rounds.loading import (
    Loaded,
    find_files,
    find_packed,
    load_container_of,
    load_packings,
    load_unpacked,
)
from service.languages.catalogue import load_phrasebook
from service.pipeline.documents.rounds import print_removal_slips
from service.records.record import PlaceRecord
from service.store.handles import Connection
from service.store.kept.outs import Out
from service.store.open import reading


def print_slips(desk: Desk, outs: Sequence[Out], *, paper: str = "A4") -> Path:
    """Print the slips of what is out, several on a page, and give the path of the file.

    Raises:
        NothingToDoError: When there is none.
        ProofFailedError: When a page does not read back as it should.
    """
    numbers = list(dict.fromkeys(out.slip.container_number for out in outs))
    with reading(desk.engine) as connection:
        loaded = load_packings(connection, numbers)
        slips = [_compose(connection, out, loaded) for out in outs]
    files = find_files(desk, loaded.photos, (slip.photo for slip in slips))
    return print_removal_slips(slips, files, desk.workshop, paper=paper)


def _compose(connection: Connection, out: Out, loaded: Loaded) -> RemovalSlip:
    slip = out.slip
    packing = load_container_of(loaded, slip.container_number)
    place = PlaceRecord(slip.object_number, slip.parts)
    packed = find_packed(packing, place) or load_unpacked(connection, place)
    taken = Taken(
        slip=out.out_id,
        parts=slip.parts,
        to_whom=slip.to_whom,
        reason=slip.reason,
        taken_by=out.stamp.actor,
        out_on=out.stamp.at.date(),
        due_back=slip.due_back,
    )
    worded = compose_removal_slip(packed, packing.container, taken, loaded.museum)
    return speak_paper(worded, load_phrasebook(loaded.museum.second_language))
