"""The check sheet of a store: what is due as paper to walk with."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from pathlib import Path

from service.cards.papers.check_sheet import CheckSheet, SheetRow, Visit, compose_sheet_row
from service.cards.second.papers import speak_paper
from service.cards.words import join_words, write_date, write_questions
from service.handling.checks.kinds import CheckKind
from service.keeping.desk import Desk
from service.keeping.rounds.due import ALL_KINDS, DueContainer, list_due
from service.keeping.rounds.loading import Loaded, find_files, load_packings
from service.languages.catalogue import load_phrasebook
from service.pipeline.documents.rounds import print_check_sheet
from service.printed import to_print
from service.records.naturally import natural_key
from service.store.history import Stamp
from service.store.kept.outs import Out, load_outs
from service.store.open import reading


@dataclass(frozen=True, slots=True)
class SheetWish:
    """Which checks a sheet is to hold: due today or within so many days, which kinds, and where."""

    within_days: int = 0
    kinds: Collection[CheckKind] = ALL_KINDS
    paper: str = "A4"
    place: str = ""


def print_sheet(desk: Desk, wish: SheetWish, *, stamp: Stamp) -> Path:
    """Print the check sheet as the records are now, and give the path of the file.

    Raises:
        NothingToDoError: When nothing is due.
        ProofFailedError: When a page does not read back as it should.
    """
    today = stamp.at.date()
    until = today + timedelta(days=wish.within_days)
    with reading(desk.engine) as connection:
        due = list_due(connection, until, kinds=wish.kinds, place=wish.place)
        loaded = load_packings(connection, [one.stand.container_number for one in due])
        rows = _compose(due, loaded, load_outs(connection), today)
    museum = loaded.museum
    sheet = CheckSheet(
        museum=museum.name,
        made=join_words((write_date(today), stamp.actor), between=", "),
        until=to_print("due by {until}", until=write_date(until)) if wish.within_days else "",
        questions=write_questions(museum.questions, museum.questions),
        rows=rows,
        hides_locations=not museum.show_location,
    )
    shown = (one.photo for row in rows for one in row.photos)
    files = find_files(desk, loaded.photos, shown)
    spoken = speak_paper(sheet, load_phrasebook(museum.second_language))
    return print_check_sheet(spoken, files, desk.workshop, paper=wish.paper)


def _compose(
    due: Sequence[DueContainer], loaded: Loaded, outs: Iterable[Out], today: date
) -> tuple[SheetRow, ...]:
    """Word the rows in walking order; where places are hidden the walk would tell of them."""
    away: dict[str, list[str]] = {}
    for out in outs:
        away.setdefault(out.slip.container_number, []).append(_word_out(out))
    rows = tuple(
        compose_sheet_row(
            Visit(
                loaded.packings[one.stand.container_number],
                one.checks,
                _word_place(one),
                tuple(away.get(one.stand.container_number, ())),
            ),
            loaded.museum,
            today=today,
        )
        for one in due
    )
    if loaded.museum.show_location:
        return rows
    return tuple(sorted(rows, key=lambda row: natural_key(row.container_number)))


def _word_place(one: DueContainer) -> str:
    stand = one.stand
    inside = to_print("in {inside}", inside=stand.inside) if stand.inside else ""
    return join_words((inside, stand.location.replace(" / ", ", ")), between=", ")


def _word_out(out: Out) -> str:
    slip = out.slip
    named = " ".join((slip.object_number, *slip.parts))
    due = (
        to_print(", due back {due_back}", due_back=write_date(slip.due_back))
        if slip.due_back
        else ""
    )
    return to_print("Out: {named} (slip {out_id}){due}", named=named, out_id=out.out_id, due=due)
