"""Which containers lie in which, by their records."""

from __future__ import annotations

from collections.abc import Iterable

from sqlalchemy import Connection, select

from service.store.base.bulk import in_portions
from service.store.tables import containers


def with_outer(connection: Connection, numbers: Iterable[str]) -> set[str]:
    """Add the containers in which these lie, and those in which they lie, and so on.

    Boxes that are recorded as lying in one another come to an end as well.
    """
    found = set(numbers)
    inner = sorted(found)
    while inner:
        outer: set[str] = set()
        for some in in_portions(inner):
            query = select(containers.c.inside).where(containers.c.container_number.in_(some))
            outer.update(connection.execute(query).scalars())
        inner = sorted(outer - found - {""})
        found.update(inner)
    return found
