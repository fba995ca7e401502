"""Tests for a print run before it is made."""

from __future__ import annotations

from dataclasses import replace

import pytest

import service.keeping.previews.plans
from service.cards.kinds import END_LABEL, LID_CARD
from service.errors import NoFreePositionError, PlanTooLargeError
from service.keeping.desk import Desk
from service.keeping.previews.layout import PositionState
from service.keeping.previews.plans import Plan, open_plans, plan_run
from service.keeping.printing.prints import print_run
from service.pipeline.options import PrintOptions
from service.store.kept.used_sheets import load_used_sheets
from service.store.open import reading
from service.store.printed.runs import list_runs
from tests.keeping.made import BOX
from tests.keeping.previews.test_cards import count_rows
from tests.store.made import STAMP

pytestmark = pytest.mark.print

LABELS = PrintOptions(kinds=(LID_CARD, END_LABEL), containers=frozenset({BOX}))


def placed(plan: Plan) -> list[tuple[str, tuple[str, str, int], tuple[int, int]]]:
    """Give file, card and place of everything planned."""
    return [
        (each.file.name, one.key, (sheet.number, one.position))
        for each in plan.files
        for sheet in each.sheets
        for one in sheet.positions
        if one.key
    ]


def test_the_plan_is_what_is_printed(desk: Desk) -> None:
    """Files are equal byte for byte and cards lie where it said; until then nothing is kept."""
    rows = count_rows(desk)
    plan = plan_run(desk, LABELS, today=STAMP.at.date())
    assert count_rows(desk) == rows
    made = print_run(desk, LABELS, stamp=STAMP)
    assert placed(plan) == [
        (card.made.file, card.made.key, card.made.places[0]) for card in made.cards
    ]
    assert plan.findings == made.findings
    for file in made.files:
        kept = open_plans(desk).find(plan.name, file.name).read_bytes()
        assert kept == desk.shelf.get(file.sha256, ".pdf")


def test_a_plan_goes_on_with_begun_sheets(desk: Desk) -> None:
    """What an earlier run used is told; a plan uses nothing up, so that it can be made again."""
    print_run(desk, LABELS, stamp=STAMP)
    with reading(desk.engine) as connection:
        options = replace(LABELS, begun=load_used_sheets(connection), kinds=(END_LABEL,))
    plans = [plan_run(desk, options, today=STAMP.at.date()) for _ in range(2)]
    assert plans[0].name == plans[1].name
    (sheet,) = plans[0].files[0].sheets
    assert [one.state for one in sheet.positions[:5]] == [
        *[PositionState.USED] * 2,
        *[PositionState.FILLED] * 2,
        PositionState.FREE,
    ]
    with reading(desk.engine) as connection:
        assert len(list_runs(connection)) == 1


def test_too_much_is_refused_before_it_is_loaded(
    desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Nobody looks at thousands of sheets, and those who wait for a preview would wait for them."""
    monkeypatch.setattr(service.keeping.previews.plans, "MOST_CONTAINERS", 1)
    monkeypatch.setattr(service.keeping.previews.plans, "MOST_CARDS", 1)
    keys = frozenset({(BOX, "end-label", 1), (BOX, "end-label", 2)})
    for options in (
        PrintOptions(),
        PrintOptions(containers=frozenset({BOX, "B-2"})),
        PrintOptions(only=keys),
    ):
        with pytest.raises(PlanTooLargeError, match="at most 1"):
            plan_run(desk, options, today=STAMP.at.date())


def test_what_cannot_be_printed_cannot_be_planned(desk: Desk) -> None:
    """A start behind the last position is refused as by the run itself."""
    options = replace(LABELS, kinds=(END_LABEL,), start_position=8, skipped=frozenset({8}))
    with pytest.raises(NoFreePositionError):
        plan_run(desk, options, today=STAMP.at.date())
