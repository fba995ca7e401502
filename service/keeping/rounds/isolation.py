"""The isolation label of a container, of an object, or of something that has just come in."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from pathlib import Path

from service.cards.papers.isolation_label import (
    Isolation,
    IsolationLabel,
    label_container,
    label_incoming,
    label_object,
)
from service.cards.second.papers import speak_paper
from service.errors import NotFoundError
from service.keeping.desk import Desk
from service.keeping.rounds.loading import Loaded, load_packings, load_unpacked
from service.languages.catalogue import load_phrasebook
from service.pipeline.documents.rounds import print_isolation_label
from service.records.record import PlaceRecord
from service.records.rows.text import tidy_text
from service.store.handles import Connection
from service.store.history import Stamp
from service.store.open import reading


@dataclass(frozen=True, slots=True)
class IsolationWish:
    """What is to be isolated, since when (else today), until when and why.

    `is_incoming` says that it is in no record yet; otherwise an unknown number is a slip of the
    pen and refused.
    """

    number: str
    why: str = ""
    since: date | None = None
    until: date | None = None
    is_incoming: bool = False
    copies: int = 1
    paper: str = "A4"


def print_isolation(desk: Desk, wish: IsolationWish, *, stamp: Stamp) -> Path:
    """Print the label of something to isolate, and give the path of the file.

    Raises:
        NotFoundError: When neither container nor object has this number, or there is none.
        ProofFailedError: When a page does not read back as it should.
    """
    why = tidy_text(wish.why)
    isolation = Isolation(wish.since or stamp.at.date(), wish.until, why, stamp.actor)
    with reading(desk.engine) as connection:
        label = _compose(connection, wish, isolation)
    return print_isolation_label(label, desk.workshop, paper=wish.paper, copies=wish.copies)


def _compose(connection: Connection, wish: IsolationWish, isolation: Isolation) -> IsolationLabel:
    """Word the label from what the store knows of the number, whatever was said of it.

    Raises:
        NotFoundError: When it knows nothing, and the thing is not said to have just come in.
    """
    loaded = load_packings(connection, [wish.number])
    label = _word(connection, wish, isolation, loaded)
    return speak_paper(label, load_phrasebook(loaded.museum.second_language))


def _word(
    connection: Connection, wish: IsolationWish, isolation: Isolation, loaded: Loaded
) -> IsolationLabel:
    if wish.number in loaded.packings:
        return label_container(loaded.packings[wish.number], isolation, loaded.museum)
    packed = load_unpacked(connection, PlaceRecord(wish.number))
    if packed.known:
        return label_object(packed, isolation, loaded.museum)
    if wish.is_incoming and (number := tidy_text(wish.number)):
        return label_incoming(number, isolation, loaded.museum)
    raise NotFoundError(wish.number, what="container or object")
