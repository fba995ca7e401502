from __future__ import annotations

import re

import pytest

from service.errors import ConfigError, ServiceError, UnknownStockError
from service.findings import Where, make_finding
from service.sentence import Sentence
from service.web.replies.problems import (
    STATUSES,
    ProblemResponse,
    is_inner,
    list_problems,
    problem_of,
    refuse,
    status_of,
)
from service.web.replies.refusals import REFUSALS, Refusal


def _all(error: type[ServiceError]) -> list[type[ServiceError]]:
    return [error, *(below for child in error.__subclasses__() for below in _all(child))]


@pytest.mark.parametrize("error", _all(ServiceError), ids=lambda error: error.__name__)
def test_every_error_has_a_status(error: type[ServiceError]) -> None:
    """Each class of the tree is told as a problem, and its branch stands in the table itself."""
    branch = error.__mro__[-4] if error is not ServiceError else error
    assert branch in STATUSES
    made = error.__new__(error, "What happened.")
    Exception.__init__(made, "What happened.")
    # Only conflicts carry states, and these are read.
    made.__dict__.update(yours="{}", current="")
    problem = problem_of(made, mark="1f2e")
    assert problem.status == status_of(error)
    assert (problem.code, problem.advice) == (error.code, error.advice)
    assert ("What happened." in problem.detail) is not is_inner(error)
    assert list_problems()[error.code] == (problem.status, problem.advice)


@pytest.mark.parametrize("refusal", Refusal)
def test_every_refusal_has_a_status(refusal: Refusal) -> None:
    """What the edge refuses has a status, advice in a sentence and a code of its own."""
    assert 400 <= REFUSALS[refusal].status < 600
    assert re.fullmatch(r"[A-Z].+[.]", REFUSALS[refusal].advice)
    assert refusal.value not in {error.code for error in _all(ServiceError)}
    assert refuse(refusal, "Because.").type == f"/api/problems#{refusal.value}"


def test_findings_stand_in_the_problem() -> None:
    """What was noticed before the work failed is handed over with the problem."""
    finding = make_finding(
        "photo-missing", Where(file="jar.jpg"), Sentence("There is no photo jar.jpg.")
    )
    problem = problem_of(UnknownStockError("A9", known=["A4 card"]), [finding])
    assert [view.where for view in problem.findings] == ["jar.jpg"]
    assert problem.detail == "There is no stock 'A9'; there are: A4 card."


def test_inner_faults_tell_nothing_of_the_inside() -> None:
    """A fault of the service gives its mark in the log and no words of the log."""
    problem = problem_of(ConfigError("UNDERLID_DATA", reason="is /srv/secret"), mark="9c01")
    assert "secret" not in problem.detail
    assert "9c01" in problem.detail


def test_busy_says_when_to_come_again() -> None:
    """Only a reply that asks to wait says for how long."""
    assert "retry-after" in ProblemResponse(refuse(Refusal.BUSY, "Full.")).headers
    assert "retry-after" not in ProblemResponse(refuse(Refusal.FAILED, "No.")).headers
