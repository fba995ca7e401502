from __future__ import annotations

import threading

import pytest

from service.jobs.again import run_spoiled
from service.jobs.kinds import Job, run_print
from service.jobs.requests import Request, SpoiledRequest, kind_of, write_request
from service.keeping.desk import Desk
from service.store.kept.tasks import add_task, load_task
from service.store.open import reading, writing
from service.store.printed.runs import load_run, load_run_record
from service.store.tables import CardState
from tests.jobs.made import LABELS, SETUP, find_task
from tests.store.made import STAMP


def _take_in_hand(desk: Desk, name: str, request: Request) -> Job:
    with writing(desk.engine) as connection:
        add_task(connection, name, kind_of(request), write_request(request), stamp=STAMP)
        task = load_task(connection, name)
    return Job(desk, task, SETUP.clock, threading.Event())


@pytest.mark.print
def test_a_spoiled_sheet_is_printed_again_by_a_task(desk: Desk) -> None:
    """The new run is told as any other, and the cards of the sheet are spoiled from then on."""
    run_print(_take_in_hand(desk, "t-1", LABELS))
    with reading(desk.engine) as connection:
        (file,) = load_run_record(connection, 1).files
    run_spoiled(_take_in_hand(desk, "t-2", SpoiledRequest(1, file.name, 1)))
    with reading(desk.engine) as connection:
        spoiled, again = load_run(connection, 1), load_run(connection, 2)
    assert {card.state for card in spoiled} == {CardState.SPOILED}
    assert [card.made.key for card in again] == [card.made.key for card in spoiled]
    assert find_task(desk.engine, "t-2").result["run_id"] == 2
