from __future__ import annotations

from service.keeping.printing.attach import Attached
from service.store.printed.card import MadeCard, PrintedCard
from service.store.tables import CardState
from service.web.views.attach.done import tell_done
from tests.web.store.opened import MOMENT


def test_nothing_done_is_told_without_undo() -> None:
    """Where every card is on already there is nothing to take back."""
    assert tell_done("/attach", []).headers["location"] == "/attach"


def test_a_long_run_fits_into_a_notice() -> None:
    """A thousand cards in a row are one span, and the notice with its undo stays a cookie."""
    done = [
        Attached(_card(number, CardState.ATTACHED), _card(number + 5000, CardState.WITHDRAWN))
        for number in range(1, 1001)
    ]
    assert len(tell_done("/attach", done).headers["set-cookie"]) < 1500


def _card(number: int, state: CardState) -> PrintedCard:
    made = MadeCard("B-1", "lid-card", 3, "0" * 64, "")
    return PrintedCard(number, 1, made, state, "", MOMENT)
