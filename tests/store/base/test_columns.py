from __future__ import annotations

from datetime import datetime, timedelta, timezone

import pytest
from sqlalchemy import Connection, insert, select, text
from sqlalchemy.exc import StatementError

from service.store.base.columns import UtcTime
from service.store.kept.check_tables import checks
from service.store.tables import actors, containers
from tests.store.made import MOMENT


def _check(connection: Connection, at: datetime) -> None:
    connection.execute(
        insert(checks).values(
            container_id=select(containers.c.id).limit(1).scalar_subquery(),
            actor_id=select(actors.c.id).limit(1).scalar_subquery(),
            checked_on=at.date(),
            note="",
            at=at,
        )
    )


def test_moments_are_kept_in_utc(connection: Connection) -> None:
    """A moment of any zone is kept as UTC text of one length, and comes back as that moment."""
    there = MOMENT.astimezone(timezone(timedelta(hours=-5)))
    _check(connection, there)
    (kept,) = connection.execute(select(checks.c.at)).scalars()
    assert kept == MOMENT
    (written,) = connection.execute(text("SELECT at FROM checks")).scalars()
    assert written == "2026-11-25T09:30:00.000000+00:00"


def test_moments_without_a_zone_are_refused(connection: Connection) -> None:
    """A moment that could be any is refused; none at all stays none."""
    with pytest.raises(StatementError, match="no time zone"):
        _check(connection, MOMENT.replace(tzinfo=None))
    assert UtcTime().process_bind_param(None, connection.dialect) is None
    assert UtcTime().process_result_value(None, connection.dialect) is None
