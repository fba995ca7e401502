"""What was found on the round and not yet seen in order again."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from service.handling.checks.due import DoneCheck
from service.handling.checks.kinds import CheckKind, CheckResult
from service.store.handles import Connection
from service.store.kept.checks import load_checks, load_done
from service.store.lists.walk import Stand, load_walk


@dataclass(frozen=True, slots=True)
class FollowUp:
    """Something found at the last look of its kind: where, what, when, and what was noted."""

    stand: Stand
    kind: CheckKind
    found_on: date
    note: str


def list_follow_ups(connection: Connection) -> tuple[FollowUp, ...]:
    """List what the last look of a kind found and no later one saw in order, as one walks."""
    done = load_done(connection)
    return tuple(
        FollowUp(
            stand,
            one.kind,
            one.checked_on,
            _find_note(connection, stand.container_number, one),
        )
        for stand in load_walk(connection)
        for one in done.get(stand.container_number, ())
        if one.result is CheckResult.FOUND
    )


def _find_note(connection: Connection, container_number: str, done: DoneCheck) -> str:
    """Give what was noted with a result, else what was noted with the whole check."""
    for check in load_checks(connection, container_number):
        for one in check.results:
            if (check.checked_on, one.kind, one.result) == (
                done.checked_on,
                done.kind,
                done.result,
            ):
                return one.note or check.note
    return ""
