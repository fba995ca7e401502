from __future__ import annotations

from dataclasses import replace
from datetime import date

from service.cards.papers.check_sheet import (
    MOST_PHOTOS,
    Pictured,
    Visit,
    compose_sheet_row,
    word_last,
)
from service.handling.checks.due import DoneCheck, plan_checks
from service.handling.checks.kinds import LOOKED_AT, CheckKind, CheckResult
from service.records.record import Questions
from tests.cards.papers.made import BONES, GUN, JAR, LEAD, SHOWN, TODAY, box, row_of, sheet_of
from tests.contents.made import MUSEUM, objects

DAY = date(2025, 3, 1)


def test_a_row_says_what_to_know_before_opening() -> None:
    """Which box, where, what is in it, its hazards and lift, what to tick, and what is away."""
    row = row_of(LEAD, JAR)
    assert (row.container_number, row.title, row.location) == (
        "B-042",
        "Small finds",
        "Long Store, bay 4",
    )
    assert (row.asked, row.last, row.is_overdue) == (LOOKED_AT, ("Never checked",), True)
    assert (row.count_words, row.outs) == ("2 objects", ("Out: X.1 (slip 4)",))
    assert row.photos == (Pictured("lead.jpg", "1931.14.2"),)
    assert [warn.heading for warn in row.handling.hazards] == ["Lead presumed"]
    assert row_of(LEAD, museum=MUSEUM).location == ""


def test_what_is_discreet_stays_so() -> None:
    """No photo and no title of human remains or a firearm; the words only say to ask."""
    row = row_of(BONES, GUN)
    assert row.photos == ()
    assert {warn.heading for warn in row.handling.hazards} == {"Restricted", "Do not open"}
    assert not any(words in repr(row) for words in (BONES.title, GUN.title, "human", "irearm"))


def test_whom_to_ask_stands_where_it_differs() -> None:
    """The sheet says it once; a box with a keeper of its own says so."""
    assert row_of(LEAD).questions == ""
    made = box(LEAD)
    asked = replace(made.container, questions=Questions("Radiation adviser", "555 0199"))
    visit = Visit(replace(made, container=asked), plan_checks(made, []), "")
    row = compose_sheet_row(visit, SHOWN, today=TODAY)
    assert row.questions == "Radiation adviser 555 0199"


def test_a_few_photos_stand_for_many() -> None:
    """As many as there is room for, the first ones."""
    row = row_of(*objects(9))
    assert [one.photo for one in row.photos] == [f"{n}.jpg" for n in range(1, MOST_PHOTOS + 1)]


def test_when_it_was_looked_at_is_told_once() -> None:
    """Kinds of one day stand together; what was found is said."""
    done = [DoneCheck(kind, CheckResult.OK, DAY) for kind in (CheckKind.TISSUE, CheckKind.LABELS)]
    done.append(DoneCheck(CheckKind.PESTS, CheckResult.FOUND, DAY))
    assert word_last(plan_checks(box(LEAD), done)) == (
        "Pests: found 1 Mar 2025",
        "Tissue, labels: checked 1 Mar 2025",
        "Corrosion: never checked",
    )


def test_a_sheet_has_the_boxes_that_some_row_asks_for() -> None:
    """In the order of the sheet, each once."""
    sheet = sheet_of(2, LEAD)
    few = replace(sheet.rows[0], asked=(CheckKind.LABELS, CheckKind.PESTS))
    assert replace(sheet, rows=(few,)).asked == (CheckKind.PESTS, CheckKind.LABELS)
    assert sheet.asked == LOOKED_AT
