from __future__ import annotations

from datetime import date

from service.handling.checks.kinds import CheckKind, CheckResult
from service.keeping.rounds.follow_ups import list_follow_ups
from service.store.handles import Connection
from service.store.kept.checks import IN_ORDER, Check, Looked, save_check
from tests.keeping.made import BOX, COVER
from tests.store.made import STAMP

FIRST, SECOND = date(2026, 11, 2), date(2026, 11, 3)


def test_what_was_found_stays_until_it_is_seen_in_order(connection: Connection) -> None:
    """Each with its own note, else with that of the check; a later look in order ends it."""
    moth = Looked(CheckKind.PESTS, CheckResult.FOUND, "larvae")
    yellow = Looked(CheckKind.TISSUE, CheckResult.FOUND)
    save_check(connection, Check(BOX, FIRST, "top layer", STAMP, (moth, yellow)))
    save_check(connection, Check(COVER, FIRST, "", STAMP, IN_ORDER))
    assert [
        (one.stand.container_number, one.kind, one.found_on, one.note)
        for one in list_follow_ups(connection)
    ] == [(BOX, CheckKind.PESTS, FIRST, "larvae"), (BOX, CheckKind.TISSUE, FIRST, "top layer")]
    left = Looked(CheckKind.TISSUE, CheckResult.NOT_DONE)
    gone = Looked(CheckKind.PESTS, CheckResult.OK)
    save_check(connection, Check(BOX, SECOND, "", STAMP, (left, gone)))
    assert [one.kind for one in list_follow_ups(connection)] == [CheckKind.TISSUE]
