from __future__ import annotations

import pytest

from service.errors import DoesNotFitError
from service.geometry import Rect
from service.pages.page import ShapeBlock
from service.pages.setting.rows import Row, share_rows, stack_rows

BLOCK = ShapeBlock("rule", Rect(0, 0, 1, 1))
HEADING, OTHER = Row((BLOCK,), 2.0), Row((BLOCK, BLOCK), 2.0)


def test_there_is_always_a_face() -> None:
    """Nothing to share stands on one face, and needs no room."""
    assert share_rows([], 0.0) == [[]]


def test_rows_fill_face_after_face() -> None:
    """None is lost, and their order stays."""
    rows = [Row((), height) for height in (3.0, 4.0, 3.0, 5.0, 5.0)]
    assert share_rows(rows, 10.0) == [rows[:3], rows[3:]]


def test_a_heading_stands_above_its_rows_on_every_face() -> None:
    """It is repeated where they go on, and never stands last."""
    rows = [Row((), 3.0, HEADING), Row((), 3.0, HEADING), Row((), 3.0, OTHER)]
    assert share_rows(rows, 8.0) == [[HEADING, rows[0], rows[1]], [OTHER, rows[2]]]
    assert share_rows(rows[:2], 6.0) == [[HEADING, rows[0]], [HEADING, rows[1]]]


def test_a_row_higher_than_a_face_is_refused() -> None:
    """With its heading it has to fit."""
    with pytest.raises(DoesNotFitError):
        share_rows([Row((), 4.0, HEADING)], 5.0)


def test_rows_stand_one_below_the_other() -> None:
    """Each begins where the one before ends."""
    placed = stack_rows([Row((BLOCK,), 3.0), Row((BLOCK,), 3.0)], 5.0, 7.0)
    assert [(one.rect.x_mm, one.rect.y_mm) for one in placed] == [(5.0, 7.0), (5.0, 10.0)]
