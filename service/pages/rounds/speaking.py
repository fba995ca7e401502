"""A paper in two languages where that costs nothing that it says in English, else in English."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import suppress
from dataclasses import replace
from typing import TypeVar

from service.cards.papers.isolation_label import IsolationLabel
from service.cards.papers.removal_slip import RemovalSlip
from service.errors import DoesNotFitError
from service.geometry import Size
from service.pages.page import Page
from service.pages.ruler import Ruler
from service.pages.setting.give_way import keeps_english
from service.pages.setting.second import names_only

Paper = TypeVar("Paper", RemovalSlip, IsolationLabel)
_Fit = Callable[[Paper, Size, Ruler], tuple[Page, ...]]


def fit_in_both(fit: _Fit[Paper], paper: Paper, size: Size, ruler: Ruler) -> tuple[Page, ...]:
    """Fit a paper so that each card says the same in English, in the same type, as without.

    Sentences of the second language give way first, then its names. What `fit` raises of the
    English is raised.
    """
    english = fit(replace(paper, second=None), size, ruler)
    for spoken in _ways_to_speak(paper):
        with suppress(DoesNotFitError):
            both = fit(spoken, size, ruler)
            if keeps_english(both, english):
                return both
    return english


def _ways_to_speak(paper: Paper) -> Iterator[Paper]:
    if paper.second is not None:
        yield paper
        yield replace(paper, second=names_only(paper.second))
