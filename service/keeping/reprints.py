"""The reprint list of a store: which attached cards no longer tell the truth, and why."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from service.cards.card import Card
from service.cards.changes.change import Change, ChangeKind, Urgency
from service.cards.changes.list_changes import list_changes
from service.cards.kept_text import card_from_text
from service.cards.kinds import find_kind
from service.cards.reprints import Reprint, order_reprints
from service.errors import NotFoundError, ServiceError
from service.keeping.refresh import refresh_today
from service.keeping.tags.today import TodayTags, compose_today_tags
from service.keeping.tags.whereabouts import Whereabouts, locate_containers, locate_objects
from service.keeping.today import Today, compose_today
from service.pages.ruler import Ruler
from service.pipeline.options import CardKey
from service.pipeline.ready import Progress, tell_nobody
from service.sentence import Sentence
from service.store.handles import Connection, Engine
from service.store.load_records import load_container
from service.store.open import reading
from service.store.packing.load import load_packing
from service.store.printed.card import MadeCard, PrintedCard
from service.store.printed.runs import load_attached, load_attached_tags, load_card
from service.store.today.beside import load_beside
from service.store.today.note import Unattached, load_differing, load_unattached
from service.store.today.tag_note import load_differing_tags


@dataclass(frozen=True, slots=True)
class OutOfDate:
    """An attached card that is wrong: why, as it was printed, and as it would be printed now.

    `today` is None where the container gets no such card any more, or it cannot be worded.
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
        failed_tags: Why the tags of some objects cannot be worded, by object.
    """

    out_of_date: tuple[OutOfDate, ...]
    unattached: tuple[Unattached, ...]
    failed: tuple[tuple[str, ServiceError], ...] = ()
    failed_tags: tuple[tuple[str, ServiceError], ...] = ()


_Beside = tuple[str, int]


@dataclass(frozen=True, slots=True)
class Fault:
    """Why a card is wrong, and today's card."""

    changes: tuple[Change, ...]
    today: Card | None


_NOTHING: Mapping[int, Fault | None] = {}


class Remembered:
    """Reasons found earlier, so that a list is not worked out anew for one more change.

    Each is kept for the pair of a printed card and what today's card beside it says.
    """

    def __init__(self) -> None:
        """Begin with nothing."""
        self._found: dict[int, tuple[_Beside, Fault]] = {}

    def find(self, card: PrintedCard, beside: Mapping[int, _Beside]) -> Fault | None:
        """Give what was found of a card; None where today's card is another, or unknown."""
        kept = self._found.get(card.card_id)
        return kept[1] if kept is not None and kept[0] == beside.get(card.card_id) else None

    def keep(self, wrong: Iterable[OutOfDate], beside: Mapping[int, _Beside]) -> None:
        """Keep what was found in place of all before; what cannot be worded is not kept."""
        self._found = {
            one.printed.card_id: (
                beside[one.printed.card_id],
                Fault(one.reprint.changes, one.today),
            )
            for one in wrong
            if one.printed.card_id in beside
        }


def list_reprints(
    engine: Engine,
    ruler: Ruler,
    *,
    on_progress: Progress = tell_nobody,
    remembered: Remembered | None = None,
) -> ReprintList:
    """Compare what is attached with what the records say today."""
    refresh_today(engine, ruler, on_progress=on_progress)
    kept = remembered or Remembered()
    with reading(engine) as connection:
        differing = (*load_differing(connection), *load_differing_tags(connection))
        unattached = load_unattached(connection)
        beside = load_beside(connection, [card.card_id for card in differing])
        known = {card.card_id: kept.find(card, beside) for card in differing}
        found = _compare(connection, ruler, differing, unattached, known)
    kept.keep(found.out_of_date, beside)
    return found


def list_reprints_of(connection: Connection, ruler: Ruler, container_number: str) -> ReprintList:
    """Compare the cards of one container with the records as they are, whatever was noted.

    With them come the tags of the objects that lie in it.

    Raises:
        NotFoundError: When there is no such container.
    """
    load_container(connection, container_number)
    places = load_packing(connection, container_number).places
    tagged = sorted({place.object_number for place in places})
    attached = (
        *load_attached(connection, [container_number]),
        *load_attached_tags(connection, tagged),
    )
    unattached = load_unattached(connection, [container_number])
    return _compare(connection, ruler, attached, unattached)


def list_reprints_of_object(
    connection: Connection, ruler: Ruler, object_number: str
) -> ReprintList:
    """Compare the tag of one object with its record as it is, whatever was noted."""
    return _compare(connection, ruler, load_attached_tags(connection, [object_number]), ())


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
    known: Mapping[int, Fault | None] = _NOTHING,
) -> ReprintList:
    tags = [card for card in attached if card.made.object_number]
    cards = [card for card in attached if not card.made.object_number]
    today = compose_today(connection, ruler, _numbers(cards, known))
    today_tags = compose_today_tags(connection, ruler, _numbers(tags, known))
    wrong = [
        *_find_faults(cards, today, locate_containers(connection, _numbers(cards)), known),
        *_find_faults(tags, today_tags, locate_objects(connection, _numbers(tags)), known),
    ]
    by_reprint = {id(one.reprint): one for one in wrong}
    ordered = order_reprints(one.reprint for one in wrong)
    return ReprintList(
        tuple(by_reprint[id(reprint)] for reprint in ordered),
        unattached,
        tuple(today.failed.items()),
        tuple(today_tags.failed.items()),
    )


def _find_faults(
    attached: Iterable[PrintedCard],
    today: Today | TodayTags,
    whereabouts: Mapping[str, Whereabouts],
    known: Mapping[int, Fault | None],
) -> Iterator[OutOfDate]:
    for card in attached:
        fault = known.get(card.card_id) or find_fault(card.made, today)
        if fault.changes:
            where = whereabouts.get(card.made.number, Whereabouts())
            yield OutOfDate(_reprint(card.made, fault, where), card, fault.today)


def find_fault(made: MadeCard, today: Today | TodayTags) -> Fault:
    """Say what is wrong with a card; one that still holds has no changes."""
    if made.number in today.failed:
        return Fault((_unworded(today.failed[made.number]),), None)
    wanted = today.cards.get(made.key)
    if wanted is None:
        return Fault((_unwanted(made.kind),), None)
    return Fault(list_changes(card_from_text(made.content), wanted), wanted)


def _reprint(made: MadeCard, fault: Fault, where: Whereabouts) -> Reprint:
    return Reprint(
        where.container_number,
        where.location,
        made.kind,
        fault.changes,
        made.side,
        made.object_number,
    )


def _numbers(
    cards: Iterable[PrintedCard], known: Mapping[int, Fault | None] = _NOTHING
) -> list[str]:
    """Name the owners of those cards of which nothing is known yet, each once."""
    unknown = (card for card in cards if not known.get(card.card_id))
    return list(dict.fromkeys(card.made.number for card in unknown))


def _unwanted(kind: str) -> Change:
    words = Sentence(
        "the container gets no {lower} any more: take it off", lower=find_kind(kind).name.lower()
    )
    return Change(ChangeKind.CARD, Urgency.CONTENTS, words)


def _unworded(error: ServiceError) -> Change:
    words = Sentence("the card cannot be worded as the records are now: {error}", error=error)
    return Change(ChangeKind.CARD, Urgency.CONTENTS, words)
