"""Notes a look at a container and says what its findings ask for."""

from __future__ import annotations

from dataclasses import dataclass, replace

from service.handling.checks.kinds import CheckKind
from service.handling.checks.rules import ISOLATE_PESTS, LOOK_BESIDE_PESTS
from service.handling.rule import Rule
from service.keeping.rounds.neighbours import Neighbours, neighbours
from service.store.handles import Connection
from service.store.kept.checks import Check, save_check


@dataclass(frozen=True, slots=True)
class Proposal:
    """What pests ask for: an isolation label for the container, and a look at its neighbours."""

    container_number: str
    neighbours: Neighbours
    rules: tuple[Rule, ...] = (ISOLATE_PESTS, LOOK_BESIDE_PESTS)


def note_check(connection: Connection, check: Check) -> tuple[Check, Proposal | None]:
    """Note a check and give it with its key; where pests were found, say what to do next.

    Raises:
        NotFoundError: When there is no such container.
    """
    noted = replace(check, key=save_check(connection, check))
    if not check.found(CheckKind.PESTS):
        return noted, None
    return noted, propose(connection, check.container_number)


def propose(connection: Connection, container_number: str) -> Proposal:
    """Say what is to be done about a container in which pests were found.

    Raises:
        NotFoundError: When there is no such container.
    """
    return Proposal(container_number, neighbours(connection, container_number))
