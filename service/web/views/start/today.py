"""What needs doing today, gathered from the store."""

from __future__ import annotations

from collections import Counter as Tally
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from service.cards.changes.change import Urgency
from service.cards.kinds import find_kind
from service.keeping.reprints import OutOfDate
from service.keeping.rounds.due import DueContainer, DueWish, list_due_in_short
from service.keeping.stops import group_stops
from service.languages.saying import said
from service.sheets.printers.used_sheet import UsedSheet
from service.store.handles import Connection
from service.store.kept.outs import Out, load_outs
from service.store.kept.tasks import Task, TaskState, list_tasks
from service.store.kept.used_sheets import load_used_sheets
from service.store.lists.pages import list_containers, list_objects
from service.web.store.counter import Counter

_SHOWN = 6
_OPEN = {TaskState.WAITING, TaskState.RUNNING}


@dataclass(frozen=True, slots=True)
class Swap:
    """A container with cards that are wrong: how many, how soon, and the first reasons."""

    container_number: str
    object_number: str
    location: str
    cards: tuple[str, ...]
    urgency: Urgency
    reasons: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ToPrint:
    """Cards that containers lack: how many of a kind were never printed, how many only wait."""

    kind: str
    never_printed: int
    made: int


@dataclass(frozen=True, slots=True)
class Today:
    """All that the first page tells.

    `swaps`, `due` and `outs` hold the first few; the counts beside them are of all.
    """

    is_empty: bool
    swaps: tuple[Swap, ...]
    swap_count: int
    to_print: tuple[ToPrint, ...]
    lacking_containers: int
    failed_count: int
    due: tuple[DueContainer, ...]
    due_count: int
    overdue_count: int
    outs: tuple[Out, ...]
    out_count: int
    tasks: tuple[Task, ...]
    used_sheets: tuple[UsedSheet, ...]


def gather_today(counter: Counter, day: date) -> Today:
    """Gather what is to be done on a day."""
    reprints = counter.list_reprints()
    swaps = group_swaps(reprints.out_of_date)
    with counter.reading() as connection:
        due = list_due_in_short(connection, DueWish(day, day), most=_SHOWN)
        outs = load_outs(connection)
        tasks = [task for task in list_tasks(connection, limit=20) if task.state in _OPEN]
        used = load_used_sheets(connection)
        is_empty = holds_nothing(connection)
    lacking = Tally((one.kind, one.is_made) for one in reprints.unattached)
    kinds = dict.fromkeys(one.kind for one in reprints.unattached)
    return Today(
        is_empty=is_empty,
        swaps=swaps[:_SHOWN],
        swap_count=len(swaps),
        to_print=tuple(
            ToPrint(find_kind(kind).name, lacking[kind, False], lacking[kind, True])
            for kind in kinds
        ),
        lacking_containers=len({one.container_number for one in reprints.unattached}),
        failed_count=len(reprints.failed) + len(reprints.failed_tags),
        due=due.first,
        due_count=due.count,
        overdue_count=due.overdue_count,
        outs=outs[:_SHOWN],
        out_count=len(outs),
        tasks=tuple(tasks),
        used_sheets=used,
    )


def holds_nothing(connection: Connection) -> bool:
    """Tell whether there is neither an object nor a container."""
    pages = list_containers(connection, limit=1), list_objects(connection, limit=1)
    return not any(page.records for page in pages)


def group_swaps(wrong: Sequence[OutOfDate]) -> tuple[Swap, ...]:
    """Put the cards of a container together, in the order of the list; a reason is told once."""
    return tuple(
        Swap(
            container_number,
            object_number,
            " / ".join(some[0].reprint.location),
            tuple(dict.fromkeys(said(find_kind(one.reprint.kind).name) for one in some)),
            min(one.reprint.urgency for one in some),
            tuple(dict.fromkeys(change.words for one in some for change in one.reprint.changes)),
        )
        for (container_number, object_number), some in group_stops(wrong).items()
    )
