from __future__ import annotations

from service.handling.checks.kinds import CheckKind, CheckResult
from service.handling.checks.rules import RULES
from service.keeping.rounds.note import note_check, propose
from service.store.handles import Connection
from service.store.kept.checks import IN_ORDER, Check, Looked, load_checks
from tests.keeping.made import BOX, EMPTY
from tests.store.made import MOMENT, STAMP


def test_pests_ask_for_more(connection: Connection) -> None:
    """The container is to be isolated and what stands nearest looked at; each has its rule."""
    found = Check(BOX, MOMENT.date(), "", STAMP, (Looked(CheckKind.PESTS, CheckResult.FOUND),))
    noted, proposal = note_check(connection, found)
    assert proposal is not None
    assert proposal.container_number == BOX
    assert [one.container_number for one in proposal.neighbours.next] == [EMPTY]
    assert set(proposal.rules) <= set(RULES)
    assert load_checks(connection, BOX) == (noted,) == (found,)
    assert load_checks(connection, BOX)[0].key == noted.key > 0
    assert propose(connection, BOX) == proposal


def test_anything_else_is_only_noted(connection: Connection) -> None:
    """Neither a box in order nor yellow tissue spreads."""
    tissue = (Looked(CheckKind.TISSUE, CheckResult.FOUND),)
    for results in (IN_ORDER, tissue):
        _, proposal = note_check(connection, Check(BOX, MOMENT.date(), "", STAMP, results))
        assert proposal is None
