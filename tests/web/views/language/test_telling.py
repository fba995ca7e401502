from __future__ import annotations

from pathlib import Path

import pytest

from service.cards.kinds import END_LABEL, LID_CARD
from service.errors import NotFoundError
from service.findings import Where, make_finding
from service.languages.saying import speaking
from service.sentence import Sentence
from service.web.views.language.telling import (
    say_error,
    say_kinds,
    tell_error,
    tell_fault,
    tell_finding,
    told,
)
from tests.web.views.language.pseudo import CODE, bracketed


def test_an_error_is_told_with_its_advice() -> None:
    """What happened, then what to do."""
    error = NotFoundError("B-1", what="container")
    assert tell_error(error) == f"{error} {error.advice}"


def test_a_finding_is_told_with_its_advice() -> None:
    """What was noticed, then what to do."""
    finding = make_finding("no-photo", Where(), Sentence("It has none."))
    assert tell_finding(finding) == f"It has none. {finding.advice}"


def test_a_part_of_a_sentence_becomes_one() -> None:
    """With a capital and a full stop."""
    assert tell_fault("a printer needs a name") == "A printer needs a name."


def test_kinds_are_named_in_a_line() -> None:
    """As a card is called."""
    assert say_kinds((LID_CARD, END_LABEL)) == "Lid card, End label"


def test_other_languages_say_it_too(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """What has no translation is marked as English, so that it is read aloud as such."""
    error = NotFoundError("B-1", what="container")
    with bracketed(tmp_path, monkeypatch), speaking(CODE):
        assert say_error(error) == "⟦There is no ⟦container⟧ 'B-1'.⟧"
        assert told(Sentence("{number} has no photo yet.", number="<1>")) == (
            "⟦&lt;1&gt; has no photo yet.⟧"
        )
        assert told("A <word> of another time.") == (
            '<span lang="en">A &lt;word&gt; of another time.</span>'
        )
    assert told("A <word>.") == "A &lt;word&gt;."
