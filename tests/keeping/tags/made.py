"""Tags that the tests begin with."""

from __future__ import annotations

from service.keeping.tags.today import compose_today_tags
from service.pages.ruler import Ruler
from service.store.handles import Connection
from service.store.printed.card import NewRun, PrintedCard, describe_card
from service.store.printed.runs import save_run
from service.store.printed.states import mark_attached
from tests.store.made import STAMP


def print_tags(
    connection: Connection, ruler: Ruler, *object_numbers: str
) -> tuple[PrintedCard, ...]:
    """Print the tags of some objects as the records are now, without ink."""
    tags = compose_today_tags(connection, ruler, object_numbers).cards.values()
    return save_run(connection, NewRun(tuple(map(describe_card, tags))), stamp=STAMP)


def attach_tags(
    connection: Connection, ruler: Ruler, *object_numbers: str
) -> tuple[PrintedCard, ...]:
    """Print the tags of some objects, and tie them on."""
    printed = print_tags(connection, ruler, *object_numbers)
    for card in printed:
        mark_attached(connection, card.card_id, stamp=STAMP)
    return printed
