"""The swap list of a store: the reprint list as paper to walk with."""

from __future__ import annotations

from collections.abc import Collection
from pathlib import Path

from service.cards.card import EndLabel
from service.cards.fingerprint import check_letters
from service.cards.kept_text import card_from_text
from service.cards.kinds import find_kind
from service.cards.swap_list import (
    LEAVE_ON,
    TAKE_OFF,
    SwapList,
    SwapRow,
    name_version,
    order_rows,
)
from service.cards.words import join_words, write_date
from service.keeping.desk import Desk
from service.keeping.reprints import OutOfDate, ReprintList, list_reprints
from service.pipeline.documents.swap_list import print_swap_list
from service.pipeline.ready import Progress, tell_nobody
from service.printed import to_print
from service.records.record import Museum
from service.store.handles import Engine
from service.store.history import Stamp
from service.store.load_records import load_museum
from service.store.open import reading
from service.store.printed.card import MadeCard

_COMPARE = to_print("compare the numbers")
"""What stands for the scan of card and container: a tag has no container to be scanned with."""


def print_swaps(
    desk: Desk, *, stamp: Stamp, paper: str = "A4", on_progress: Progress = tell_nobody
) -> Path:
    """Print the swap list as the records are now, and give the path of the file.

    Raises:
        NothingToDoError: When no card has to be replaced.
        ProofFailedError: When a page does not read back as it should.
    """
    listed = list_reprints(desk.engine, desk.workshop.ruler, on_progress=on_progress)
    swap_list = gather_swaps(desk.engine, listed, stamp=stamp)
    return print_swap_list(swap_list, desk.workshop, paper=paper)


def gather_swaps(
    engine: Engine, listed: ReprintList, *, stamp: Stamp, indoors: bool = False
) -> SwapList:
    """Gather what is to be swapped; `indoors` tells locations and reasons that paper may not."""
    unworded = {number for number, _ in (*listed.failed, *listed.failed_tags)}
    with reading(engine) as connection:
        museum = load_museum(connection)
    rows = order_rows(_row(one, museum, unworded, indoors=indoors) for one in listed.out_of_date)
    made = join_words((write_date(stamp.at.date()), stamp.actor), between=", ")
    hides_locations = not (museum.show_location or indoors)
    return SwapList(museum.name, made, rows, hides_locations=hides_locations)


def _row(one: OutOfDate, museum: Museum, unworded: Collection[str], *, indoors: bool) -> SwapRow:
    made = one.printed.made
    kind = find_kind(made.kind)
    changes = one.reprint.changes
    reasons = (change.words if indoors else change.outside_words for change in changes)
    return SwapRow(
        container_number=one.reprint.container_number,
        location=one.reprint.location if museum.show_location or indoors else (),
        card=_name_card(made),
        where=f"{kind.where}; {_COMPARE}" if made.object_number else kind.where,
        old=name_version(_revision(made, made.revision), check_letters(made.fingerprint)),
        new=_name_new(one, unworded),
        urgency=one.reprint.urgency,
        reasons=tuple(dict.fromkeys(reasons)),
        object_number=made.object_number,
    )


def _name_card(made: MadeCard) -> str:
    said = card_from_text(made.content)
    name = find_kind(made.kind).name
    if made.object_number:
        return to_print("{name} of {object_number}", name=name, object_number=made.object_number)
    return (
        to_print("{name}, side {side} of {sides}", name=name, side=said.side, sides=said.sides)
        if isinstance(said, EndLabel)
        else name
    )


def _name_new(one: OutOfDate, unworded: Collection[str]) -> str:
    """Name the new card; where today's cannot be worded the old one is better than none."""
    made = one.printed.made
    if one.today is not None:
        head = one.today.head
        return name_version(_revision(made, head.revision), head.check_letters)
    return LEAVE_ON if made.number in unworded else TAKE_OFF


def _revision(made: MadeCard, revision: int) -> int | None:
    """Give the revision that a card prints: a tag is of none."""
    return None if made.object_number else revision
