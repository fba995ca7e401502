"""The reprint list of a store: which attached cards no longer tell the truth, and why."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from service.cards.card import Card
from service.cards.changes.change import Change, ChangeKind, Urgency
from service.cards.changes.list_changes import list_changes
from service.cards.kept_text import card_from_text
from service.cards.kinds import find_kind
from service.cards.reprints import Reprint, order_reprints
from service.errors import NotFoundError, ServiceError
from service.keeping.refresh import refresh_today
from service.keeping.today import Today, compose_today
from service.pages.ruler import Ruler
from service.pipeline.options import CardKey
from service.pipeline.ready import Progress, tell_nobody
from service.records.record import ContainerRecord
from service.store.handles import Connection, Engine
from service.store.load_records import load_container, load_containers
from service.store.open import reading
from service.store.printed.card import PrintedCard
from service.store.printed.runs import load_attached, load_card
from service.store.today.note import Unattached, load_differing, load_unattached


@dataclass(frozen=True, slots=True)
class OutOfDate:
    """An attached card that is wrong: why, as it was printed, and as it would be printed now.

    `today` is None where the container gets no such card any more.
    """

    reprint: Reprint
    printed: PrintedCard
    today: Card | None


@dataclass(frozen=True, slots=True)
class ReprintList:
    """All that is to be done about cards.

    Attributes:
        out_of_date: Attached cards to replace, the most urgent first, then in walking order.
        unattached: Cards that containers lack, made already or not, in natural order.
        failed: Why the cards of some containers cannot be worded, by container.
    """

    out_of_date: tuple[OutOfDate, ...]
    unattached: tuple[Unattached, ...]
    failed: tuple[tuple[str, ServiceError], ...] = ()


def list_reprints(
    engine: Engine, ruler: Ruler, *, on_progress: Progress = tell_nobody
) -> ReprintList:
    """Compare what is attached with what the records say today."""
    refresh_today(engine, ruler, on_progress=on_progress)
    with reading(engine) as connection:
        differing = load_differing(connection)
        unattached = load_unattached(connection)
        return _compare(connection, ruler, differing, unattached)


def list_reprints_of(connection: Connection, ruler: Ruler, container_number: str) -> ReprintList:
    """Compare the cards of one container with the records as they are, whatever was noted.

    Raises:
        NotFoundError: When there is no such container.
    """
    load_container(connection, container_number)
    attached = load_attached(connection, [container_number])
    unattached = load_unattached(connection, [container_number])
    return _compare(connection, ruler, attached, unattached)


def name_reprints(engine: Engine, ruler: Ruler) -> frozenset[CardKey]:
    """Name the cards to print again; one that its container gets no more only comes off.

    Raises:
        NotFoundError: When there are none.
    """
    found = list_reprints(engine, ruler).out_of_date
    keys = frozenset(one.printed.made.key for one in found if one.today is not None)
    if not keys:
        name = "reprint list"
        raise NotFoundError(name, what="card on the")
    return keys


def name_cards(connection: Connection, card_ids: Iterable[int]) -> frozenset[CardKey]:
    """Name the cards of which these were printed, by their numbers: for those lost or torn.

    Raises:
        NotFoundError: When one of them was never printed.
    """
    return frozenset(load_card(connection, card_id).made.key for card_id in card_ids)


def _compare(
    connection: Connection,
    ruler: Ruler,
    attached: Sequence[PrintedCard],
    unattached: tuple[Unattached, ...],
) -> ReprintList:
    numbers = list(dict.fromkeys(card.made.container_number for card in attached))
    today = compose_today(connection, ruler, numbers)
    records = {one.container_number: one for one in load_containers(connection, numbers)}
    found = [
        wrong
        for card in attached
        if (wrong := _find_fault(card, today, records[card.made.container_number]))
    ]
    by_reprint = {id(one.reprint): one for one in found}
    ordered = order_reprints(one.reprint for one in found)
    return ReprintList(
        tuple(by_reprint[id(reprint)] for reprint in ordered),
        unattached,
        tuple(today.failed.items()),
    )


def _find_fault(printed: PrintedCard, today: Today, record: ContainerRecord) -> OutOfDate | None:
    """Say what is wrong with a card, None where it still holds."""
    made = printed.made
    if made.container_number in today.failed:
        changes: tuple[Change, ...] = (_unworded(today.failed[made.container_number]),)
        wanted = None
    else:
        wanted = today.cards.get(made.key)
        said = card_from_text(made.content)
        changes = (_unwanted(made.kind),) if wanted is None else list_changes(said, wanted)
    if not changes:
        return None
    reprint = Reprint(made.container_number, record.location, made.kind, changes, made.side)
    return OutOfDate(reprint, printed, wanted)


def _unwanted(kind: str) -> Change:
    words = f"the container gets no {find_kind(kind).name.lower()} any more: take it off"
    return Change(ChangeKind.CARD, Urgency.CONTENTS, words)


def _unworded(error: ServiceError) -> Change:
    words = f"the card cannot be worded as the records are now: {error}"
    return Change(ChangeKind.CARD, Urgency.CONTENTS, words)
