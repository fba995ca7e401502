from __future__ import annotations

from datetime import date

from service.keeping.rounds.neighbours import Neighbours
from service.keeping.rounds.note import Proposal
from service.store.kept.checks import IN_ORDER, Check
from service.store.lists.walk import Stand
from service.web.store.packings.check_shapes import show_check
from tests.web.store.opened import STAMP


def test_a_proposal_names_every_neighbour() -> None:
    """Each part comes to its own list."""
    one, two, three = (Stand(f"B-{n}", "", "Bay 1", "", f"B-{n}", is_packed=True) for n in range(3))
    proposal = Proposal("B-9", Neighbours((one,), (two,), (three,), is_located=True))
    check = Check("B-9", date(2026, 11, 25), "", STAMP, IN_ORDER)
    shown = show_check(check, proposal).proposal
    assert shown is not None
    assert [part[0].container_number for part in (shown.together, shown.beside, shown.next)] == [
        "B-0",
        "B-1",
        "B-2",
    ]
