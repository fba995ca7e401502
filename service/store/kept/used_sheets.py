"""The sheet of each stock that was begun, so that the next run goes on with it."""

from __future__ import annotations

import json

from sqlalchemy import Connection, delete, insert, select

from service.sheets.printers.used_sheet import UsedSheet
from service.store.canonical import dump_json
from service.store.history import Stamp, find_actor
from service.store.tables import used_sheets


def load_used_sheets(connection: Connection) -> tuple[UsedSheet, ...]:
    """Load the sheets begun, in the order of the names of their stocks."""
    query = select(used_sheets.c.stock, used_sheets.c.positions).order_by(used_sheets.c.stock)
    return tuple(
        UsedSheet(stock, frozenset(json.loads(positions)))
        for stock, positions in connection.execute(query)
    )


def keep_used_sheet(
    connection: Connection, stock: str, sheet: UsedSheet | None, *, stamp: Stamp
) -> None:
    """Keep the sheet begun of a stock in place of the one before; None where nothing is left."""
    connection.execute(delete(used_sheets).where(used_sheets.c.stock == stock))
    if sheet is not None:
        connection.execute(
            insert(used_sheets).values(
                stock=stock,
                positions=dump_json(sorted(sheet.positions)),
                actor_id=find_actor(connection, stamp.actor),
                at=stamp.at,
            )
        )
