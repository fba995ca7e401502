"""Tests for the second language of the papers of the round."""

from __future__ import annotations

from dataclasses import replace

import pytest

from service.cards.papers.check_sheet import CheckSheet
from service.cards.papers.isolation_label import IsolationLabel
from service.cards.papers.precautions import PRECAUTIONS, SILENT
from service.cards.papers.removal_slip import RemovalSlip
from service.cards.second.papers import speak_paper
from service.records.museum.language import LANGUAGE_NAMES, Language
from tests.cards.papers.made import JAR, LEAD, label_of, sheet_of, slip_of
from tests.cards.second.made import phrasebook

WELSH = phrasebook(Language.WELSH)


def _said(paper: RemovalSlip | IsolationLabel | CheckSheet) -> dict[str, str]:
    assert paper.second is not None
    return dict(paper.second.words)


def test_a_slip_says_what_is_known_of_its_object() -> None:
    """Hazard, what to do, lifting, cautions, to ask, and what silence means."""
    assert _said(speak_paper(slip_of(LEAD), WELSH)) == {
        "Ask": "Gofynnwch",
        SILENT: WELSH.say(SILENT),
        "Keep close to the body.": "Cadwch yn agos at y corff.",
        "Lead presumed": "Plwm (rhagdybir)",
        "Gloves. Do not disturb dust. Wash hands.": (
            "Menig. Peidiwch â chodi llwch. Golchwch eich dwylo."
        ),
        "Loose parts": "Darnau rhydd",
    }


def test_an_isolation_label_says_to_leave_it_alone() -> None:
    """What a stranger must not do stands in both languages, whatever is recorded."""
    said = _said(speak_paper(label_of(JAR), WELSH))
    assert said["Isolated"].startswith("Wedi")
    assert said[PRECAUTIONS[1]].startswith("Peidiwch ag agor, symud na dadbacio.")
    assert said["Weight not known"].startswith("Pwysau")


def test_a_sheet_speaks_for_all_its_rows_and_says_what_that_is_worth() -> None:
    """One set of words for all containers, and the note that nobody has reviewed them."""
    sheet = sheet_of(2, LEAD)
    other = replace(sheet, rows=(*sheet.rows, *sheet_of(1, JAR).rows))
    spoken = speak_paper(other, WELSH)
    assert _said(spoken)["Lead presumed"] == "Plwm (rhagdybir)"
    assert _said(spoken)["Weight not known"].startswith("Pwysau")
    assert spoken.second is not None
    assert spoken.second.note == "Welsh words: translation not reviewed by a specialist"


@pytest.mark.parametrize("language", LANGUAGE_NAMES)
def test_every_precaution_has_its_words(language: Language) -> None:
    """Between them the papers say each again."""
    book = phrasebook(language)
    papers = (slip_of(LEAD), label_of(LEAD), sheet_of(1, LEAD))
    said = {words for paper in papers for words in _said(speak_paper(paper, book))}
    assert {*PRECAUTIONS} <= said


def test_without_a_second_language_a_paper_is_what_it_was() -> None:
    """Nothing is added where the museum asked for nothing."""
    assert speak_paper(slip_of(LEAD), None) == slip_of(LEAD)
