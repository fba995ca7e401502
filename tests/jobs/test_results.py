"""Tests for what the row of a task tells."""

from __future__ import annotations

import json

from service.errors import UnknownStockError
from service.findings import Where, make_finding
from service.jobs.results import (
    MOST_FINDINGS,
    leave_parts,
    say_again,
    tell_error,
    tell_findings,
    tell_unforeseen,
)
from service.sentence import Sentence

NOTE = make_finding("no-photo", Where(container_number="B-042"), Sentence("There is no photo."))
ERROR = make_finding(
    "card-failed", Where(container_number="B-043"), Sentence("It was not printed.")
)


def test_the_gravest_is_told_first() -> None:
    """A card that was not printed stands above a missing photo, with place and advice."""
    told = tell_findings([NOTE, ERROR])
    assert json.loads(json.dumps(told))["findings"][0] == {
        "code": "card-failed",
        "severity": "error",
        "where": "B-043",
        "message": "It was not printed.",
        "advice": ERROR.advice,
    }
    assert told["findings_left_out"] == 0


def test_what_is_left_out_is_counted() -> None:
    """Too many are not kept, but their number is, and none of them is the gravest."""
    told = tell_findings([*[NOTE] * MOST_FINDINGS, ERROR])
    assert told["findings_left_out"] == 1
    assert "card-failed" in json.dumps(told)


def test_an_error_tells_what_to_do() -> None:
    """Code, sentence and advice of the error, and what was noticed before."""
    error = UnknownStockError("A9", known=["A4"])
    told = tell_error(error, [NOTE])
    assert (told["code"], told["message"], told["advice"]) == (
        "unknown-stock",
        str(error),
        error.advice,
    )
    assert "no-photo" in json.dumps(told)


def test_what_was_not_foreseen_names_its_mark() -> None:
    """Whoever runs the service finds it in the log."""
    told = tell_unforeseen("ab12", ())
    assert (told["code"], told["mark"]) == ("service-error", "ab12")
    assert "ab12" in str(told["message"])


def test_words_can_be_said_again_in_another_language() -> None:
    """A row is JSON; what is read from it is the sentence with template and values."""
    where, reason = Where(object_number="1"), Sentence("a {thing}", thing=Sentence("lamp"))
    words = Sentence("{number} holds {reason}.", number="1", reason=reason)
    (told,) = json.loads(json.dumps(tell_findings([make_finding("no-photo", where, words)])))[
        "findings"
    ]
    again = say_again(told)
    assert again["message"] == told["message"] == "1 holds a lamp."
    message = again["message"]
    assert isinstance(message, Sentence)
    assert message.template == "{number} holds {reason}."
    inner = message.values["reason"]
    assert isinstance(inner, Sentence)
    assert (inner.template, inner.values["thing"]) == ("a {thing}", "lamp")
    assert isinstance(inner.values["thing"], Sentence)
    assert set(leave_parts(told)) == {"code", "severity", "where", "message", "advice"}
    error = tell_error(UnknownStockError("A9", known=["A4"]), [])
    assert str(say_again(error)["message"]) == error["message"]


def test_what_was_kept_before_is_said_as_it_is() -> None:
    """Rows of an earlier version have their English alone."""
    assert say_again({"message": "Seen {x}.", "advice": "Look."})["message"] == "Seen {x}."
