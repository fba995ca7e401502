from __future__ import annotations

from service.cards.reprints import Reprint
from service.keeping.reprints import OutOfDate
from service.keeping.stops import group_stops
from service.store.printed.card import MadeCard, PrintedCard
from service.store.tables import CardState
from tests.store.made import STAMP

PRINTED = PrintedCard(1, 1, MadeCard("", "lid-card", 1, "", ""), CardState.ATTACHED, "", STAMP.at)


def _wrong(container: str, number: str = "") -> OutOfDate:
    return OutOfDate(Reprint(container, (), "lid-card", (), 1, number), PRINTED, None)


def test_what_is_met_together_stands_together() -> None:
    """A tag in a box is met with the cards of the box; one packed nowhere is met alone."""
    lid, tag, loose, other = (
        *(_wrong("B-1"), _wrong("B-1", "X.1")),
        *(_wrong("", "X.2"), _wrong("B-0")),
    )
    found = group_stops([lid, loose, other, tag])
    assert list(found.items()) == [
        (("B-1", ""), [lid, tag]),
        (("", "X.2"), [loose]),
        (("B-0", ""), [other]),
    ]
