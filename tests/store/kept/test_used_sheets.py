from __future__ import annotations

from sqlalchemy import Connection

from service.sheets.printers.used_sheet import UsedSheet
from service.store.kept.used_sheets import keep_used_sheet, load_used_sheets
from tests.store.made import STAMP

BEGUN = UsedSheet("A4 2x4 99.1x67.7", frozenset({1, 2, 10}))


def test_one_sheet_a_stock_is_kept(connection: Connection) -> None:
    """A later run takes the place of the one before; nothing left means nothing kept."""
    keep_used_sheet(connection, BEGUN.stock, BEGUN, stamp=STAMP)
    other = UsedSheet("A4 3x7 63.5x38.1", frozenset({4}))
    keep_used_sheet(connection, other.stock, other, stamp=STAMP)
    assert load_used_sheets(connection) == (BEGUN, other)
    keep_used_sheet(connection, BEGUN.stock, None, stamp=STAMP)
    assert load_used_sheets(connection) == (other,)
