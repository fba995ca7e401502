"""Tests for papers in two languages, with the shipped fonts."""

from __future__ import annotations

from dataclasses import replace

import pytest

from service.cards.papers.precautions import ISOLATED
from service.cards.second.papers import speak_paper
from service.geometry import Size
from service.pages.page import Page, TextBlock
from service.pages.rounds.isolation import fit_isolation_label
from service.pages.rounds.sheet import fit_check_sheet
from service.pages.rounds.slip import fit_removal_slip
from service.pages.setting.give_way import keeps_english
from service.pages.setting.second import PURPOSE
from service.records.museum.language import LANGUAGE_NAMES, Language
from service.records.record import Hazard, HazardState, ObjectRecord
from service.render.ruler import PangoRuler
from service.render.task import FONTS_CONF
from tests.cards.papers.made import JAR, LEAD, label_of, sheet_of, slip_of
from tests.cards.second.made import phrasebook
from tests.contents.made import A4
from tests.pages.checks import collisions, said, strays

RULER = PangoRuler(FONTS_CONF)
A6, A5 = Size(105, 148), Size(210, 148)
WELSH = phrasebook(Language.WELSH)
CODES = ("lead", "arsenic", "asbestos", "mould", "radium", "cyanide", "needles")


def _loaded(hazards: int) -> ObjectRecord:
    found = tuple(Hazard(code, HazardState.PRESUMED) for code in CODES[:hazards])
    return replace(LEAD, photos=(), hazards=found, cautions=("fragile", "keep-dry"))


def _faults(pages: tuple[Page, ...]) -> list[object]:
    return [
        found
        for page in pages
        for found in (*collisions(page, RULER), *strays(page, RULER, margin_mm=4.3))
    ]


@pytest.mark.parametrize("language", LANGUAGE_NAMES)
@pytest.mark.parametrize("record", [JAR, replace(LEAD, photos=())], ids=["silent", "lead"])
def test_a_paper_has_room_for_both(record: ObjectRecord, language: Language) -> None:
    """On slip and label all English stands as before, nothing meets, nothing is shortened."""
    book = phrasebook(language)
    slip, label = slip_of(record), label_of(record)
    for both, english in (
        (
            fit_removal_slip(speak_paper(slip, book), A6, RULER),
            fit_removal_slip(slip, A6, RULER),
        ),
        (
            fit_isolation_label(speak_paper(label, book), A5, RULER),
            fit_isolation_label(label, A5, RULER),
        ),
    ):
        assert keeps_english(both, english)
        assert book.say("Ask") in said(both, PURPOSE)
        assert _faults(both) == []
        second = (one for one in both[0].blocks if one.purpose == PURPOSE)
        for one in second:
            assert isinstance(one, TextBlock)
            assert one.style.weight == 400
            assert not one.is_shortened


def test_isolated_is_said_on_its_own_line() -> None:
    """Where the label is wide enough, the word stands behind the English one, much smaller."""
    (page,) = fit_isolation_label(speak_paper(label_of(JAR), WELSH), A5, RULER)
    blocks = {block.whole: block for block in page.blocks if isinstance(block, TextBlock)}
    word, again = blocks["ISOLATED"], blocks[WELSH.say(ISOLATED)]
    assert again.style.size_pt < word.style.size_pt / 2
    assert word.rect.y_mm < again.rect.y_mm < again.rect.bottom_mm < word.rect.bottom_mm


@pytest.mark.parametrize("hazards", range(8))
def test_a_slip_never_pays_for_it(hazards: int) -> None:
    """However much is known, English has as many cards and the same type; names stay longest."""
    slip = slip_of(_loaded(hazards))
    both = fit_removal_slip(speak_paper(slip, WELSH), A6, RULER)
    assert keeps_english(both, fit_removal_slip(slip, A6, RULER))
    assert _faults(both) == []


def test_sentences_give_way_before_names() -> None:
    """A slip that is nearly full names its hazards in both languages still."""
    both = fit_removal_slip(speak_paper(slip_of(_loaded(3)), WELSH), A6, RULER)
    assert "Plwm (rhagdybir)" in said(both, PURPOSE)
    assert not any("Menig" in words for words in said(both, PURPOSE))


def test_a_check_sheet_says_all_again() -> None:
    """Rows and foot, with the note; it may grow, and no English is lost."""
    sheet = replace(sheet_of(9, _loaded(3)), questions="Collections desk")
    both = fit_check_sheet(speak_paper(sheet, WELSH), A4, RULER)
    english = fit_check_sheet(sheet, A4, RULER)
    for purpose in ("hazard", "instruction", "container-number", "weight", "caution"):
        assert said(both, purpose) == said(english, purpose)
    again = said(both, PURPOSE)
    assert sum(words.startswith("Plwm (rhagdybir)") for words in again) == 9
    assert any(words.startswith("Os canfyddir rhywbeth") for words in again)
    assert {*said(both, "note")} == {WELSH.note}
    assert _faults(both) == []
