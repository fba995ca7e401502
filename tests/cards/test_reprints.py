"""Tests for the order of the reprint list."""

from __future__ import annotations

from dataclasses import replace

from service.cards.changes.change import Change, ChangeKind, Urgency
from service.cards.reprints import Reprint, order_reprints


def reprint(number: str, urgency: Urgency, *location: str, kind: str = "lid-card") -> Reprint:
    """Give an entry with one reason."""
    return Reprint(number, location, kind, (Change(ChangeKind.CARD, urgency, "changed"),))


def test_the_most_urgent_come_first_then_as_one_walks() -> None:
    """Within one urgency bay 9 comes before bay 10, and what lies nowhere known comes last."""
    lost = reprint("B-1", Urgency.CONTENTS)
    far = reprint("B-2", Urgency.CONTENTS, "Store 2", "Bay 10")
    near = reprint("B-10", Urgency.CONTENTS, "Store 2", "Bay 9")
    first = reprint("B-11", Urgency.HAZARD_OR_LIFT, "Store 9")
    last = reprint("B-3", Urgency.WORDING, "Store 1")
    assert order_reprints([last, lost, far, near, first]) == (first, near, far, lost, last)


def test_the_cards_of_a_container_stay_together() -> None:
    """One walk to a box replaces all of its cards, at the place of the most urgent one."""
    lid = reprint("B-2", Urgency.WORDING, "Bay 1")
    label = reprint("B-2", Urgency.HAZARD_OR_LIFT, "Bay 1", kind="end-label")
    other = reprint("B-1", Urgency.CONTENTS, "Bay 1")
    for given in ([lid, other, label], [label, other, lid]):
        assert order_reprints(given) == (label, lid, other)


def test_containers_of_one_shelf_come_in_natural_order() -> None:
    """Box 9 before box 10, and of one box the sides one after the other."""
    ten, nine = (reprint(number, Urgency.CONTENTS, "Bay 1") for number in ("B-10", "B-9"))
    sides = tuple(replace(nine, kind="end-label", side=side) for side in (1, 2))
    assert order_reprints([ten, nine, *reversed(sides)]) == (*sides, nine, ten)


def test_tags_come_where_their_objects_lie() -> None:
    """With the cards of the box; each object that lies nowhere is a stop of its own, at the end."""
    lid = reprint("B-2", Urgency.HAZARD_OR_LIFT, "Bay 1")
    tag = replace(reprint("B-2", Urgency.WORDING, "Bay 1", kind="object-tag"), object_number="X.1")
    lost = reprint("B-1", Urgency.WORDING)
    loose, urgent = (
        replace(reprint("", urgency, kind="object-tag"), object_number=number)
        for urgency, number in ((Urgency.WORDING, "X.2"), (Urgency.HAZARD_OR_LIFT, "X.3"))
    )
    assert order_reprints([loose, urgent, lost, tag, lid]) == (lid, tag, urgent, lost, loose)


def test_an_entry_is_as_urgent_as_its_most_urgent_reason() -> None:
    """An entry without a reason is the least urgent."""
    reasons = tuple(Change(ChangeKind.CARD, urgency, "x") for urgency in reversed(Urgency))
    assert Reprint("B-1", (), "lid-card", reasons).urgency is Urgency.HAZARD_OR_LIFT
    assert Reprint("B-1", (), "lid-card", ()).urgency is Urgency.WORDING
