"""Tests for pictures of sheets."""

from __future__ import annotations

import io

import pytest
from PIL import Image

from service.cards.kinds import END_LABEL
from service.errors import FileNotStoredError, NotFoundError
from service.keeping.desk import Desk
from service.keeping.previews.pages import draw_sheet, find_planned_file, find_run_file
from service.keeping.previews.plans import plan_run
from service.keeping.printing.prints import print_run
from service.pipeline.options import PrintOptions
from tests.keeping.made import BOX
from tests.store.made import STAMP

pytestmark = pytest.mark.print

LABELS = PrintOptions(kinds=(END_LABEL,), containers=frozenset({BOX}))


def test_plan_and_print_look_alike(desk: Desk) -> None:
    """The picture of a planned sheet is that of the printed one; each has a tag of its own."""
    plan = plan_run(desk, LABELS, today=STAMP.at.date())
    made = print_run(desk, LABELS, stamp=STAMP)
    name = made.files[0].name
    planned = find_planned_file(desk, plan.name, name)
    printed = find_run_file(desk, made.run_id, name)
    pictures = [draw_sheet(desk, file, 1, width_px=600) for file in (planned, printed)]
    assert pictures[0] == pictures[1]
    image = Image.open(io.BytesIO(pictures[0]))
    assert image.width == 600
    assert sum(image.convert("L").histogram()[:64]) > 1_000
    tags = {
        file.tag(page, width_px=px)
        for file in (planned, printed)
        for page in (1, 2)
        for px in (1, 2)
    }
    assert len(tags) == 8


def test_what_is_not_there_is_told(desk: Desk) -> None:
    """No such run, file, plan or page; a file that was lost is told as such."""
    made = print_run(desk, LABELS, stamp=STAMP)
    file = find_run_file(desk, made.run_id, made.files[0].name)
    with pytest.raises(NotFoundError, match="page in this file"):
        draw_sheet(desk, file, 2, width_px=100)
    with pytest.raises(NotFoundError, match="print run"):
        find_run_file(desk, 99, "a.pdf")
    with pytest.raises(NotFoundError, match=r"a\.pdf"):
        find_run_file(desk, made.run_id, "a.pdf")
    with pytest.raises(NotFoundError):
        find_planned_file(desk, "0" * 64, "a.pdf")
    file.path.unlink()
    with pytest.raises(FileNotStoredError):
        find_run_file(desk, made.run_id, made.files[0].name)
