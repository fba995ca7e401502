from __future__ import annotations

from dataclasses import replace

import pytest

from service.geometry import Size
from service.handling.checks.kinds import CheckKind
from service.pages.rounds.sheet import fit_check_sheet
from service.render.ruler import PangoRuler
from service.render.task import FONTS_CONF
from tests.cards.papers.made import JAR, LEAD, sheet_of
from tests.pages.checks import collisions, said, strays
from tests.pages.rounds.test_slip import HEAVY

A4, LETTER = Size(210.0, 297.0), Size(215.9, 279.4)
RULER = PangoRuler(FONTS_CONF)


@pytest.mark.parametrize("size", [A4, LETTER], ids=["A4", "Letter"])
def test_every_container_is_there_once(size: Size) -> None:
    """Forty boxes in walking order; each page has its number, its labels and whom to ask."""
    pages = fit_check_sheet(sheet_of(40, LEAD, JAR), size, RULER)
    assert said(pages, "container-number") == [f"B-{number:03}" for number in range(40)]
    assert said(pages, "page") == [
        f"40 containers · page {number} of {len(pages)}" for number in range(1, len(pages) + 1)
    ]
    assert said(pages, "questions") == ["Ask: Collections desk"] * len(pages)
    assert {page.size for page in pages} == {size}
    assert [page.number for page in pages if collisions(page, RULER)] == []
    assert [page.number for page in pages if strays(page, RULER, margin_mm=4.3)] == []


def test_rows_stay_above_the_foot() -> None:
    """Boxes with eight hazards each take more room, and still none runs into the foot."""
    for page in fit_check_sheet(sheet_of(7, HEAVY), A4, RULER):
        rows = [block.rect.bottom_mm for block in page.blocks if block.purpose == "row-rule"]
        foot = [block.rect.y_mm for block in page.blocks if block.purpose == "looks-for"]
        assert max(rows) < min(foot)
        assert collisions(page, RULER) == []


@pytest.mark.parametrize("kinds", range(1, len(CheckKind) + 1))
def test_any_number_of_kinds_leaves_room_to_write(kinds: int) -> None:
    """With one box or five there are lines for a note and for initials."""
    sheet = sheet_of(2, LEAD)
    rows = tuple(replace(row, asked=tuple(CheckKind)[:kinds]) for row in sheet.rows)
    (page,) = fit_check_sheet(replace(sheet, rows=rows), A4, RULER)
    assert collisions(page, RULER) == []
    lines = [block.rect.width_mm for block in page.blocks if block.purpose == "line"]
    assert len(lines) == 4
    assert min(lines) > 12.0


def test_labels_stand_above_the_boxes() -> None:
    """Each kind is named once on a page, and what to look for stands in the foot."""
    (page,) = fit_check_sheet(sheet_of(1, LEAD), A4, RULER)
    assert said([page], "label")[2:] == ["Pests", "Tissue", "Corrosion", "Labels"]
    (looks,) = said([page], "looks-for")
    assert "frass" in looks
    assert "Weight" not in looks


def test_hidden_places_are_said_to_be_hidden() -> None:
    """The sheet says how it goes then."""
    hidden = replace(sheet_of(1, LEAD), hides_locations=True)
    assert said(fit_check_sheet(hidden, A4, RULER), "hidden") == [
        "Places are hidden: the sheet goes by container number."
    ]
