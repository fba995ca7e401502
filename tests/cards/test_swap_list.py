"""Tests for the order of the swap list."""

from __future__ import annotations

from dataclasses import replace

from service.cards.changes.change import Urgency
from service.cards.swap_list import SwapRow, name_version, order_rows


def row(number: str, *location: str, card: str = "Lid card", urgency: int = 2) -> SwapRow:
    """Give a row."""
    reasons = ("X.112 added",)
    return SwapRow(
        number, location, card, "on the lid", "r1 BCDF", "r2 GHJK", Urgency(urgency), reasons
    )


def test_rows_come_as_one_walks() -> None:
    """Bay 9 before bay 10 whatever is urgent, the most urgent card of a container first."""
    lost, far = row("B-1", urgency=1), row("B-2", "Store 2", "Bay 10", urgency=1)
    near, label = row("B-10", "Store 2", "Bay 9"), row("B-10", "Store 2", "Bay 9", urgency=1)
    assert order_rows([lost, far, near, label]) == (label, near, far, lost)


def test_containers_of_one_shelf_come_in_natural_order() -> None:
    """Box 9 before box 10, and of one box the cards that are equally urgent by their names."""
    ten, list_, lid = row("B-10", "Bay 1"), row("B-9", "Bay 1", card="Contents list"), "Lid card"
    nine = row("B-9", "Bay 1", card=lid)
    assert order_rows([ten, nine, list_]) == (list_, nine, ten)


def test_tags_of_what_is_packed_nowhere_come_last() -> None:
    """Even after a box of which nobody knows where it stands."""
    lost = row("B-1")
    first, second = (
        replace(row("", card="Object tag", urgency=1), object_number=number)
        for number in ("PMM.9", "PMM.10")
    )
    assert order_rows([second, first, lost]) == (lost, first, second)


def test_versions_are_written_as_cards_print_them() -> None:
    """Revision and letters, as one finds them on the card."""
    assert name_version(3, "KMTF") == "r3 KMTF"
    assert name_version(None, "KMTF") == "KMTF"
