from __future__ import annotations

from service.cards.changes.change import Change, ChangeKind, Urgency
from service.cards.reprints import Reprint
from service.keeping.reprints import OutOfDate
from service.store.printed.card import MadeCard, PrintedCard
from service.store.tables import CardState
from service.web.views.start.today import group_swaps
from tests.web.store.opened import MOMENT

PRINTED = PrintedCard(1, 1, MadeCard("B-1", "lid-card", 1, "", ""), CardState.ATTACHED, "", MOMENT)


def _wrong(container: str, kind: str, words: str, number: str = "") -> OutOfDate:
    change = Change(ChangeKind.MOVED, Urgency.CONTENTS, words)
    return OutOfDate(Reprint(container, ("Store",), kind, (change,), 1, number), PRINTED, None)


def test_cards_of_a_container_stand_together() -> None:
    """A kind and a reason that several share are told once; a tag packed nowhere stands alone."""
    swaps = group_swaps(
        [
            _wrong("B-1", "lid-card", "moved"),
            _wrong("B-1", "end-label", "moved"),
            _wrong("B-1", "end-label", "moved"),
            _wrong("", "object-tag", "renamed", "X.1"),
        ]
    )
    assert [(one.container_number, one.object_number) for one in swaps] == [
        ("B-1", ""),
        ("", "X.1"),
    ]
    assert swaps[0].cards == ("Lid card", "End label")
    assert swaps[0].reasons == ("moved",)
