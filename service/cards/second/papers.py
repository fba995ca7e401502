"""Adds the words of a second language to a paper of the round that is composed."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import TypeVar

from service.cards.papers.check_sheet import CheckSheet
from service.cards.papers.isolation_label import IsolationLabel
from service.cards.papers.precautions import (
    FOUND,
    ISOLATED,
    LEAVE_ALONE,
    NO_PROMISE,
    NOTHING_RECORDED,
    SILENT,
)
from service.cards.papers.removal_slip import RemovalSlip
from service.cards.parts import Handling, SecondWords
from service.cards.second.add import say_handling
from service.cards.second.phrasebook import Phrasebook
from service.cards.second.phrases import ASK

AnyPaper = RemovalSlip | IsolationLabel | CheckSheet
Paper = TypeVar("Paper", bound=AnyPaper)

_OF_PAPERS: dict[type, tuple[str, ...]] = {
    RemovalSlip: (ASK, SILENT),
    IsolationLabel: (ASK, ISOLATED, LEAVE_ALONE, SILENT, NOTHING_RECORDED),
    CheckSheet: (ASK, FOUND, NO_PROMISE),
}
"""What each paper says besides the handling of what it names."""


def speak_paper(paper: Paper, phrasebook: Phrasebook | None) -> Paper:
    """Give the paper with the words that stand beside its English ones, if there is a phrasebook.

    Only the sheet has room for the note that says what the translation is worth.
    """
    if phrasebook is None:
        return paper
    english = _OF_PAPERS[type(paper)]
    pairs = [(words, phrasebook.say(words)) for words in english]
    for handling in _find_handling(paper):
        pairs += say_handling(handling, phrasebook)
    words = {said: beside for said, beside in pairs if beside}
    note = phrasebook.note if isinstance(paper, CheckSheet) else ""
    second = SecondWords(phrasebook.language, tuple(words.items()), note)
    return replace(paper, second=second)


def _find_handling(paper: AnyPaper) -> Iterator[Handling]:
    if isinstance(paper, CheckSheet):
        yield from (row.handling for row in paper.rows)
    else:
        yield paper.handling
