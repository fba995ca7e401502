from __future__ import annotations

from dataclasses import replace

import pytest

from service.cards.papers.check_sheet import SheetRow
from service.geometry import Rect
from service.handling.checks.kinds import LOOKED_AT, CheckKind
from service.pages.page import Page, ShapeBlock
from service.pages.rounds.sheet_row import Columns, set_rows
from service.pages.rounds.warnings import Item, Voice
from service.records.record import ObjectRecord
from service.render.ruler import PangoRuler
from service.render.task import FONTS_CONF
from tests.cards.papers.made import JAR, LEAD, row_of
from tests.pages.checks import collisions, pictures, said, texts
from tests.pages.rounds.test_slip import HEAVY

RULER = PangoRuler(FONTS_CONF)
INSIDE = Rect(12.0, 12.0, 186.0, 273.0)
COLUMNS = Columns(INSIDE, LOOKED_AT)


def rows_of(row: SheetRow, columns: Columns = COLUMNS, room_mm: float = 200.0) -> list[Item]:
    """Set a row."""
    return list(set_rows(Voice(RULER), row, columns, room_mm=room_mm))


def page_of(items: list[Item]) -> list[Page]:
    """Give rows as pages, to be looked at."""
    size = INSIDE.size
    return [Page("check-sheet", "", "", 1, 1, size, item.blocks) for item in items]


def shapes(item: Item, purpose: str) -> list[ShapeBlock]:
    """Give the shapes of a purpose."""
    return [b for b in item.blocks if isinstance(b, ShapeBlock) and b.purpose == purpose]


def test_each_kind_has_two_boxes() -> None:
    """In order and found; a kind that is not due has none."""
    (row,) = rows_of(row_of(LEAD))
    assert len(shapes(row, "tick-box")) == 2 * len(LOOKED_AT)
    some = replace(row_of(LEAD), asked=(CheckKind.PESTS, CheckKind.LABELS))
    (row,) = rows_of(some)
    xs = sorted({block.rect.x_mm for block in shapes(row, "tick-box")})
    assert xs == [COLUMNS.tick_x_mm(CheckKind.PESTS), COLUMNS.tick_x_mm(CheckKind.LABELS)]
    assert len(shapes(row, "line")) == 2


def test_overdue_is_marked_without_colour() -> None:
    """A black bar; none where the day is still to come."""
    (row,) = rows_of(row_of(LEAD))
    assert len(shapes(row, "overdue-bar")) == 1
    (row,) = rows_of(replace(row_of(LEAD), is_overdue=False))
    assert shapes(row, "overdue-bar") == []


def test_photos_stand_where_there_is_room() -> None:
    """Fewer beside more boxes; none where there is none."""
    five = Columns(INSIDE, tuple(CheckKind))
    many = replace(row_of(LEAD), photos=row_of(LEAD).photos * 4)
    assert len(pictures(page_of(rows_of(many)))) == 3
    assert len(pictures(page_of(rows_of(many, five)))) == 2
    assert pictures(page_of(rows_of(row_of(JAR)))) == []


@pytest.mark.parametrize("record", [LEAD, HEAVY], ids=["one hazard", "eight"])
def test_every_hazard_is_told(record: ObjectRecord) -> None:
    """In as many rows as the room asks for, which name the container; boxes stand in the first."""
    row = row_of(record)
    rows = rows_of(row, room_mm=45.0)
    pages = page_of(rows)
    assert said(pages, "hazard") == [warn.heading for warn in row.handling.hazards]
    assert said(pages, "container-number") == ["B-042"] * len(rows)
    assert said(pages, "continued") == ["continued"] * (len(rows) - 1)
    assert [bool(shapes(one, "tick-box")) for one in rows] == [True] + [False] * (len(rows) - 1)
    assert (len(rows) > 1) is (record is HEAVY)
    assert all(one.height_mm <= 45.0 for one in rows)


def test_without_photos_warnings_stand_beside_the_boxes() -> None:
    """So that no row is higher for a gap; more than fits there goes below."""
    (row,) = page_of(rows_of(row_of(JAR)))
    (weight,) = texts([row], "weight")
    boxes = [block.rect for block in row.blocks if block.purpose == "tick-box"]
    assert weight.rect.y_mm < min(box.bottom_mm for box in boxes)
    (row,) = page_of(rows_of(row_of(replace(HEAVY, photos=()))))
    assert texts([row], "hazard")[0].rect.y_mm > max(box.bottom_mm for box in boxes)
    assert collisions(row, RULER) == []


def test_what_is_away_is_named() -> None:
    """A gap has its reason."""
    assert said(page_of(rows_of(row_of(LEAD))), "out") == ["Out: X.1 (slip 4)"]


def test_another_to_ask_is_named() -> None:
    """Where the sheet's own answer does not hold, the row says whom."""
    asked = replace(row_of(LEAD), questions="Radiation adviser 555 0199")
    assert said(page_of(rows_of(asked)), "questions") == ["Ask: Radiation adviser 555 0199"]
