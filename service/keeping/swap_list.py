"""The swap list of a store: the reprint list as paper to walk with."""

from __future__ import annotations

from pathlib import Path

from service.cards.fingerprint import check_letters
from service.cards.kinds import END_LABEL, find_kind
from service.cards.swap_list import TAKE_OFF, SwapList, SwapRow, name_version, order_rows
from service.cards.words import join_words, write_date
from service.keeping.desk import Desk
from service.keeping.reprints import OutOfDate, list_reprints
from service.pipeline.ready import Progress, tell_nobody
from service.pipeline.swap_list import print_swap_list
from service.records.record import Museum
from service.store.history import Stamp
from service.store.load_records import load_museum
from service.store.open import reading


def print_swaps(
    desk: Desk, *, stamp: Stamp, paper: str = "A4", on_progress: Progress = tell_nobody
) -> Path:
    """Print the swap list as the records are now, and give the path of the file.

    Raises:
        ContentsError: When no card has to be replaced.
        ProofFailedError: When a page does not read back as it should.
    """
    found = list_reprints(desk.engine, desk.workshop.ruler, on_progress=on_progress).out_of_date
    with reading(desk.engine) as connection:
        museum = load_museum(connection)
    rows = order_rows(_row(one, museum) for one in found)
    made = join_words((write_date(stamp.at.date()), stamp.actor), between=", ")
    return print_swap_list(SwapList(museum.name, made, rows), desk.workshop, paper=paper)


def _row(one: OutOfDate, museum: Museum) -> SwapRow:
    made = one.printed.made
    kind = find_kind(made.kind)
    return SwapRow(
        container_number=made.container_number,
        location=one.reprint.location if museum.show_location else (),
        card=kind.name + (f", side {made.side}" if kind == END_LABEL else ""),
        where=kind.where,
        old=name_version(made.revision, check_letters(made.fingerprint)),
        new=TAKE_OFF
        if one.today is None
        else name_version(one.today.head.revision, one.today.head.check_letters),
        urgency=one.reprint.urgency,
        reasons=tuple(dict.fromkeys(change.outside_words for change in one.reprint.changes)),
    )
