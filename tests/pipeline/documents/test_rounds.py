from __future__ import annotations

import unicodedata
from dataclasses import replace

import pypdf
import pytest

from service.cards.papers.check_sheet import CheckSheet
from service.cards.second.papers import speak_paper
from service.errors import ContentsError
from service.languages.catalogue import load_phrasebook
from service.pipeline.documents.rounds import (
    print_check_sheet,
    print_isolation_label,
    print_removal_slips,
)
from service.pipeline.ready import Workshop
from service.records.museum.language import Language
from tests.cards.papers.made import BONES, JAR, LEAD, label_of, sheet_of, slip_of
from tests.pipeline.conftest import make_photo
from tests.pipeline.documents.test_swap_list import READ_FROM_LEFT, TITLES

PHOTOS = {"lead.jpg": make_photo("#303030"), "bones.jpg": make_photo("#e0d8c0")}


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.timeout(300)
def test_a_sheet_is_printed_and_proved(workshop: Workshop) -> None:
    """An independent reader finds every box on as many pages as there are; photos stand there."""
    path = print_check_sheet(sheet_of(12, LEAD, BONES), PHOTOS, workshop, paper="Letter")
    read = pypdf.PdfReader(path)
    words = " ".join(page.extract_text() for page in read.pages)
    assert all(f"B-{number:03}" in words for number in range(12))
    assert "Lead presumed" in words
    assert "Finger" not in words
    assert len(read.pages) > 1
    assert read.pages[0].mediabox.width == pytest.approx(612, abs=0.01)
    assert len(read.pages[0].images) == 1


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.timeout(300)
def test_slips_stand_four_on_a_page(workshop: Workshop) -> None:
    """The fifth begins a second page; one a sheet is possible; discreet objects stay so."""
    slips = [slip_of(record) for record in (LEAD, JAR, BONES, LEAD, JAR)]
    read = pypdf.PdfReader(print_removal_slips(slips, PHOTOS, workshop))
    words = [page.extract_text() for page in read.pages]
    assert [text.count("REMOVED") for text in words] == [4, 1]
    assert "25 Nov 2026" in words[0]
    assert "1 Dec 2026" in words[0]
    assert "Finger" not in words[0]
    one_each = pypdf.PdfReader(print_removal_slips(slips[:2], PHOTOS, workshop, paper="A6"))
    assert len(one_each.pages) == 2


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.timeout(300)
def test_a_photo_that_cannot_be_used_is_said(workshop: Workshop) -> None:
    """A slip is printed all the same, and so is the sheet."""
    broken = {"lead.jpg": b"no photo"}
    read = pypdf.PdfReader(print_removal_slips([slip_of(LEAD)], broken, workshop, paper="Letter"))
    assert "cannot be used" in read.pages[0].extract_text()
    assert len(pypdf.PdfReader(print_check_sheet(sheet_of(1, LEAD), {}, workshop)).pages) == 1


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.timeout(300)
def test_a_label_has_its_copies(workshop: Workshop) -> None:
    """Three for three sides, two on a page."""
    read = pypdf.PdfReader(print_isolation_label(label_of(LEAD), workshop, copies=3))
    assert [page.extract_text().count("ISOLATED") for page in read.pages] == [2, 1]


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.timeout(300)
def test_papers_speak_two_languages(workshop: Workshop) -> None:
    """What stands after the English is proved with it, on slip, label and sheet."""
    book = load_phrasebook(Language.POLISH)
    for path in (
        print_removal_slips([speak_paper(slip_of(JAR), book)], {}, workshop),
        print_isolation_label(speak_paper(label_of(JAR), book), workshop),
        print_check_sheet(speak_paper(sheet_of(1, JAR), book), {}, workshop),
    ):
        words = _plain(pypdf.PdfReader(path).pages[0].extract_text())
        assert _plain("Zważyć przed podniesieniem.") in words


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.timeout(300)
def test_every_word_of_every_script_is_printed(workshop: Workshop) -> None:
    """Names of five scripts and a sign that no font holds pass the proof.

    Words that run from the left are read again by pypdf; the others are proved glyph by glyph.
    """
    slips = [
        replace(slip_of(JAR), name=f"{first} {second}", object_number=f"X.{at}\u16a0")
        for at, (first, second) in enumerate(TITLES)
    ]
    read = pypdf.PdfReader(print_removal_slips(slips, {}, workshop))
    words = _plain("".join(page.extract_text() for page in read.pages))
    assert all(_plain(f"X.{at}[U+16A0]") in words for at in range(len(TITLES)))
    assert all(_plain("".join(title)) in words for title in TITLES[:READ_FROM_LEFT])


def test_nothing_is_not_printed(workshop: Workshop) -> None:
    """Nothing due and nothing out are said in words."""
    with pytest.raises(ContentsError, match="Nothing is due"):
        print_check_sheet(CheckSheet("", "", "", "", ()), {}, workshop)
    with pytest.raises(ContentsError, match="Nothing is out"):
        print_removal_slips([], {}, workshop)


def _plain(text: str) -> str:
    """Bring a text to one spelling without blanks, which a reader may set as it likes."""
    return "".join(unicodedata.normalize("NFKC", text).split())
