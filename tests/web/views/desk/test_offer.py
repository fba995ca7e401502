from __future__ import annotations

import pytest

from service.cards.changes.change import Change, ChangeKind, Urgency
from service.cards.reprints import Reprint
from service.keeping.reprints import OutOfDate
from service.store.printed.card import MadeCard, PrintedCard
from service.store.tables import CardState
from service.web.views.desk.offer import CARD, offer_wrong, read_lacking
from tests.web.store.opened import MOMENT

PRINTED = PrintedCard(
    7, 1, MadeCard("B-1", "lid-card", 3, "0" * 64, ""), CardState.ATTACHED, "", MOMENT
)


def _wrong(container: str, urgency: Urgency, number: str = "") -> OutOfDate:
    change = Change(ChangeKind.MOVED, urgency, "moved")
    return OutOfDate(
        Reprint(container, ("Store",), "lid-card", (change,), 1, number), PRINTED, None
    )


def test_cards_of_a_container_stand_together_with_the_most_urgent_reason() -> None:
    """A card that only comes off has no tick; a tag that is packed nowhere stands alone."""
    stops = offer_wrong(
        [
            _wrong("B-1", Urgency.WORDING),
            _wrong("B-1", Urgency.HAZARD_OR_LIFT),
            _wrong("", Urgency.WORDING, "X.1"),
        ]
    )
    assert [(stop.container_number, stop.object_number) for stop in stops] == [
        ("B-1", ""),
        ("", "X.1"),
    ]
    assert stops[0].urgency is Urgency.HAZARD_OR_LIFT
    assert stops[0].reasons == ("moved",)
    assert stops[1].reasons == ()
    assert {tick.field for tick in stops[0].ticks} == {""}
    assert stops[0].ticks[0].old.startswith("r3 ")
    assert CARD == "card"


@pytest.mark.parametrize(
    ("value", "read"),
    [
        ("end-label:2:B-1", ("B-1", "end-label", 2)),
        ("lid-card:1:B:1", ("B:1", "lid-card", 1)),
        ("lid-card:x:B-1", None),
        ("lid-card:1:", None),
        ("", None),
    ],
)
def test_a_card_never_printed_is_named_by_kind_side_and_number(
    value: str, read: tuple[str, str, int] | None
) -> None:
    """A number may hold a colon; what is no such name is nothing."""
    assert read_lacking(value) == read
